#include <algorithm>
#include <cmath>

#include "along_outline.hpp"
#include "backspring/core/interpolant.hpp"
#include "following.hpp"
#include "neighbours.hpp"
#include "pad_edge.hpp"
#include "twins.hpp"

namespace backspring {
namespace {

/// All touches of a contact, the own blade's first, then those beside it, then the far ones.
std::vector<Touch> all_touches(const Contact& contact) {
    std::vector<Touch> all(contact.all().begin(), contact.all().end());
    all.insert(all.end(), contact.others.beside.begin(), contact.others.beside.end());
    all.insert(all.end(), contact.others.far.begin(), contact.others.far.end());
    return all;
}

/// About what a number of a contact will be, by what it was in those near by.
///
/// @param number  of one of them, by its place
template <class Number>
double told(std::span<const Contact* const> near, double blade_angle_deg, const Number& number) {
    Interpolant curve;
    for (std::size_t k = 0; k < near.size(); ++k) {
        curve.add(near[k]->blade_angle_deg, number(k));
    }
    return curve.value_at(blade_angle_deg);
}

}  // namespace

detail::Following::Following(const Joint& joint,
                             double blade_angle_deg,
                             std::span<const Contact* const> near)
    : joint_(joint), near_(near), angles_deg_{blade_angle_deg} {
    const auto& others = near.front()->others.angles_deg;
    angles_deg_.insert(angles_deg_.end(), others.begin(), others.end());
    indenters_.resize(angles_deg_.size());
    is_free_.resize(angles_deg_.size());
    seats_.resize(angles_deg_.size(), -1);
}

bool detail::Following::found() { return find_seats() && set_touches() && settle(); }

/// @returns  false where two would be taken along
bool detail::Following::find_seats() {
    const std::vector<Touch> all = all_touches(*near_.front());
    for (std::size_t blade = 1; blade < angles_deg_.size(); ++blade) {
        if (neighbour(blade).standing.reach_deg == 0.0) continue;
        const auto own = [&](const Touch& touch) {
            return touch.part.blade == static_cast<int>(blade);
        };
        const auto first = std::ranges::find_if(all, own);
        if (first != all.end() && is_taken_along(blade, *first)) {
            if (taken_along_ != 0) return false;
            taken_along_ = blade;
            angles_deg_[blade] += angles_deg_[0] - near_.front()->blade_angle_deg;
            continue;
        }
        is_free_[blade] = true;
        if (first == all.end()) continue;
        angles_deg_[blade] = told(near_, angles_deg_[0], [&](std::size_t k) {
            return near_[k]->others.angles_deg[blade - 1];
        });
    }
    return true;
}

bool detail::Following::is_taken_along(std::size_t blade, const Touch& touch) const {
    constexpr double rounding = 1e-9;
    const Contact& near = *near_.front();
    const Mounted& other = tang(blade);
    if (is_far(blade) || other.pivot_mm != joint_.pivot_mm || near.count != 1) return false;
    const double lever = touch.x_mm - other.pivot_mm + touch.slope * touch.height_mm;
    return in_one_line(near.touches[0], touch) && std::abs(lever) > rounding * other.pivot_mm;
}

bool detail::Following::set_touches() {
    const std::vector<Touch> all = all_touches(*near_.front());
    if (all.empty() || all.size() > TouchesStep::kMostTouches) return false;
    for (std::size_t blade = 0; blade < angles_deg_.size(); ++blade) mount(blade);
    std::vector<std::vector<Touch>> known;
    for (const Contact* contact : near_) known.push_back(all_touches(*contact));
    touches_.reserve(TouchesStep::kMostTouches);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto blade = static_cast<std::size_t>(all[i].part.blade);
        const bool far = is_far(blade), flat = all[i].part.flat;
        const Touch last = far ? seen_from_own(joint_, all[i]) : all[i];
        if (last.part.kick && indenters_[blade].size() < 2) return false;
        const Indenter& indenter = indenters_[blade][last.part.kick ? 1 : 0];
        AnyTouch one{&indenter, last, far, pad_edge(last, indenter.pad) != PadEdge::none};
        if (!one.held) {
            const double place = told(near_, angles_deg_[0], [&](std::size_t k) {
                const Touch& touch = known[k][i];
                const Touch seen = far ? seen_from_own(joint_, touch) : touch;
                return flat ? seen.x_mm : seen.slope;
            });
            (flat ? one.touch.x_mm : one.touch.slope) = place;
        }
        if (!turn_along(one, 0.0)) {
            one.touch = last;
            if (!turn_along(one, 0.0)) return false;
        }
        touches_.push_back(one);
    }
    return true;
}

void detail::Following::add(const Touch& touch) {
    const auto blade = static_cast<std::size_t>(touch.part.blade);
    const Indenter& indenter = indenters_[blade][touch.part.kick ? 1 : 0];
    touches_.push_back(
        {&indenter, touch, is_far(blade), pad_edge(touch, indenter.pad) != PadEdge::none});
}

bool detail::Following::found_with(const Touch& touch) {
    const auto blade = static_cast<std::size_t>(touch.part.blade);
    if (touches_.size() == TouchesStep::kMostTouches) return false;
    if (taken_along_ != 0 && (blade == 0 || blade == taken_along_)) return false;
    add(touch);
    return settle();
}

bool detail::Following::found_instead(const std::vector<Touch>& touches) {
    const bool far = is_far(static_cast<std::size_t>(touches.front().part.blade));
    if (taken_along_ != 0) return false;
    std::erase_if(touches_, [&](const AnyTouch& each) { return each.far == far; });
    if (touches_.size() + touches.size() > TouchesStep::kMostTouches) return false;
    for (const Touch& touch : touches) add(touch);
    return settle();
}

}  // namespace backspring
