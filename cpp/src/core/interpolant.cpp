#include "backspring/core/interpolant.hpp"

namespace backspring {

void Interpolant::add(double x, double y) {
    double difference = y;
    for (std::size_t k = 0; k < count_; ++k) {
        const double next = (difference - last_[k]) / (x - x_[count_ - 1 - k]);
        last_[k] = difference;
        difference = next;
    }
    last_[count_] = coefficient_[count_] = difference;
    x_[count_++] = x;
}

Interpolant::Jet Interpolant::at(double x) const {
    Jet jet;
    for (std::size_t k = count_; k-- > 0;) {
        const double away = x - x_[k];
        jet.curvature = jet.curvature * away + 2.0 * jet.slope;
        jet.slope = jet.slope * away + jet.value;
        jet.value = jet.value * away + coefficient_[k];
    }
    return jet;
}

double Interpolant::value_at(double x) const {
    double value = 0.0;
    for (std::size_t k = count_; k-- > 0;) value = value * (x - x_[k]) + coefficient_[k];
    return value;
}

}  // namespace backspring
