#include "backspring/core/interpolant.hpp"

#include <cmath>
#include <utility>

namespace backspring {
namespace {

constexpr int kMostSteps = 40;
// Of the way between both places: the square of a step so short is rounding.
constexpr double kLastStep = 1e-7;
constexpr double kClose = 1e-13;

}  // namespace

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

double Interpolant::integral(double from, double to) const {
    const double middle = 0.5 * (from + to), away = 0.5 * (to - from) * std::sqrt(0.6);
    const double beside = value_at(middle - away) + value_at(middle + away);
    return (to - from) * (5.0 * beside + 8.0 * value_at(middle)) / 18.0;
}

double Interpolant::top(double low, double high, double near) const {
    const double close = kClose * (high - low), last_step = kLastStep * (high - low);
    double x = near;
    for (int step = 0; step < kMostSteps && high - low > close; ++step) {
        const Jet jet = at(x);
        (jet.slope > 0.0 ? low : high) = x;
        const double next = jet.curvature < 0.0 ? x - jet.slope / jet.curvature : low - 1.0;
        const bool inside = next > low && next < high;
        const double last = std::exchange(x, inside ? next : 0.5 * (low + high));
        if (std::abs(x - last) <= (inside ? last_step : close)) break;
    }
    return x;
}

double Interpolant::zero(double low, double high, double near) const {
    const double close = kClose * (high - low), last_step = kLastStep * (high - low);
    const bool rises = at(low).value < 0.0;
    double x = near;
    for (int step = 0; step < kMostSteps && high - low > close; ++step) {
        const Jet jet = at(x);
        ((jet.value < 0.0) == rises ? low : high) = x;
        const double next = x - jet.value / jet.slope;
        const bool inside = next > low && next < high;
        const double last = std::exchange(x, inside ? next : 0.5 * (low + high));
        if (std::abs(x - last) <= (inside ? last_step : close)) break;
    }
    return x;
}

}  // namespace backspring
