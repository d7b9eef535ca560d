#include "equations.hpp"

#include <cmath>
#include <numbers>

#include "backspring/core/angle.hpp"

namespace backspring {
namespace {

Real variable(double value, int place) { return Real(value, element::count, place); }

Real nothing() { return Real(0.0, Real::DerType::Zero()); }

const Upto& nearer(const Bearing& a, const Bearing& b) { return a.x < b.x ? a.upto : b.upto; }

}  // namespace

Equations::Equations(const Joint& joint, const Elements& elements, const State& state)
    : joint_(joint),
      elements_(elements),
      root_(at(element::root)),
      turn_(radians(state.contact.blade_angle_deg) - std::numbers::pi,
            element::count,
            element::turn) {
    for (int k = 0; k < state.contact.count; ++k) {
        const auto i = static_cast<std::size_t>(k);
        bearings_.push_back(place(k, state.bearers[i], state.contact.touches[i]));
    }
    if (state.seat == Seat::straddled) {
        lie_on_both(state);
        return;
    }
    if (!bearings_.empty()) share_force();
    for (std::size_t k = 0; k < bearings_.size(); ++k) {
        settle(k, state.bearers[k].hold, slope_at(k));
    }
}

Real Equations::torque() const {
    Real sum = nothing();
    for (const Bearing& b : bearings_) {
        sum += b.force * (b.x - at(element::pivot) + b.slope * b.height);
    }
    return sum;
}

Real Equations::friction() const {
    Real at_spring = nothing(), along = at_spring, across = at_spring;
    for (const Bearing& b : bearings_) {
        const Real lever = b.height - b.slope * (b.x - at(element::pivot));
        at_spring += b.force * (lever.value() < 0.0 ? Real(-lever) : lever);
        along -= b.force * b.slope;
        across += b.force;
    }
    if (bearings_.empty()) return at_spring;
    const Real resultant = sqrt(along * along + across * across);
    return at(element::friction_spring) * at_spring +
           at(element::friction_pivot) * resultant * (0.5 * at(element::pivot_pin));
}

Real Equations::dial_deflection() const {
    const double dial_mm = joint_.dial_mm;
    const Real dial = at(element::dial);
    if (lean_) return *lean_ * dial;
    const Rates rates = rates_at(joint_.flexibility, dial_mm);
    const Upto upto = read(dial, dial_mm, rates, element::dial_a0);
    const EdgeUnder liners = dial_edge(joint_, dial_mm);
    const Real past = dial - dial_mm;
    const Real edge_force = at(element::edge_force) + liners.per_force.rad_per_n * past;
    const Real edge_moment = at(element::edge_moment) + liners.per_moment.rad_per_n * past;
    Real sum = nothing();
    for (const Bearing& b : bearings_) {
        const Upto& nearer = dial < b.x ? upto : b.upto;
        sum += b.force * (compliance_of(dial, b.x, nearer) - edge_force - edge_moment * b.x);
    }
    return sum;
}

Real Equations::moment(double x_mm) const {
    Real sum = nothing();
    for (const Bearing& b : bearings_) {
        if (b.x > x_mm) sum += b.force * (b.x - x_mm);
    }
    return sum;
}

Upto Equations::read(const Real& x, double x_mm, const Rates& rates, int first) const {
    const Real past = x - x_mm;
    return {at(first) + rates.bending * past, at(first + 1) + rates.bending * x_mm * past,
            at(first + 2) + rates.bending * x_mm * x_mm * past, at(first + 3) + rates.shear * past,
            nothing()};
}

Bearing Equations::place(int k, const Bearer& bearer, const Touch& touch) const {
    using element::of_touch;
    const Real u = at(of_touch(k, element::u)), w = at(of_touch(k, element::w));
    const Real radius = at(of_touch(k, element::radius));
    const Real cosine = cos(turn_), sine = sin(turn_);
    const Real center_x = cosine * u - sine * w, center_y = sine * u + cosine * w;
    const int unknown = element::place + k;
    Bearing b;
    if (bearer.normal_rad) {
        const Real normal = turn_ + *bearer.normal_rad;
        const Real across = cos(normal), out = sin(normal);
        b.slope = -across / out;
        b.x = variable(touch.x_mm, unknown);
        const Real offset = center_x * across + center_y * out + radius;
        b.height = (offset - (b.x - at(element::pivot)) * across) / out;
    } else {
        b.slope = variable(touch.slope, unknown);
        const Real out = radius / sqrt(b.slope * b.slope + 1.0);
        b.x = at(element::pivot) + center_x - b.slope * out;
        b.height = center_y + out;
    }
    b.overlap = b.height - at(element::face) - at(element::face_slope) * b.x;
    const Rates rates = rates_at(joint_.flexibility, touch.x_mm);
    b.upto = read(b.x, touch.x_mm, rates, of_touch(k, element::a0));
    b.upto.local_shear =
        at(of_touch(k, element::local_shear)) + rates.shear_slope * (b.x - touch.x_mm);
    return b;
}

Real Equations::compliance_of(const Real& x, const Real& xi, const Upto& nearer) const {
    return x * xi * (nearer.a0 + root_) - (x + xi) * nearer.a1 + nearer.a2 + nearer.shear;
}

void Equations::share_force() {
    Bearing& a = bearings_.front();
    const Real own = compliance_of(a.x, a.x, a.upto);
    if (bearings_.size() == 1) {
        a.force = a.overlap / own;
        return;
    }
    Bearing& b = bearings_.back();
    const Real cross = compliance_of(a.x, b.x, nearer(a, b));
    const Real other = compliance_of(b.x, b.x, b.upto);
    const Real determinant = own * other - cross * cross;
    a.force = (a.overlap * other - b.overlap * cross) / determinant;
    b.force = (b.overlap * own - a.overlap * cross) / determinant;
}

void Equations::lie_on_both(const State& state) {
    const Bearing& first = bearings_.front();
    lean_ = variable(first.overlap.value() / first.x.value(), element::lean);
    for (std::size_t k = 0; k < bearings_.size(); ++k) {
        Bearing& b = bearings_[k];
        settle(k, state.bearers[k].hold, at(element::face_slope) + *lean_);
        b.off_line = b.overlap - *lean_ * b.x;
    }
}

void Equations::settle(std::size_t k, Hold hold, const Real& face_slope) {
    Bearing& b = bearings_[k];
    b.miss = hold == Hold::slopes_agree
                 ? Real(face_slope - b.slope)
                 : Real(b.x - at(element::of_touch(static_cast<int>(k), element::edge)));
}

Real Equations::slope_at(std::size_t k) const {
    const Bearing& b = bearings_[k];
    Real slope = at(element::face_slope);
    for (std::size_t j = 0; j < bearings_.size(); ++j) {
        const Bearing& from = bearings_[j];
        const Upto& upto = nearer(b, from);
        const double share = j == k ? 0.5 : b.x < from.x ? 1.0 : 0.0;
        slope += from.force * (from.x * (upto.a0 + root_) - upto.a1 + share * upto.local_shear);
    }
    return slope;
}

}  // namespace backspring
