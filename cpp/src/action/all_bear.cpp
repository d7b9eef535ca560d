#include "all_bear.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "along_outline.hpp"
#include "backspring/core/angle.hpp"
#include "touches_step.hpp"

namespace backspring {
namespace {

constexpr int kMostFollowed = 10;
constexpr double kStill = 1e-15;   // of slopes and levers
constexpr double kAlmost = 1e-11;  // still, if it gets no less
constexpr double kMostTurnDeg = 5.0;

const Neighbour& neighbour_of(const Joint& joint, std::size_t blade) {
    const std::size_t beside = joint.beside.size();
    return blade <= beside ? joint.beside[blade - 1] : joint.far_end->blades[blade - 1 - beside];
}

bool is_flat_alone(const Touch& touch, const std::vector<Touch>& all) {
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

class Following {
  public:
    Following(const Joint& joint, double blade_angle_deg, const Contact& near)
        : joint_(joint), angles_deg_{blade_angle_deg} {
        const auto& others = near.others.angles_deg;
        angles_deg_.insert(angles_deg_.end(), others.begin(), others.end());
        indenters_.resize(angles_deg_.size());
        seats_.resize(angles_deg_.size(), -1);
        for (const Touch& touch : near.all()) all_.push_back(touch);
        for (const Touch& touch : near.others.beside) all_.push_back(touch);
        first_far_ = all_.size();
        for (Touch touch : near.others.far) {
            touch.x_mm = -joint.far_end->span_mm - touch.x_mm;
            touch.slope = -touch.slope;
            all_.push_back(touch);
        }
    }

    [[nodiscard]] std::optional<AllBear> found() {
        if (all_.empty() || all_.size() > TouchesStep::kMostTouches) return std::nullopt;
        if (!find_seats()) return std::nullopt;
        for (std::size_t blade = 0; blade < angles_deg_.size(); ++blade) mount(blade);
        for (std::size_t i = 0; i < all_.size(); ++i) {
            const Part& part = all_[i].part;
            const auto blade = static_cast<std::size_t>(part.blade);
            if (part.kick && indenters_[blade].size() < 2) return std::nullopt;
            touches_.push_back({&indenters_[blade][part.kick ? 1 : 0], all_[i], i >= first_far_,
                                at_edge(all_[i], tang_of(blade).pad), seats_[blade]});
            if (!turn_along(touches_.back(), 0.0)) return std::nullopt;
        }
        return follow() ? std::optional(std::move(answer_)) : std::nullopt;
    }

  private:
    [[nodiscard]] const Mounted& tang_of(std::size_t blade) const {
        return blade == 0 ? joint_ : neighbour_of(joint_, blade).tang;
    }

    static bool at_edge(const Touch& touch, const Pad& pad) {
        return touch.x_mm == pad.start_mm || touch.x_mm == pad.end_mm;
    }

    void mount(std::size_t blade) {
        indenters_[blade].clear();
        add_indenters(indenters_[blade], tang_of(blade), static_cast<int>(blade),
                      angles_deg_[blade]);
    }

    /// @returns  false where one seats in a way of its own
    [[nodiscard]] bool find_seats() {
        for (std::size_t blade = 1; blade < angles_deg_.size(); ++blade) {
            const Neighbour& other = neighbour_of(joint_, blade);
            if (other.standing.reach_deg == 0.0) continue;
            const bool on_face = other.seat_mm > 0.0;
            const auto own = [&](const Touch& touch) {
                return touch.part.blade == static_cast<int>(blade);
            };
            const auto first = std::ranges::find_if(all_, own);
            if (first == all_.end()) {
                if (on_face) loose_.push_back(blade);
                if (!on_face && angles_deg_[blade] != other.seat_deg) return false;
                continue;
            }
            if (on_face && !is_flat_alone(*first, all_)) return false;
            seats_[blade] = count_++;
        }
        return true;
    }

    [[nodiscard]] bool follow() {
        double least = 1.0;
        for (int round = 0; round < kMostFollowed; ++round) {
            TouchesStep step(joint_, touches_, count_);
            for (const AnyTouch& each : touches_) {
                if (!(each.touch.force_n > 0.0)) return false;
            }
            const double worst = step.worst();
            if (worst <= kStill || (worst <= kAlmost && worst >= least)) return keep(step);
            if (round > 3 && !(worst < least)) return false;
            least = worst;
            if (!go(step.step())) return false;
        }
        return false;
    }

    [[nodiscard]] bool go(const TouchesStep::Column& by) {
        if (!by.allFinite()) return false;
        const auto n = static_cast<Eigen::Index>(touches_.size());
        for (std::size_t blade = 1; blade < angles_deg_.size(); ++blade) {
            if (seats_[blade] < 0) continue;
            const double turn = degrees(by[n + seats_[blade]]);
            const Standing& standing = neighbour_of(joint_, blade).standing;
            angles_deg_[blade] += turn;
            const double away = angles_deg_[blade] - standing.blade_angle_deg;
            if (std::abs(turn) > kMostTurnDeg || std::abs(away) > standing.reach_deg) return false;
            mount(blade);
        }
        for (Eigen::Index i = 0; i < n; ++i) {
            if (!turn_along(touches_[static_cast<std::size_t>(i)], by[i])) return false;
        }
        return true;
    }

    /// Slope of the bent face at a pivot.
    [[nodiscard]] double slope_at_pivot(std::size_t blade, const TouchesStep& step) const {
        const Mounted& tang = tang_of(blade);
        const bool far = blade > joint_.beside.size();
        const Flexibility& flexibility = far ? joint_.far_end->flexibility : joint_.flexibility;
        double slope = tang.face_slope + step.root_turn_rad(far);
        for (const AnyTouch& each : touches_) {
            if (each.far != far) continue;
            slope +=
                each.touch.force_n * slope_per_force(flexibility, tang.pivot_mm, each.touch.x_mm);
        }
        return slope;
    }

    [[nodiscard]] bool keep(TouchesStep& step) {
        if (!step.seats_are_least()) return false;
        for (const std::size_t blade : loose_) {
            const double nominal = neighbour_of(joint_, blade).standing.blade_angle_deg;
            angles_deg_[blade] = nominal + degrees(std::atan(slope_at_pivot(blade, step)));
        }
        for (const AnyTouch& each : touches_) {
            (each.far ? answer_.balance.far : answer_.balance.own).push_back(each.touch);
        }
        answer_.balance.turn_rad = step.turn_rad();
        answer_.balance.sums = step.sums();
        answer_.angles_deg = std::move(angles_deg_);
        return true;
    }

    const Joint& joint_;
    std::vector<double> angles_deg_;
    std::vector<std::vector<Indenter>> indenters_;  ///< of each blade, body and kick
    std::vector<int> seats_;                        ///< which of those free to seat a blade is
    std::vector<std::size_t> loose_;                ///< free to seat on a face, and not in touch
    std::vector<Touch> all_;
    std::size_t first_far_ = 0;
    std::vector<AnyTouch> touches_;
    int count_ = 0;  ///< of those free to seat that bear
    AllBear answer_;
};

}  // namespace

std::optional<AllBear> detail::all_bear_as(const Joint& joint,
                                           double blade_angle_deg,
                                           const Contact& near) {
    if (joint.flexibility.rigid()) return std::nullopt;
    return Following(joint, blade_angle_deg, near).found();
}

}  // namespace backspring
