#include "touches_step.hpp"

#include <algorithm>
#include <cmath>

#include "places.hpp"
#include "tent.hpp"

namespace backspring {

detail::TouchesStep::TouchesStep(const Joint& joint, std::span<AnyTouch> touches, int seats)
    : joint_(joint),
      touches_(touches),
      n_(static_cast<int>(touches.size())),
      seats_(seats),
      turns_(joint.far_end && joint.far_end->turns) {
    for (int i = 0; i < n_; ++i) {
        places_[static_cast<std::size_t>(i)] = beam_place(flexibility(i), at(i).touch.x_mm);
    }
    solve();
}

/// What a force at one touch does at another.
Compliance detail::TouchesStep::between(int moves, int pressed) const {
    const BeamPlace &here = place(moves), &there = place(pressed);
    if (at(moves).far == at(pressed).far) {
        const bool one_blade = at(moves).touch.part.blade == at(pressed).touch.part.blade;
        return one_blade ? compliance(flexibility(moves), here, there)
                         : beside_compliance(flexibility(moves), here, there);
    }
    if (turns_) return {0.0, 0.0};
    const FarEnd& far = *joint_.far_end;
    double turn = far.cross_rad_per_nmm * there.x_mm, lift = 0.0;
    if (far.through_frame) {
        const RootCross& x = *far.through_frame;
        const bool to_far = at(moves).far;
        turn += to_far ? x.lift_mm_per_nmm : x.turn_rad_per_n;
        const double by_moment = to_far ? x.turn_rad_per_n : x.lift_mm_per_nmm;
        lift = x.lift_mm_per_n + by_moment * there.x_mm;
    }
    return {lift + turn * here.x_mm, turn};
}

/// How fast the slope at one touch grows as a unit force at another goes along the spring.
double detail::TouchesStep::across_rate(int moves, int pressed) const {
    const AnyTouch &own = at(moves), &other = at(pressed);
    if (own.far != other.far) return turns_ ? 0.0 : joint_.far_end->cross_rad_per_nmm;
    const BeamPlace &here = place(moves), &there = place(pressed);
    const Flexibility& flexible = flexibility(moves);
    double rate =
        (here.x_mm < there.x_mm ? here : there).upto.a0 + flexible.root_rotation_rad_per_nmm;
    if (own.touch.part.blade != other.touch.part.blade) {
        rate += tent_rate(flexible, here, there) * here.shear_rad_per_n * there.shear_rad_per_n;
    }
    return rate;
}

/// How fast that slope grows as the place itself goes along the spring.
double detail::TouchesStep::bend_rate(int moves, int pressed) const {
    const AnyTouch &own = at(moves), &other = at(pressed);
    if (own.far != other.far) return 0.0;
    const BeamPlace &here = place(moves), &there = place(pressed);
    const Flexibility& flexible = flexibility(moves);
    double rate = 0.0;
    if (there.x_mm > here.x_mm) {
        rate = (there.x_mm - here.x_mm) * curvature_per_nmm(flexible, here.x_mm);
    }
    if (own.touch.part.blade != other.touch.part.blade) {
        rate -= tent_rate(flexible, here, there) * here.shear_rad_per_n * here.shear_rad_per_n;
    }
    return rate;
}

void detail::TouchesStep::solve() {
    const int size = n_ + (turns_ ? 1 : 0);
    Matrix moves = Matrix::Zero(size, size);
    Column overlaps = Column::Zero(size);
    slopes_.resize(n_, n_);
    for (int i = 0; i < n_; ++i) {
        overlaps[i] = at(i).indenter->overlap_mm(at(i).touch);
        for (int j = 0; j < n_; ++j) {
            const Compliance c = between(i, j);
            moves(i, j) = c.mm_per_n;
            slopes_(i, j) = c.rad_per_n;
        }
        if (turns_) moves(i, n_) = moves(n_, i) = sense(i) * place(i).x_mm;
    }
    give_.compute(moves);
    const Column solved = give_.solve(overlaps);
    forces_ = solved.head(n_);
    if (turns_) turn_rad_ = solved[n_];
    misses_ = slopes_ * forces_;
    torques_ = Column::Zero(seats_);
    for (int i = 0; i < n_; ++i) {
        AnyTouch& own = touches_[static_cast<std::size_t>(i)];
        const double x = own.touch.x_mm;
        misses_[i] += own.indenter->face_slope_at(x) + sense(i) * turn_rad_ - own.touch.slope;
        const Pad& pad = own.indenter->pad;
        own.held =
            (x == pad.start_mm && misses_[i] >= 0.0) || (x == pad.end_mm && misses_[i] <= 0.0);
        if (own.held) misses_[i] = 0.0;
        own.touch.force_n = forces_[i];
        if (own.seat >= 0) torques_[own.seat] += forces_[i] * own.lever_mm();
    }
}

std::array<EndSums, 2> detail::TouchesStep::sums() const {
    std::array<EndSums, 2> sums;
    for (const AnyTouch& each : touches_) {
        EndSums& end = sums[each.far ? 1 : 0];
        end.force_n += each.touch.force_n;
        end.moment_nmm += each.touch.force_n * each.touch.x_mm;
    }
    return sums;
}

double detail::TouchesStep::root_turn_rad(bool far) const {
    if (!joint_.far_end) return 0.0;
    if (turns_) return far ? -turn_rad_ : turn_rad_;
    const EndSums other = sums()[far ? 0 : 1];
    const FarEnd& end = *joint_.far_end;
    const double turn = end.cross_rad_per_nmm * other.moment_nmm;
    if (!end.through_frame) return turn;
    const RootCross& x = *end.through_frame;
    return turn + (far ? x.lift_mm_per_nmm : x.turn_rad_per_n) * other.force_n;
}

double detail::TouchesStep::worst() const {
    double worst = misses_.cwiseAbs().maxCoeff();
    const double scale = forces_.cwiseAbs().sum() * joint_.pivot_mm;
    return seats_ > 0 ? std::max(worst, torques_.cwiseAbs().maxCoeff() / scale) : worst;
}

/// Moves of a touch, by one of the unknowns.
void detail::TouchesStep::move(
    int touch, int column, double by_x, double by_height, double by_slope) {
    along_(touch, column) = by_x;
    out_(touch, column) = by_height;
    steeper_(touch, column) = by_slope;
}

void detail::TouchesStep::move_place(int touch) {
    const AnyTouch& own = at(touch);
    if (own.held) return;
    const double slope = own.touch.slope;
    if (own.touch.part.flat) return move(touch, touch, 1.0, slope, 0.0);
    const double steep = 1.0 + slope * slope;
    const double away =
        -own.indenter->outline.radius_mm(own.touch.part.arc) / (steep * std::sqrt(steep));
    move(touch, touch, away, slope * away, 1.0);
}

void detail::TouchesStep::turn_seat(int touch) {
    const AnyTouch& own = at(touch);
    if (own.seat < 0) return;
    const int column = n_ + own.seat;
    const double slope = own.touch.slope, steep = 1.0 + slope * slope;
    if (own.touch.part.flat || own.held) return move(touch, column, 0.0, own.lever_mm(), steep);
    const double out = own.indenter->outline.radius_mm(own.touch.part.arc) / std::sqrt(steep);
    const double ahead = own.touch.x_mm - own.indenter->pivot_mm;
    move(touch, column, out - own.touch.height_mm, ahead + slope * out, 0.0);
}

void detail::TouchesStep::differentiate() {
    const int all = n_ + seats_, size = n_ + (turns_ ? 1 : 0);
    along_ = out_ = steeper_ = Matrix::Zero(n_, all);
    for (int i = 0; i < n_; ++i) {
        move_place(i);
        turn_seat(i);
    }
    Matrix lacks = Matrix::Zero(size, all);
    const Column turned = slopes_ * forces_;
    for (int i = 0; i < n_; ++i) {
        const Indenter& indenter = *at(i).indenter;
        const double face = indenter.face_slope_at(at(i).touch.x_mm);
        lacks.row(i) = out_.row(i) - (face + turned[i] + sense(i) * turn_rad_) * along_.row(i);
        for (int j = 0; j < n_; ++j) lacks.row(i) -= slopes_(j, i) * forces_[j] * along_.row(j);
        if (turns_) lacks.row(n_) -= sense(i) * forces_[i] * along_.row(i);
    }
    const Matrix gains = give_.solve(lacks);
    rates_ = Matrix::Zero(all, all);
    for (int i = 0; i < n_; ++i) {
        const AnyTouch& own = at(i);
        auto rate = rates_.row(i);
        rate = slopes_.row(i) * gains.topRows(n_) - steeper_.row(i);
        if (turns_) rate += sense(i) * gains.row(n_);
        for (int j = 0; j < n_; ++j) {
            rate += across_rate(i, j) * forces_[j] * along_.row(j) +
                    bend_rate(i, j) * forces_[j] * along_.row(i);
        }
        rate = forces_[i] * rate + misses_[i] * gains.row(i);
        if (own.seat >= 0) {
            rates_.row(n_ + own.seat) +=
                own.lever_mm() * gains.row(i) +
                forces_[i] * (along_.row(i) + own.touch.height_mm * steeper_.row(i) +
                              own.touch.slope * out_.row(i));
        }
        if (!own.held) continue;
        rate.setZero();
        rate[i] = 1.0;
    }
}

detail::TouchesStep::Column detail::TouchesStep::step() {
    differentiate();
    Column lack(n_ + seats_);
    lack << -forces_.cwiseProduct(misses_), -torques_;
    return rates_.partialPivLu().solve(lack);
}

bool detail::TouchesStep::seats_are_least() {
    if (seats_ == 0) return true;
    differentiate();
    const Matrix given = rates_.partialPivLu().inverse().bottomRightCorner(seats_, seats_);
    if (!given.allFinite()) return false;
    const Matrix both_ways = given + given.transpose();
    return both_ways.llt().info() == Eigen::Success;
}

}  // namespace backspring
