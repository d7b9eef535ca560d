#include "two_view.hpp"

#include <algorithm>

#include "backspring/action/reading.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/core/root.hpp"
#include "check_parts.hpp"

namespace backspring {
namespace {

/// One angle of this blade's way.
struct TwoStep {
    Turn turn;
    PeakStress peak;
    double other_force_n = 0.0;
};

TwoStep make_step(const TwoView& view, const TwoContacts& both) {
    TwoStep step;
    step.turn.contact = view.own_contact(both);
    step.turn.friction_nmm =
        friction_torque_nmm(step.turn.contact, view.own.friction, view.own.own().tang.pivot_mm);
    step.peak = peak_stress(view.whole, both);
    step.other_force_n = view.other_contact(both).force_n;
    return step;
}

double angle_of(const TwoStep& step) { return step.turn.contact.blade_angle_deg; }

/// The steps of a way; it ends where the other blade loses its rest.
class Way {
  public:
    Way(const TwoView& view, const BladeStand& other, double from_deg, double step_deg)
        : view_(view), other_(other) {
        for (double angle = from_deg; complete_ && angle < 180.0; angle += step_deg) add(angle);
        if (complete_) add(180.0);
    }

    [[nodiscard]] const std::vector<TwoStep>& steps() const { return steps_; }
    [[nodiscard]] bool complete() const { return complete_; }

    [[nodiscard]] TwoStep at(double angle) const {
        const auto both = view_.at({angle}, other_);
        if (!both) throw NoConvergence(Notice{.code = NoticeCode::other_no_rest});
        return make_step(view_, *both);
    }

    [[nodiscard]] std::optional<Stroke> stroke(const Contact& from, const Contact& to) const {
        const TurnAt turn = [this](double angle) { return at(angle).turn; };
        std::vector<Turn> way{turn(from.blade_angle_deg)};
        for (const TwoStep& step : steps_) {
            const double angle = angle_of(step);
            if (angle > from.blade_angle_deg && angle < to.blade_angle_deg) {
                way.push_back(step.turn);
            }
        }
        way.push_back(turn(to.blade_angle_deg));
        return make_stroke(turn, way);
    }

    /// The step where a quantity is largest, looked for between the neighbours as well.
    template <class Value>
    [[nodiscard]] TwoStep worst(Value value) const {
        const auto less = [&](const TwoStep& a, const TwoStep& b) { return value(a) < value(b); };
        const auto top = std::max_element(steps_.begin(), steps_.end(), less);
        const double low = angle_of(top == steps_.begin() ? *top : *(top - 1));
        const double high = angle_of(top + 1 == steps_.end() ? *top : *(top + 1));
        const TwoStep best = at(find_maximum([&](double a) { return value(at(a)); }, low, high));
        return value(best) > value(*top) ? best : *top;
    }

  private:
    void add(double angle) {
        const auto both = view_.at({angle}, other_);
        complete_ = both.has_value();
        if (both) steps_.push_back(make_step(view_, *both));
    }

    const TwoView& view_;
    BladeStand other_;
    std::vector<TwoStep> steps_;
    bool complete_ = true;
};

/// Unloaded readings of this blade, the other one out.
Readings unloaded(const Design& own) {
    const Joint joint = make_unloaded_joint(own.own().pad, own.own().tang, own.own().fit);
    return readings(joint, find_rests(joint, own.own().tang.half_stop_mm.has_value()));
}

void add_positions(Beside& row, Rests& rests, const TwoView& view, const Place& other) {
    const Readings rear_out = unloaded(view.own);
    const BladeStand open{180.0};
    const double datum = view.moved_mm(view.at(open, open).value());
    for (const Place& place : places_of(view.own.own().tang)) {
        const auto both = view.at(place.stand, other.stand);
        if (!both) continue;
        const Contact& contact = view.own_contact(*both);
        row.positions.push_back(
            make_position(view.own, place.name, contact, peak_stress(view.whole, *both)));
        Position& position = row.positions.back();
        position.reading_loaded_mm = view.moved_mm(*both) - datum;
        if (place.name == "open") {
            rests.open = contact;
            position.reading_unloaded_mm = 0.0;
        } else if (place.name == "closed") {
            rests.closed = contact;
            position.reading_unloaded_mm = rear_out.closed_mm;
        } else {
            rests.half_stop = contact;
            position.reading_unloaded_mm = rear_out.half_stop_mm;
        }
    }
}

/// The ways between the rests, opening, in turn; none where the blade does not stay.
template <class StrokeBetween>
std::vector<Stroke> make_strokes(const StrokeBetween& stroke_between, const Rests& rests) {
    std::vector<Stroke> strokes;
    if (!rests.closed || rests.open.torque_nmm >= 0.0) return strokes;
    const auto add = [&](const Contact& from, const Contact& to) {
        if (const auto stroke = stroke_between(from, to)) strokes.push_back(*stroke);
    };
    if (rests.half_stop) {
        add(*rests.closed, *rests.half_stop);
        add(*rests.half_stop, rests.open);
    } else {
        add(*rests.closed, rests.open);
    }
    return strokes;
}

}  // namespace

std::vector<Place> detail::places_of(const Tang& tang) {
    std::vector<Place> places{{"open", {180.0}}};
    if (tang.half_stop_mm) places.push_back({"half_stop", {90.0, kHalfStopReachDeg}});
    places.push_back({"closed", {0.0, kClosedReachDeg}});
    return places;
}

Beside detail::look_beside(const TwoView& view, const Place& other, double step_deg) {
    Beside row;
    row.other = other.name;
    Rests rests;
    add_positions(row, rests, view, other);
    const double start = rests.closed ? rests.closed->blade_angle_deg : 0.0;
    const Way way(view, other.stand, start, step_deg);
    if (way.steps().empty()) return row;
    const auto force = [](const TwoStep& step) { return step.other_force_n; };
    row.other_force_high_n = force(way.worst(force));
    row.other_force_low_n = force(way.worst([](const TwoStep& s) { return -s.other_force_n; }));
    const TwoStep strongest = way.worst([](const TwoStep& s) { return s.turn.contact.force_n; });
    const TwoStep stressed = way.worst([](const TwoStep& s) { return s.peak.stress_mpa; });
    row.travel =
        make_travel(view.own, strongest.turn.contact, stressed.turn.contact, stressed.peak);
    if (!way.complete() || !row.position("open")) return row;
    const auto between = [&](const Contact& from, const Contact& to) {
        return way.stroke(from, to);
    };
    row.strokes = make_reports(view.own, rests, make_strokes(between, rests));
    return row;
}

}  // namespace backspring
