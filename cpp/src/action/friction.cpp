#include "backspring/action/friction.hpp"

#include <cmath>
#include <span>

#include "twins.hpp"

namespace backspring {
namespace {

/// Of the touches of one blade.
double taken_nmm(std::span<const Touch> touches, const Friction& friction, double pivot_mm) {
    double at_spring = 0.0, along = 0.0, across = 0.0;
    for (const Touch& touch : touches) {
        const double lever = touch.height_mm - touch.slope * (touch.x_mm - pivot_mm);
        at_spring += touch.force_n * std::abs(lever);
        along -= touch.force_n * touch.slope;
        across += touch.force_n;
    }
    const double at_pin = std::sqrt(along * along + across * across) * 0.5 * friction.pivot_pin_mm;
    return friction.spring * at_spring + friction.pivot * at_pin;
}

}  // namespace

double friction_torque_nmm(const Contact& contact, const Friction& friction, double pivot_mm) {
    const double own = taken_nmm(contact.all(), friction, pivot_mm);
    const Touch* along = touch_taken_along(contact);
    return along ? own + taken_nmm({along, 1}, friction, pivot_mm) : own;
}

}  // namespace backspring
