#include "touches_step.hpp"

#include <algorithm>
#include <cmath>

#include "places.hpp"
#include "tent.hpp"

namespace backspring {

detail::TouchesStep::TouchesStep(const Joint& joint, std::span<AnyTouch> touches, std::size_t seats)
    : joint_(joint),
      touches_(touches),
      n_(touches.size()),
      seats_(seats),
      turns_(joint.far_end && joint.far_end->turns) {
    for (std::size_t i = 0; i < n_; ++i) places_[i] = beam_place(flexibility(i), at(i).touch.x_mm);
    solve();
    judge();
}

/// What a force at one touch does at another.
Compliance detail::TouchesStep::between(std::size_t moves, std::size_t pressed) const {
    const BeamPlace &here = places_[moves], &there = places_[pressed];
    if (at(moves).far == at(pressed).far) {
        const bool one_blade = at(moves).touch.part.blade == at(pressed).touch.part.blade;
        return one_blade ? compliance(flexibility(moves), here, there)
                         : beside_compliance(flexibility(moves), here, there);
    }
    if (turns_) return {0.0, 0.0};
    const RootMove root = root_moved_by(*joint_.far_end, at(moves).far, {1.0, there.x_mm});
    return {root.lift_mm + root.turn_rad * here.x_mm, root.turn_rad};
}

/// How fast the slope at one touch grows as a unit force at another goes along the spring.
double detail::TouchesStep::across_rate(std::size_t moves, std::size_t pressed) const {
    const AnyTouch &own = at(moves), &other = at(pressed);
    if (own.far != other.far) return turns_ ? 0.0 : joint_.far_end->cross_rad_per_nmm;
    const BeamPlace &here = places_[moves], &there = places_[pressed];
    const Flexibility& flexible = flexibility(moves);
    const BeamPlace& nearer = here.x_mm < there.x_mm ? here : there;
    const double rate = nearer.upto.a0 + flexible.root_rotation_rad_per_nmm;
    if (own.touch.part.blade == other.touch.part.blade) return rate;
    return rate + tent_rate(flexible, here, there) * here.shear_rad_per_n * there.shear_rad_per_n;
}

/// How fast that slope grows as the place itself goes along the spring.
double detail::TouchesStep::bend_rate(std::size_t moves, std::size_t pressed) const {
    const AnyTouch &own = at(moves), &other = at(pressed);
    if (own.far != other.far) return 0.0;
    const BeamPlace &here = places_[moves], &there = places_[pressed];
    const PlaceRates& on = place_rates_[moves];
    double rate = moves == pressed ? 0.5 * on.shear_rad_per_nmm : 0.0;
    if (there.x_mm > here.x_mm) {
        rate = (there.x_mm - here.x_mm) * on.curvature_per_nmm + on.shear_rad_per_nmm;
    }
    if (own.touch.part.blade == other.touch.part.blade) return rate;
    return rate -
           tent_rate(flexibility(moves), here, there) * here.shear_rad_per_n * here.shear_rad_per_n;
}

void detail::TouchesStep::solve() {
    const std::size_t size = n_ + (turns_ ? 1 : 0);
    Table moves;
    Column overlaps{};
    for (std::size_t i = 0; i < n_; ++i) {
        overlaps[i] = at(i).indenter->overlap_mm(at(i).touch);
        for (std::size_t j = 0; j < n_; ++j) {
            const Compliance c = between(i, j);
            moves[i][j] = c.mm_per_n;
            slopes_[i][j] = c.rad_per_n;
        }
        if (turns_) moves[i][n_] = moves[n_][i] = sense(i) * places_[i].x_mm;
    }
    if (turns_) moves[n_][n_] = 0.0;
    solved_ = give_.factor(moves, size);
    if (!solved_) return;
    forces_ = give_.solve(overlaps);
    if (turns_) turn_rad_ = forces_[n_];
}

/// How far each touch runs along the face, and what turns those that are free to seat.
void detail::TouchesStep::judge() {
    for (std::size_t i = 0; i < n_; ++i) {
        AnyTouch& own = touches_[i];
        const double x = own.touch.x_mm;
        turned_[i] = own.indenter->face_slope_at(x) + sense(i) * turn_rad_;
        for (std::size_t j = 0; j < n_; ++j) turned_[i] += slopes_[i][j] * forces_[j];
        misses_[i] = turned_[i] - own.touch.slope;
        const Pad& pad = own.indenter->pad;
        own.held =
            (x == pad.start_mm && misses_[i] >= 0.0) || (x == pad.end_mm && misses_[i] <= 0.0);
        if (own.held) misses_[i] = 0.0;
        own.touch.force_n = forces_[i];
        if (own.seat >= 0)
            torques_[static_cast<std::size_t>(own.seat)] += forces_[i] * own.lever_mm();
    }
}

bool detail::TouchesStep::pushes() const {
    return std::ranges::all_of(touches_,
                               [](const AnyTouch& each) { return each.touch.force_n > 0.0; });
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

RootMove detail::TouchesStep::root_moved(bool far) const {
    if (!joint_.far_end) return {};
    if (turns_) return {0.0, far ? -turn_rad_ : turn_rad_};
    return root_moved_by(*joint_.far_end, far, sums()[far ? 0 : 1]);
}

double detail::TouchesStep::worst() const {
    double worst = 0.0, force = 0.0;
    for (std::size_t i = 0; i < n_; ++i) {
        worst = std::max(worst, std::abs(misses_[i]));
        force += std::abs(forces_[i]);
    }
    for (std::size_t i = 0; i < seats_; ++i)
        worst = std::max(worst, std::abs(torques_[i]) / (force * joint_.pivot_mm));
    return worst;
}

detail::TouchesStep::Move detail::TouchesStep::moved_along(std::size_t touch) const {
    const AnyTouch& own = at(touch);
    const double slope = own.touch.slope;
    if (own.held) return {};
    if (own.touch.part.flat) return {1.0, slope, 0.0};
    const double steep = 1.0 + slope * slope;
    const double radius = own.indenter->outline.radius_mm(own.touch.part.arc);
    const double away = -radius / (steep * std::sqrt(steep));
    return {away, slope * away, 1.0};
}

/// By its blade's turn: on an arc at the same slope, on a flat or an edge at the same station.
detail::TouchesStep::Move detail::TouchesStep::turned(std::size_t touch) const {
    const AnyTouch& own = at(touch);
    const double slope = own.touch.slope, steep = 1.0 + slope * slope;
    if (own.touch.part.flat || own.held) return {0.0, own.lever_mm(), steep};
    const double out = own.indenter->outline.radius_mm(own.touch.part.arc) / std::sqrt(steep);
    const double ahead = own.touch.x_mm - own.indenter->pivot_mm;
    return {out - own.touch.height_mm, ahead + slope * out, 0.0};
}

/// How all forces, and the spring's turn, change.
detail::TouchesStep::Column detail::TouchesStep::gains(const Moves& moves) const {
    Column lack{};
    for (std::size_t i = 0; i < n_; ++i) {
        lack[i] = moves[i].out_mm - turned_[i] * moves[i].along_mm;
        for (std::size_t j = 0; j < n_; ++j)
            lack[i] -= slopes_[j][i] * forces_[j] * moves[j].along_mm;
        lack[n_] -= sense(i) * forces_[i] * moves[i].along_mm;
    }
    return give_.solve(lack);
}

void detail::TouchesStep::add_rates(const Moves& moves, std::size_t column) {
    const Column gain = gains(moves);
    for (std::size_t i = 0; i < n_; ++i) {
        const AnyTouch& own = at(i);
        double rate = sense(i) * gain[n_] - moves[i].slope;
        for (std::size_t j = 0; j < n_; ++j) {
            rate += slopes_[i][j] * gain[j];
            if (moves[j].along_mm != 0.0)
                rate += across_rate(i, j) * forces_[j] * moves[j].along_mm;
            if (moves[i].along_mm != 0.0) rate += bend_rate(i, j) * forces_[j] * moves[i].along_mm;
        }
        rates_[i][column] = forces_[i] * rate + misses_[i] * gain[i];
        if (own.held) rates_[i][column] = column == i ? 1.0 : 0.0;
        if (own.seat < 0) continue;
        rates_[n_ + static_cast<std::size_t>(own.seat)][column] +=
            own.lever_mm() * gain[i] +
            forces_[i] * (moves[i].along_mm + own.touch.height_mm * moves[i].slope +
                          own.touch.slope * moves[i].out_mm);
    }
}

void detail::TouchesStep::differentiate() {
    for (std::size_t i = n_; i < n_ + seats_; ++i) rates_[i].fill(0.0);
    for (std::size_t i = 0; i < n_; ++i) place_rates_[i] = place_rates(flexibility(i), places_[i]);
    for (std::size_t i = 0; i < n_; ++i) {
        Moves moves{};
        moves[i] = moved_along(i);
        add_rates(moves, i);
    }
    for (std::size_t seat = 0; seat < seats_; ++seat) {
        Moves moves{};
        for (std::size_t i = 0; i < n_; ++i) {
            if (at(i).seat == static_cast<int>(seat)) moves[i] = turned(i);
        }
        add_rates(moves, n_ + seat);
    }
}

std::optional<detail::TouchesStep::Column> detail::TouchesStep::step() {
    differentiate();
    Column lack{};
    for (std::size_t i = 0; i < n_; ++i) lack[i] = -forces_[i] * misses_[i];
    for (std::size_t i = 0; i < seats_; ++i) lack[n_ + i] = -torques_[i];
    Lu lu;
    if (!lu.factor(rates_, n_ + seats_)) return std::nullopt;
    return lu.solve(lack);
}

bool detail::TouchesStep::seats_are_least() {
    if (seats_ == 0) return true;
    differentiate();
    Lu lu;
    if (!lu.factor(rates_, n_ + seats_)) return false;
    // How far the seats give way to torques: each gives its own way, and more than any others'.
    for (std::size_t i = 0; i < seats_; ++i) {
        Column torque{};
        torque[n_ + i] = 1.0;
        const Column turns = lu.solve(torque);
        double others = 0.0;
        for (std::size_t j = 0; j < seats_; ++j) others += j == i ? 0.0 : std::abs(turns[n_ + j]);
        if (!(turns[n_ + i] > others)) return false;
    }
    return true;
}

}  // namespace backspring
