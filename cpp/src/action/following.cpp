#include "following.hpp"

#include <algorithm>
#include <cmath>

#include "along_outline.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/core/interpolant.hpp"
#include "neighbours.hpp"
#include "twins.hpp"

namespace backspring {
namespace {

constexpr int kMostFollowings = 10;
// Of slopes, and of levers by the distance from pin to pivot.
constexpr double kStill = 1e-13;
constexpr double kAlmostStill = 1e-11;  // if it gets no less
constexpr double kMostTurnDeg = 5.0;

/// All touches of a contact, the own blade's first, then those beside it, then the far ones.
std::vector<Touch> all_touches(const Contact& contact) {
    std::vector<Touch> all(contact.all().begin(), contact.all().end());
    all.insert(all.end(), contact.others.beside.begin(), contact.others.beside.end());
    all.insert(all.end(), contact.others.far.begin(), contact.others.far.end());
    return all;
}

bool at_edge(const Touch& touch, const Pad& pad) {
    return touch.x_mm == pad.start_mm || touch.x_mm == pad.end_mm;
}

bool bears_by_one_flat(const Touch& touch, const std::vector<Touch>& all) {
    const auto same = [&](const Touch& other) { return other.part.blade == touch.part.blade; };
    return touch.part.flat && std::ranges::count_if(all, same) == 1;
}

/// At an edge of the pad the outline is turned there, not along itself.
bool turn_along(AnyTouch& one, double by) {
    const Indenter& indenter = *one.indenter;
    if (!one.held) {
        const auto turned = turned_along(indenter, one.touch);
        if (!turned) return false;
        one.touch = *turned;
        return go_along(indenter, by, one.touch);
    }
    const auto top = indenter.outline.top_at(one.touch.x_mm - indenter.pivot_mm);
    if (!top) return false;
    one.touch.height_mm = top->y_mm;
    one.touch.slope = top->slope;
    one.touch.part.arc = top->arc;
    one.touch.part.flat = top->flat;
    return true;
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
    seats_.resize(angles_deg_.size(), -1);
}

const Neighbour& detail::Following::neighbour(std::size_t blade) const {
    return is_far(blade) ? joint_.far_end->blades[blade - 1 - joint_.beside.size()]
                         : joint_.beside[blade - 1];
}

void detail::Following::mount(std::size_t blade) {
    indenters_[blade].clear();
    add_indenters(indenters_[blade], tang(blade), static_cast<int>(blade), angles_deg_[blade]);
}

bool detail::Following::found() { return find_seats() && set_touches() && follow(); }

/// @returns  false where one seats in a way of its own
bool detail::Following::find_seats() {
    const std::vector<Touch> all = all_touches(*near_.front());
    for (std::size_t blade = 1; blade < angles_deg_.size(); ++blade) {
        const Neighbour& other = neighbour(blade);
        if (other.standing.reach_deg == 0.0) continue;
        const bool on_face = other.seat_mm > 0.0;
        const auto own = [&](const Touch& touch) {
            return touch.part.blade == static_cast<int>(blade);
        };
        const auto first = std::ranges::find_if(all, own);
        if (first == all.end()) {
            if (on_face) loose_.push_back(blade);
            if (!on_face && angles_deg_[blade] != other.seat_deg) return false;
            continue;
        }
        if (on_face && !bears_by_one_flat(*first, all)) return false;
        if (is_taken_along(blade, *first)) {
            if (taken_along_ != 0) return false;
            taken_along_ = blade;
            angles_deg_[blade] += angles_deg_[0] - near_.front()->blade_angle_deg;
            continue;
        }
        seats_[blade] = static_cast<int>(count_++);
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

/// Whether the blade taken along is driven back from either side of where it runs along the own
/// one: there each of both bears where the other did.
bool detail::Following::stays_along() const {
    if (taken_along_ == 0) return true;
    const auto of = [&](std::size_t blade) {
        return *std::ranges::find_if(touches_, [&](const AnyTouch& each) {
            return static_cast<std::size_t>(each.touch.part.blade) == blade;
        });
    };
    const AnyTouch own = of(0), other = of(taken_along_);
    const double ahead = other.touch.x_mm > own.touch.x_mm ? 1.0 : -1.0;
    return in_one_line(own.touch, other.touch) && ahead * other.lever_mm() > 0.0 &&
           ahead * own.lever_mm() < 0.0;
}

bool detail::Following::set_touches() {
    const std::vector<Touch> all = all_touches(*near_.front());
    if (all.empty() || all.size() > TouchesStep::kMostTouches) return false;
    for (std::size_t blade = 0; blade < angles_deg_.size(); ++blade) mount(blade);
    std::vector<std::vector<Touch>> known;
    for (const Contact* contact : near_) known.push_back(all_touches(*contact));
    touches_.reserve(all.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto blade = static_cast<std::size_t>(all[i].part.blade);
        const bool far = is_far(blade), flat = all[i].part.flat;
        const Touch last = far ? seen_from_own(joint_, all[i]) : all[i];
        if (last.part.kick && indenters_[blade].size() < 2) return false;
        const Indenter& indenter = indenters_[blade][last.part.kick ? 1 : 0];
        AnyTouch one{&indenter, last, far, at_edge(last, indenter.pad), seats_[blade]};
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

bool detail::Following::follow() {
    double least = 1.0;
    for (int round = 0; round < kMostFollowings; ++round) {
        TouchesStep step(joint_, touches_, count_);
        if (!step.pushes()) return false;
        const double worst = step.worst();
        if (worst <= kStill || (worst <= kAlmostStill && worst >= least)) return keep(step);
        if (round > 3 && !(worst < least)) return false;
        least = worst;
        const auto by = step.step();
        if (!by || !go(*by)) return false;
    }
    return false;
}

bool detail::Following::go(const TouchesStep::Column& by) {
    for (std::size_t blade = 1; blade < angles_deg_.size(); ++blade) {
        if (seats_[blade] < 0) continue;
        const double turn = degrees(by[touches_.size() + static_cast<std::size_t>(seats_[blade])]);
        const Standing& standing = neighbour(blade).standing;
        angles_deg_[blade] += turn;
        const double away = std::abs(angles_deg_[blade] - standing.blade_angle_deg);
        if (!(std::abs(turn) <= kMostTurnDeg && away <= standing.reach_deg)) return false;
        mount(blade);
    }
    for (std::size_t i = 0; i < touches_.size(); ++i) {
        if (!std::isfinite(by[i]) || !turn_along(touches_[i], by[i])) return false;
    }
    return true;
}

/// Slope of the bent face at a blade's pivot.
double detail::Following::slope_at_pivot(std::size_t blade) const {
    const bool far = is_far(blade);
    const double pivot = tang(blade).pivot_mm;
    const Flexibility& flexibility = far ? joint_.far_end->flexibility : joint_.flexibility;
    double slope = tang(blade).face_slope + root(far).turn_rad;
    for (const AnyTouch& each : touches_) {
        if (each.far != far) continue;
        slope += each.touch.force_n * slope_per_force(flexibility, pivot, each.touch.x_mm);
    }
    return slope;
}

bool detail::Following::keep(TouchesStep& step) {
    if (!step.seats_are_least() || !stays_along()) return false;
    roots_ = {step.root_moved(false), step.root_moved(true)};
    for (const std::size_t blade : loose_) {
        const double nominal = neighbour(blade).standing.blade_angle_deg;
        angles_deg_[blade] = nominal + degrees(std::atan(slope_at_pivot(blade)));
        mount(blade);
    }
    return true;
}

}  // namespace backspring
