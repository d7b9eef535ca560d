#include "following.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "along_outline.hpp"
#include "backspring/core/angle.hpp"
#include "lets_go.hpp"
#include "neighbours.hpp"
#include "twins.hpp"

namespace backspring {
namespace {

constexpr int kMostFollowings = 10;
constexpr int kMostChanges = 5;
// Of slopes, and of levers by the distance from pin to pivot.
constexpr double kStill = 1e-13;
// Where it gets no less: torque is then nearer to the rate of energy than after a search.
constexpr double kAlmostStill = 1e-10;
constexpr double kMostTurnDeg = 5.0;

}  // namespace

/// At an edge of the pad the outline is turned there, not along itself.
bool detail::turn_along(AnyTouch& one, double by) {
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

const Neighbour& detail::Following::neighbour(std::size_t blade) const {
    return is_far(blade) ? joint_.far_end->blades[blade - 1 - joint_.beside.size()]
                         : joint_.beside[blade - 1];
}

void detail::Following::mount(std::size_t blade) {
    indenters_[blade].clear();
    add_indenters(indenters_[blade], tang(blade), static_cast<int>(blade), angles_deg_[blade]);
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

void detail::Following::number_seats() {
    std::ranges::fill(seats_, -1);
    count_ = 0;
    for (AnyTouch& each : touches_) {
        const auto blade = static_cast<std::size_t>(each.touch.part.blade);
        if (is_free_[blade] && seats_[blade] < 0) seats_[blade] = static_cast<int>(count_++);
        each.seat = seats_[blade];
    }
}

bool detail::Following::settle() {
    for (int change = 0; change <= kMostChanges; ++change) {
        number_seats();
        const Way way = follow();
        if (way == Way::there || way == Way::lost) return way == Way::there;
        if (way == Way::pulls && !let_go()) return false;
    }
    return false;
}

/// What pulls most bears no more.
bool detail::Following::let_go() {
    const auto force = [](const AnyTouch& each) { return each.touch.force_n; };
    const auto most = std::ranges::min_element(touches_, {}, force);
    const auto blade = static_cast<std::size_t>(most->touch.part.blade);
    if (taken_along_ != 0 && (blade == 0 || blade == taken_along_)) return false;
    touches_.erase(most);
    return !touches_.empty();
}

detail::Following::Way detail::Following::follow() {
    double least = 1.0;
    for (int round = 0; round < kMostFollowings; ++round) {
        TouchesStep step(joint_, touches_, count_);
        if (!step.solved()) return Way::lost;
        if (!step.pushes()) return Way::pulls;
        const double worst = step.worst();
        if (worst <= kStill || (worst <= kAlmostStill && worst >= least)) return keep(step);
        if (round > 3 && !(worst < least)) return Way::lost;
        least = worst;
        const auto by = step.step();
        if (!by || !go(*by)) return Way::lost;
    }
    return Way::lost;
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

detail::Following::Way detail::Following::keep(TouchesStep& step) {
    if (!step.seats_are_least() || !stays_along() || !seat_on_flats()) return Way::lost;
    roots_ = {step.root_moved(false), step.root_moved(true)};
    for (std::size_t blade = 1; blade < angles_deg_.size(); ++blade) {
        if (!is_loose(blade)) continue;
        if (on_face(blade)) {
            const double slope = slope_at_pivot(blade);
            angles_deg_[blade] =
                neighbour(blade).standing.blade_angle_deg + degrees(std::atan(slope));
            mount(blade);
        } else if (const Way way = set_loose(blade); way != Way::there) {
            return way;
        }
    }
    // As a search lists them: what bears is told apart by that.
    std::ranges::sort(touches_, {}, [](const AnyTouch& each) {
        return std::pair(each.touch.part.blade, each.touch.x_mm);
    });
    return Way::there;
}

/// Whether those that seat on a face bear by one flat.
bool detail::Following::seat_on_flats() const {
    for (std::size_t blade = 1; blade < angles_deg_.size(); ++blade) {
        if (seats_[blade] < 0 || !on_face(blade)) continue;
        const auto same = [&](const AnyTouch& each) { return each.seat == seats_[blade]; };
        const bool flat = std::ranges::find_if(touches_, same)->touch.part.flat;
        if (!flat || std::ranges::count_if(touches_, same) > 1) return false;
    }
    return true;
}

/// Where one stands that is free to seat on its kick and bears nowhere; or it comes to bear.
detail::Following::Way detail::Following::set_loose(std::size_t blade) {
    const bool far = is_far(blade);
    const Flexibility& flexibility = far ? joint_.far_end->flexibility : joint_.flexibility;
    const FaceAsBent face(flexibility, touches_, far, root(far));
    const auto loose =
        loose_at(face, neighbour(blade), static_cast<int>(blade), angles_deg_[blade]);
    if (!loose) return Way::lost;
    angles_deg_[blade] = loose->blade_angle_deg;
    mount(blade);
    if (loose->bear.empty()) return Way::there;
    if (touches_.size() + loose->bear.size() > TouchesStep::kMostTouches) return Way::lost;
    for (const Touch& touch : loose->bear) add(touch);
    return Way::comes;
}

}  // namespace backspring
