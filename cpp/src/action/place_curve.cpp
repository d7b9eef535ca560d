#include "place_curve.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "all_bear.hpp"
#include "cut.hpp"
#include "neighbours.hpp"
#include "pad_edge.hpp"

namespace backspring {

void detail::PlaceCurve::add_both(double blade_angle_deg, const BothTouches& touches) {
    const auto goes_on = [&](std::size_t i) {
        const Part &a = both_->last[i].part, &b = touches[i].part;
        return a.arc == b.arc && a.flat == b.flat && a.kick == b.kick;
    };
    if (!both_ || !goes_on(0) || !goes_on(1)) both_.emplace();
    both_->last = touches;
    if (both_->places[0].full()) return;
    for (std::size_t i = 0; i < touches.size(); ++i) {
        const Touch& touch = touches[i];
        both_->places[i].add(blade_angle_deg, touch.part.flat ? touch.x_mm : touch.slope);
    }
}

BothTouches detail::PlaceCurve::both_at(double blade_angle_deg) const {
    BothTouches touches = both_->last;
    for (std::size_t i = 0; i < touches.size(); ++i) {
        Touch& touch = touches[i];
        // At an edge of the pad a touch stays there.
        if (pad_edge(touch, joint_->pad) != PadEdge::none) continue;
        const double place = both_->places[i].value_at(blade_angle_deg);
        (touch.part.flat ? touch.x_mm : touch.slope) = place;
    }
    return touches;
}

void detail::PlaceCurve::add(const Contact& contact) {
    if (!joint_->alone()) {
        const double angle = contact.blade_angle_deg;
        const auto same = [&](const Known& k) { return k.contact.blade_angle_deg == angle; };
        if (std::ranges::any_of(known_, same)) return;
        known_.push_back({bearing_kind(contact, joint_->pad), contact});
        return;
    }
    const bool kick = contact.count == 1 && contact.touches[0].part.kick;
    if (contact.count == 2) add_both(contact.blade_angle_deg, contact.touches);
    if (kick) kick_ = contact.touches[0];
    tells_ = contact.count == 1 && !kick;
    if (!tells_ || curve_.full()) return;
    const Touch& touch = contact.touches[0];
    const bool at_edge = pad_edge(touch, joint_->pad) != PadEdge::none;
    const bool same =
        edge_mm_ ? touch.x_mm == *edge_mm_
                 : !at_edge && touch.part.arc == part_.arc && touch.part.flat == part_.flat;
    if (!same) curve_ = Interpolant(), edge_mm_.reset();
    part_ = touch.part;
    if (at_edge) edge_mm_ = touch.x_mm;
    if (at_edge) return;
    curve_.add(contact.blade_angle_deg, part_.flat ? touch.x_mm - joint_->pivot_mm : touch.slope);
}

Contact detail::PlaceCurve::contact_at(double blade_angle_deg) const {
    if (!joint_->alone()) return with_others(blade_angle_deg);
    if (tells_) {
        const double place =
            edge_mm_ ? *edge_mm_ - joint_->pivot_mm : curve_.value_at(blade_angle_deg);
        const PlaceGuess guess{part_.arc, part_.flat, place, edge_mm_.has_value()};
        return find_contact(*joint_, blade_angle_deg, nullptr, &guess);
    }
    if (both_) {
        if (auto contact = both_bear_as(*joint_, blade_angle_deg, both_at(blade_angle_deg)))
            return *contact;
    }
    if (kick_) {
        if (auto contact = kick_bears_as(*joint_, blade_angle_deg, *kick_)) return *contact;
    }
    return backspring::contact_at(*joint_, blade_angle_deg);
}

std::optional<TouchesAbreast> detail::PlaceCurve::abreast(
    std::span<const double> angles_deg) const {
    const bool too_many = angles_deg.size() > TouchesAbreast::kMost;
    if (too_many || !joint_->alone() || !tells_ || edge_mm_) return std::nullopt;
    OwnCompliances::Numbers guesses;
    for (std::size_t i = 0; i < angles_deg.size(); ++i) guesses[i] = curve_.value_at(angles_deg[i]);
    return std::optional<TouchesAbreast>(std::in_place, *joint_, part_, angles_deg,
                                         std::span(guesses).first(angles_deg.size()));
}

/// As those known bear that lie nearest, or as the nearest of the others.
Contact detail::PlaceCurve::with_others(double blade_angle_deg) const {
    constexpr int most_kinds = 2;
    constexpr std::size_t most = 4;
    std::vector<const Known*> nearest;
    for (const Known& known : known_) nearest.push_back(&known);
    std::ranges::sort(nearest, {}, [&](const Known* known) {
        return std::abs(known->contact.blade_angle_deg - blade_angle_deg);
    });
    for (int tried = 0; tried < most_kinds && !nearest.empty(); ++tried) {
        const std::size_t kind = nearest.front()->kind;
        std::vector<const Contact*> alike;
        // Through contacts much nearer to each other than to the angle a curve tells nothing.
        const double angle = nearest.front()->contact.blade_angle_deg;
        const double apart = 0.1 * std::abs(angle - blade_angle_deg);
        const auto stands_apart = [&](const Contact& one) {
            return std::ranges::all_of(alike, [&](const Contact* other) {
                return std::abs(one.blade_angle_deg - other->blade_angle_deg) > apart;
            });
        };
        for (const Known* known : nearest) {
            if (known->kind != kind || alike.size() == most) continue;
            if (stands_apart(known->contact)) alike.push_back(&known->contact);
        }
        if (auto found = all_bear_as(*joint_, blade_angle_deg, alike)) return *found;
        std::erase_if(nearest, [&](const Known* known) { return known->kind == kind; });
    }
    return backspring::contact_at(*joint_, blade_angle_deg);
}

}  // namespace backspring
