#include "backspring/action/friction.hpp"

#include <cmath>

namespace backspring {

double friction_torque_nmm(const Contact& contact, const Friction& friction, double pivot_mm) {
    double at_spring = 0.0, along = 0.0, across = 0.0;
    for (const Touch& touch : contact.all()) {
        const double lever = touch.height_mm - touch.slope * (touch.x_mm - pivot_mm);
        at_spring += touch.force_n * std::abs(lever);
        along -= touch.force_n * touch.slope;
        across += touch.force_n;
    }
    const double at_pin = std::sqrt(along * along + across * across) * 0.5 * friction.pivot_pin_mm;
    return friction.spring * at_spring + friction.pivot * at_pin;
}

}  // namespace backspring
