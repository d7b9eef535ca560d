#include <algorithm>
#include <cmath>

#include "backspring/check/two_blades.hpp"
#include "backspring/core/require.hpp"
#include "backspring/spring/stretches.hpp"

namespace backspring {
namespace {

/// The moment along the spring and how far it has moved out, both tangs bearing.
class Loaded {
  public:
    Loaded(const TwoBlades& two, const TwoJoints& joints, const TwoContacts& both)
        : joints_(joints),
          both_(both),
          span_mm_(joints.turns ? 0.0 : two.first.spring.support.rear_pin_mm) {}

    [[nodiscard]] double moved_mm(double x) const {
        if (x >= 0.0) {
            return deflection_mm(joints_.first, both_.first, x) + both_.first_turn_rad * x;
        }
        if (x > -span_mm_) return 0.0;
        const double own = -span_mm_ - x;
        return deflection_mm(joints_.second, both_.second, own) + both_.second_turn_rad * own;
    }

    [[nodiscard]] double moment_nmm(double x) const {
        if (x >= 0.0) return beyond(both_.first, x);
        if (x <= -span_mm_) return beyond(both_.second, -span_mm_ - x);
        return std::lerp(root_moment_nmm(both_.first), root_moment_nmm(both_.second),
                         -x / span_mm_);
    }

  private:
    static double beyond(const Contact& contact, double x) {
        double moment = 0.0;
        for (const Touch& touch : contact.all()) {
            moment += touch.force_n * std::max(touch.x_mm - x, 0.0);
        }
        return moment;
    }

    const TwoJoints& joints_;
    const TwoContacts& both_;
    double span_mm_;
};

std::vector<double> whole_length(const TwoBlades& two, double spacing_mm) {
    const Spring& spring = two.first.spring;
    const bool pinned = spring.support.kind == SupportKind::two_pins;
    const double rear_pin = pinned ? spring.support.rear_pin_mm : 0.0;
    std::vector<double> places;
    const auto add = [&](double from, double to) {
        for (const Stretch& stretch : cut_into_stretches(spring, from, to)) {
            const double length = stretch.end_mm - stretch.start_mm;
            const int parts = static_cast<int>(std::ceil(length / spacing_mm));
            for (int i = 0; i < parts; ++i) places.push_back(stretch.start_mm + length * i / parts);
        }
    };
    add(-rear_pin - two.second.pad.end_mm, -rear_pin);
    if (pinned) add(-rear_pin, 0.0);
    add(0.0, two.first.own().pad.end_mm);
    places.push_back(two.first.own().pad.end_mm);
    return places;
}

}  // namespace

SpringAlong spring_along_two(const TwoBlades& two,
                             double first_deg,
                             double second_deg,
                             double spacing_mm) {
    Requirements rules;
    rules.in_range("spacing_mm", spacing_mm, 1e-3, 100.0, "mm");
    rules.throw_if_any();
    const TwoJoints joints = make_two_joints(two);
    const TwoContacts both = contacts_at(joints, {first_deg}, {second_deg}).value();
    const Loaded loaded(two, joints, both);
    const std::vector<double> places = whole_length(two, spacing_mm);
    const auto column = [&](auto value) {
        Eigen::ArrayXd values(static_cast<Eigen::Index>(places.size()));
        std::transform(places.begin(), places.end(), values.begin(), value);
        return values;
    };
    const Spring& spring = two.first.spring;
    const auto stress_per_height = [&](double x) {
        return loaded.moment_nmm(x) / section_at(spring, x).inertia_mm4;
    };
    return {.station_mm = column([](double x) { return x; }),
            .thickness_mm = column([&](double x) { return thickness_mm(spring.thickness, x); }),
            .face_mm = column([](double) { return 0.0; }),
            .deflection_mm = column([&](double x) { return loaded.moved_mm(x); }),
            .back_stress_mpa = column(
                [&](double x) { return -stress_per_height(x) * section_at(spring, x).back_mm; }),
            .belly_stress_mpa = column(
                [&](double x) { return stress_per_height(x) * section_at(spring, x).belly_mm; })};
}

}  // namespace backspring
