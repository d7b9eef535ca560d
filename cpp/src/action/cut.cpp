#include "cut.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "backspring/core/angle.hpp"
#include "backspring/core/root.hpp"
#include "neighbours.hpp"
#include "pad_edge.hpp"

namespace backspring {
namespace {

std::size_t part_of(const Touch& touch) {
    const auto arc = static_cast<std::size_t>(touch.part.arc);
    return 4 * arc + (touch.part.flat ? 2 : 0) + (touch.part.kick ? 1 : 0);
}

std::size_t kind_of(const Touch& touch, const Pad& pad) {
    return 3 * part_of(touch) + static_cast<std::size_t>(pad_edge(touch, pad));
}

/// Force of a touch of the other blades that another contact does not have.
std::optional<double> lone_force_n(const std::vector<Touch>& all,
                                   const std::vector<Touch>& others) {
    for (const Touch& touch : all) {
        const auto same = [&](const Touch& t) {
            return t.part.blade == touch.part.blade && t.part.kick == touch.part.kick;
        };
        if (std::ranges::none_of(others, same)) return touch.force_n;
    }
    return std::nullopt;
}

/// How far the outline's normal at a touch has to turn to the end of its arc, at which another part
/// follows.
double left_of_arc_rad(const Joint& joint, const Contact& contact, const Touch& own, int next) {
    const Arc& arc = joint.outline.body[static_cast<std::size_t>(own.part.arc)];
    const double end = next >= own.part.arc ? arc.to_rad : arc.from_rad;
    constexpr double pi = std::numbers::pi;
    return std::atan(own.slope) + 1.5 * pi - radians(contact.blade_angle_deg) - end;
}

/// The touch that another contact does not have.
const Touch& lone_touch(const Contact& contact, const Contact& other) {
    for (const Touch& touch : contact.all()) {
        const auto same = [&](const Touch& t) { return t.part.kick == touch.part.kick; };
        if (std::ranges::none_of(other.all(), same)) return touch;
    }
    return contact.touches[0];
}

}  // namespace

std::size_t detail::bearing_kind(const Contact& contact, const Pad& pad) {
    constexpr std::size_t most_kinds = 257;
    auto kind = static_cast<std::size_t>(contact.count);
    for (const Touch& touch : contact.all()) kind = kind * most_kinds + kind_of(touch, pad);
    const auto add = [&](const Touch& touch) {
        kind = (kind * most_kinds + part_of(touch)) * most_kinds +
               static_cast<std::size_t>(touch.part.blade);
    };
    std::ranges::for_each(contact.others.beside, add);
    std::ranges::for_each(contact.others.far, add);
    return kind;
}

std::optional<double> detail::left_to(const Joint& joint,
                                      const Contact& contact,
                                      const Contact& other) {
    if (contact.count > other.count) return lone_touch(contact, other).force_n;
    if (contact.count < other.count) {
        const bool lacks_one = joint.alone() && contact.count == 1;
        if (!lacks_one) return std::nullopt;
        return clear_by_mm(joint, contact.blade_angle_deg, contact.touches[0],
                           lone_touch(other, contact));
    }
    for (int k = 0; k < contact.count; ++k) {
        const auto i = static_cast<std::size_t>(k);
        const Touch &own = contact.touches[i], &its = other.touches[i];
        const PadEdge edge = pad_edge(its, joint.pad);
        if (pad_edge(own, joint.pad) != edge) {
            if (edge == PadEdge::none) return std::nullopt;
            return own.x_mm - (edge == PadEdge::start ? joint.pad.start_mm : joint.pad.end_mm);
        }
        if (own.part.flat == its.part.flat && own.part.arc == its.part.arc) continue;
        if (own.part.flat || own.part.kick != its.part.kick) return std::nullopt;
        return left_of_arc_rad(joint, contact, own, its.part.arc);
    }
    const auto beside = lone_force_n(contact.others.beside, other.others.beside);
    return beside ? beside : lone_force_n(contact.others.far, other.others.far);
}

std::optional<double> detail::comes_to_bear_deg(const Joint& joint,
                                                const Contact& low,
                                                const Contact& high) {
    if (!joint.alone() || low.count + high.count != 3) return std::nullopt;
    const Contact &one = low.count == 1 ? low : high, &two = low.count == 1 ? high : low;
    if (two.count != 2) return std::nullopt;
    const Touch& lone = lone_touch(two, one);
    const bool first = two.touches[0].part.kick == one.touches[0].part.kick;
    const Touch& bears = two.touches[first ? 0 : 1];
    const auto clear = [&](double angle) { return clear_by_mm(joint, angle, bears, lone); };
    double at_one_deg = one.blade_angle_deg, at_two_deg = two.blade_angle_deg;
    auto by_two = clear(at_two_deg), by_one = clear(at_one_deg);
    if (!by_two || !(*by_two < 0.0)) return std::nullopt;
    // Out of reach, or where it has no place on that side, it is clear by it is not known what.
    constexpr int most_halvings = 20;
    for (int i = 0; i < most_halvings && !by_one; ++i) {
        const double middle = 0.5 * (at_one_deg + at_two_deg);
        const auto by = clear(middle);
        const bool overlaps = by && *by < 0.0;
        (overlaps ? at_two_deg : at_one_deg) = middle;
        (overlaps ? by_two : by_one) = by;
    }
    if (!by_one || !(*by_one > 0.0)) return std::nullopt;
    const auto by = [&](double angle) { return clear(angle).value_or(*by_one); };
    return find_root(by, at_one_deg, at_two_deg, *by_one, *by_two);
}

void detail::CutSearch::keep(double angle_deg, double left, bool from_low) {
    if (told_.known && told_.angle_deg == angle_deg) return;
    before_ = std::exchange(told_, {angle_deg, left, true});
    if (std::exchange(from_low_, from_low) != from_low) before_.known = false;
}

double detail::CutSearch::next_deg(const Contact& low, const Contact& high) {
    const double gap = high.blade_angle_deg - low.blade_angle_deg;
    const double half = low.blade_angle_deg + 0.5 * gap;
    // What bears alone goes on farther than what bears with another.
    const bool high_first = high.count < low.count;
    auto from_high = high_first ? left_to(*joint_, high, low) : std::nullopt;
    const auto from_low = from_high ? std::nullopt : left_to(*joint_, low, high);
    if (!from_low && !high_first) from_high = left_to(*joint_, high, low);
    const auto left = from_low ? from_low : from_high;
    if (!left) return half;
    const double ahead = from_low ? 1.0 : -1.0;
    const double near = from_low ? low.blade_angle_deg : high.blade_angle_deg;
    const double far = near + ahead * gap;
    keep(near, *left, from_low.has_value());
    if (!before_.known || before_.left == *left || ++round_ % 8 == 0) return half;
    const double zero = near - *left * (near - before_.angle_deg) / (*left - before_.left);
    const double moved = std::abs(zero - std::exchange(zero_deg_, zero));
    doubt_deg_ = moved > 0.0 ? moved : 8.0 * std::max(doubt_deg_, cut_deg_);
    double angle = zero + 0.4 * ahead * cut_deg_;
    if (!(ahead * (far - angle) > 0.0)) {
        angle = far - ahead * std::max(0.8 * cut_deg_, std::min(doubt_deg_, 0.1 * gap));
    }
    return ahead * (angle - near) > 0.0 ? angle : half;
}

}  // namespace backspring
