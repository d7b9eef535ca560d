#include "coupled_ends.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "along_outline.hpp"
#include "backspring/core/root.hpp"
#include "bearing_set.hpp"

namespace backspring {
namespace {

constexpr int kMostDoublings = 60;
constexpr int kMostPasses = 40;
// Of a moment.
constexpr double kMomentRounding = 1e-13;

/// Root of a falling function that is nearly straight, from a place near it: secant steps to
/// rounding error, or a bracket where they do not get there.
///
/// @param fall     about how fast it falls; becomes how fast it did between the first two places
/// @param nothing  a value that is rounding
double find_falling_root(FunctionRef f, double first, double& fall, double nothing) {
    double x0 = first, f0 = f(x0);
    if (std::abs(f0) <= nothing) return x0;
    const double second = first + f0 / fall;
    double x1 = second, f1 = f(x1);
    constexpr double told = 1e3;  // times rounding
    const double between = (f0 - f1) / (x1 - x0);
    if (std::abs(f0) > told * nothing && between > 0.0) fall = between;
    for (int round = 0; round < 12; ++round) {
        if (std::abs(f1) <= nothing || x1 == x0 || !(std::abs(f1) < std::abs(f0))) break;
        const double next = x1 - f1 * (x1 - x0) / (f1 - f0);
        x0 = x1, f0 = f1;
        x1 = next, f1 = f(x1);
    }
    const double scale = std::max(std::abs(first), std::abs(second));
    const bool still = std::abs(x1 - x0) <= 1e-12 * std::max(scale, std::abs(x1));
    if (std::abs(f1) <= nothing || still) return std::abs(f1) <= std::abs(f0) ? x1 : x0;
    // Where an indenter comes or goes the function has a kink.
    double low = first, at_low = f(low);
    double step = at_low > 0.0 ? std::abs(second - first) : -std::abs(second - first);
    if (step == 0.0) return low;
    for (int round = 0; round < kMostDoublings; ++round, step *= 2.0) {
        const double high = low + step, at_high = f(high);
        if (at_low * at_high <= 0.0) return find_root(f, low, high, at_low, at_high);
        low = high;
        at_low = at_high;
    }
    return low;
}

/// The turn of a spring on its one pin at which both moments are alike.
void balance(SpringEnd& own, SpringEnd& far, Balance& last) {
    const auto lack = [&](double turn) { return own.moment_nmm(turn) - far.moment_nmm(-turn); };
    const auto none_bears = [&] { return own.moment_nmm() == 0.0 && far.moment_nmm() == 0.0; };
    // Where no blade bears any turn would do.
    if (last.fall_nmm_per_rad == 0.0 || (lack(last.turn_rad) == 0.0 && none_bears())) {
        last.turn_rad = last.fall_nmm_per_rad = 0.0;
        if (lack(0.0) == 0.0) return;
        last.nothing_nmm = kMomentRounding * std::max(own.moment_nmm(), far.moment_nmm());
        last.fall_nmm_per_rad = own.stiffness_nmm_per_rad() + far.stiffness_nmm_per_rad();
    }
    last.turn_rad = find_falling_root(lack, last.turn_rad, last.fall_nmm_per_rad, last.nothing_nmm);
    if (own.turned_rad() != last.turn_rad) lack(last.turn_rad);
}

/// The moments that agree with what each does to the other end and gets back.
void agree(SpringEnd& own, SpringEnd& far, double cross_rad_per_nmm) {
    const auto lack = [&](double moment) {
        const double other = own.moment_nmm(cross_rad_per_nmm * moment);
        return far.moment_nmm(cross_rad_per_nmm * other) - moment;
    };
    const double alone = far.moment_nmm(0.0);
    double fall = 1.0;
    const double moment = find_falling_root(lack, alone, fall, kMomentRounding * alone);
    if (own.turned_rad() != cross_rad_per_nmm * moment) lack(moment);
}

/// Both ends until what passes through the frame stays as it is: each round it is less by the
/// frame's give over the spring's, a hundredth.
void agree_through(SpringEnd& own, SpringEnd& far, double cross_rad_per_nmm, const RootCross& x) {
    double last = std::numeric_limits<double>::infinity();
    for (int round = 0; round < kMostPasses; ++round) {
        agree(own, far, cross_rad_per_nmm);
        const RootMove own_move = moved_through(x, false, far.sums());
        const RootMove far_move = moved_through(x, true, own.sums());
        const double miss =
            std::abs(own_move.lift_mm - own.lift_mm()) + std::abs(far_move.lift_mm - far.lift_mm());
        if (!(miss < last)) return;
        last = miss;
        own.move_root(own_move.lift_mm, own_move.turn_rad);
        far.move_root(far_move.lift_mm, far_move.turn_rad);
    }
}

}  // namespace

RootMove detail::moved_through(const RootCross& frame, bool far, const EndSums& by) {
    const double per_moment = far ? frame.turn_rad_per_n : frame.lift_mm_per_nmm;
    const double per_force = far ? frame.lift_mm_per_nmm : frame.turn_rad_per_n;
    return {frame.lift_mm_per_n * by.force_n + per_moment * by.moment_nmm, per_force * by.force_n};
}

RootMove detail::root_moved_by(const FarEnd& joined, bool far, const EndSums& by) {
    RootMove move;
    if (joined.through_frame) move = moved_through(*joined.through_frame, far, by);
    move.turn_rad += joined.cross_rad_per_nmm * by.moment_nmm;
    return move;
}

void detail::SpringEnd::add(const Mounted& tang, int blade, double blade_angle_deg) {
    add_indenters(indenters_, tang, blade, blade_angle_deg, pushed_);
    free_slopes_.resize(indenters_.size(), tang.face_slope);
    free_faces_mm_.resize(indenters_.size(), tang.face_mm);
}

void detail::SpringEnd::bore(const std::vector<Touch>& touches) {
    borne_.clear();
    for (const Touch& touch : touches) {
        const auto bears = [&](const Indenter& indenter) {
            return indenter.part.blade == touch.part.blade && indenter.part.kick == touch.part.kick;
        };
        const auto indenter = std::ranges::find_if(indenters_, bears);
        if (indenter == indenters_.end()) return borne_.clear();
        const auto turned = turned_along(*indenter, touch);
        if (!turned) return borne_.clear();
        borne_.push_back({&*indenter, *turned});
    }
    if (flats_side_by_side(borne_)) borne_.clear();
}

std::vector<Touch> detail::SpringEnd::touches() const {
    std::vector<Touch> touches;
    for (const Borne& borne : borne_) touches.push_back(borne.touch);
    return touches;
}

void detail::SpringEnd::move_root(double lift_mm, double turn_rad) {
    lift_mm_ = lift_mm;
    moved_rad_ = turn_rad;
}

double detail::SpringEnd::moment_nmm(double turn_rad) {
    for (std::size_t i = 0; i < indenters_.size(); ++i) {
        indenters_[i].face_slope = free_slopes_[i] + turn_rad + moved_rad_;
        indenters_[i].face_mm = free_faces_mm_[i] + lift_mm_;
    }
    turn_rad_ = turn_rad;
    borne_ = bear(flexibility_, indenters_, borne_);
    moment_nmm_ = pushed_ ? pushed_->moment_nmm() : 0.0;
    force_n_ = 0.0;
    for (const Borne& b : borne_) {
        moment_nmm_ += b.touch.force_n * b.touch.x_mm;
        force_n_ += b.touch.force_n;
    }
    return moment_nmm_;
}

double detail::SpringEnd::stiffness_nmm_per_rad() const {
    if (indenters_.empty()) return 0.0;
    const double pivot = indenters_.front().pivot_mm;
    return pivot * pivot / deflection_per_force(flexibility_, pivot, pivot);
}

void detail::settle(SpringEnd& own, SpringEnd* far, const FarEnd* joined, Balance& last) {
    if (!far) {
        own.moment_nmm(0.0);
    } else if (joined->turns) {
        balance(own, *far, last);
    } else if (joined->through_frame) {
        agree_through(own, *far, joined->cross_rad_per_nmm, *joined->through_frame);
    } else {
        agree(own, *far, joined->cross_rad_per_nmm);
    }
}

}  // namespace backspring
