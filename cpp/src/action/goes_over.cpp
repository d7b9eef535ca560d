#include "goes_over.hpp"

#include <cmath>
#include <utility>

#include "backspring/core/angle.hpp"
#include "backspring/core/root.hpp"
#include "indenters.hpp"
#include "neighbours.hpp"
#include "newton_steps.hpp"
#include "pad_edge.hpp"

namespace backspring {
namespace {

/// The arc whose end lies between two neighbouring parts, and whether that is its rear end.
struct ArcEnd {
    int arc;
    bool rear;
};

std::optional<ArcEnd> end_between(const Part& a, const Part& b) {
    const auto rank = [](const Part& part) { return 2 * part.arc + (part.flat ? 1 : 0); };
    const Part& front = rank(a) < rank(b) ? a : b;
    const Part& rear = rank(a) < rank(b) ? b : a;
    if (!front.flat && (rear.arc == front.arc || (!rear.flat && rear.arc == front.arc + 1))) {
        return ArcEnd{front.arc, true};
    }
    if (front.flat && !rear.flat && rear.arc == front.arc + 1) return ArcEnd{rear.arc, false};
    return std::nullopt;
}

[[nodiscard]] SurfacePoint place_of(const ArcEnd& end, const TurnedOutline& outline) {
    return outline.at_slope(
        end.arc, end.rear ? outline.highest_slope(end.arc) : outline.lowest_slope(end.arc));
}

/// Where the end of an arc bears, from an angle near by; nothing where that leads out of a range.
///
/// As the blade turns by an angle the end goes by -y and x times it, and its slope by 1 + slope^2.
std::optional<double> end_bears_deg(
    const Joint& joint, const ArcEnd& end, double angle_deg, double low_deg, double high_deg) {
    constexpr int most_steps = 8;
    constexpr double last_step = 1e-9;
    for (int step = 0; step < most_steps; ++step) {
        const Indenter body = body_of(joint, 0, angle_deg);
        const auto [x, y, slope, arc, flat] = place_of(end, body.outline);
        const double station = joint.pivot_mm + x;
        if (!(station > joint.pad.start_mm)) return std::nullopt;
        const OwnCompliance own = own_compliance(joint.flexibility, station);
        if (!(own.to_mm > own.from_mm)) return std::nullopt;
        const Pressed pressed = press(y - body.face_at_mm(station), slope - body.face_slope,
                                      own.mm_per_n, own.rad_per_n, own.rad_per_nmm);
        const double rate = (x + slope * y) * own.rad_per_n / own.mm_per_n -
                            pressed.slope_rate * y - (1.0 + slope * slope);
        const double way = -pressed.miss / rate;
        angle_deg += degrees(way);
        if (!(angle_deg > low_deg && angle_deg < high_deg)) return std::nullopt;
        if (std::abs(way) <= last_step) return angle_deg;
    }
    return std::nullopt;
}

/// A touch that goes over from a part to the next, or from the pad to its edge or back.
class GoingOver {
  public:
    GoingOver(const Joint& joint, const Touch& low, const Touch& high)
        : joint_(joint),
          from_(pad_edge(low, joint.pad)),
          to_(pad_edge(high, joint.pad)),
          end_(end_between(low.part, high.part)),
          same_part_(low.part.arc == high.part.arc && low.part.flat == high.part.flat) {
        const bool start = from_ == PadEdge::start || to_ == PadEdge::start;
        edge_mm_ = start ? joint.pad.start_mm : joint.pad.end_mm;
    }

    /// Whether one thing changes, and it is known where.
    [[nodiscard]] bool known() const {
        if (to_edge()) return same_part_ && (from_ == PadEdge::none || to_ == PadEdge::none);
        return !same_part_ && end_;
    }

    [[nodiscard]] std::optional<double> angle_deg(const Contact& low, const Contact& high) const {
        const double low_deg = low.blade_angle_deg, high_deg = high.blade_angle_deg;
        if (!to_edge() && from_ == PadEdge::none) {
            // A flat is left a little way from where the blade lies on it.
            const double near_deg = low.touches[0].part.flat ? low_deg : high_deg;
            if (auto found = end_bears_deg(joint_, *end_, near_deg, low_deg, high_deg))
                return found;
        }
        const auto miss = [this](double angle) { return miss_at_deg(angle); };
        const double at_low = miss(low_deg), at_high = miss(high_deg);
        if (!(at_low * at_high < 0.0)) return std::nullopt;
        return find_root(miss, low_deg, high_deg, at_low, at_high);
    }

    /// The contact there as one on either side of it.
    [[nodiscard]] std::optional<Contact> bearing_as(const Touch& side, double angle_deg) const {
        const Indenter body = body_of(joint_, 0, angle_deg);
        const auto point = place(body.outline);
        if (!point) return std::nullopt;
        const double middle_mm = 0.5 * (joint_.pad.start_mm + joint_.pad.end_mm);
        double x = to_edge() ? std::nextafter(edge_mm_, middle_mm) : joint_.pivot_mm + point->x_mm;
        if (pad_edge(side, joint_.pad) != PadEdge::none) x = edge_mm_;
        if (!(x >= joint_.pad.start_mm && x <= joint_.pad.end_mm)) return std::nullopt;
        Touch touch{x, point->y_mm, point->slope, 0.0, side.part};
        touch.force_n = body.overlap_mm(touch) / own_compliance(joint_.flexibility, x).mm_per_n;
        if (!(touch.force_n > 0.0) || !kick_clears(joint_, body, touch)) return std::nullopt;
        Contact contact;
        contact.blade_angle_deg = angle_deg;
        add_touch(contact, body, touch);
        return contact;
    }

  private:
    [[nodiscard]] bool to_edge() const { return from_ != to_; }

    [[nodiscard]] std::optional<SurfacePoint> place(const TurnedOutline& outline) const {
        return to_edge() ? outline.top_at(edge_mm_ - joint_.pivot_mm)
                         : std::optional(place_of(*end_, outline));
    }

    [[nodiscard]] double miss_at_deg(double angle_deg) const {
        const Indenter body = body_of(joint_, 0, angle_deg);
        const auto point = place(body.outline);
        if (!point) return 0.0;
        if (!to_edge() && from_ != PadEdge::none) return joint_.pivot_mm + point->x_mm - edge_mm_;
        return miss_at(joint_.flexibility, body, *point);
    }

    const Joint& joint_;
    PadEdge from_, to_;
    std::optional<ArcEnd> end_;
    bool same_part_;
    double edge_mm_;
};

}  // namespace

std::optional<BothSides> detail::goes_over(const Joint& joint,
                                           const Contact& low,
                                           const Contact& high) {
    if (!joint.alone() || low.count != 1 || high.count != 1) return std::nullopt;
    const Touch &a = low.touches[0], &b = high.touches[0];
    if (a.part.kick || b.part.kick) return std::nullopt;
    const GoingOver over(joint, a, b);
    const auto angle = over.known() ? over.angle_deg(low, high) : std::nullopt;
    if (!angle) return std::nullopt;
    auto before = over.bearing_as(a, *angle), beyond = over.bearing_as(b, *angle);
    if (!before || !beyond) return std::nullopt;
    return BothSides{*std::move(before), *std::move(beyond)};
}

}  // namespace backspring
