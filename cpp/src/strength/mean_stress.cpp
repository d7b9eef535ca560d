#include "backspring/strength/mean_stress.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "backspring/core/root.hpp"

namespace backspring {
namespace {

double over(double amplitude, double left) {
    if (amplitude == 0.0 && left > 0.0) return 0.0;
    return left > 0.0 ? amplitude / left : std::numeric_limits<double>::infinity();
}

/// smax^(1-g) sa^g, for the part of the cycle in tension.
double damaging(const StressCycle& cycle, double exponent) {
    const double top = std::max(cycle.max_mpa(), 0.0);
    if (exponent == 0.5) return std::sqrt(top * cycle.amplitude_mpa);
    return std::pow(top, 1.0 - exponent) * std::pow(cycle.amplitude_mpa, exponent);
}

/// The factor where part of the mean stays as it is while the rest grows; the harm rises with it.
std::optional<double> factor_beside(Criterion criterion,
                                    const StressCycle& cycle,
                                    const FatigueStrength& strength,
                                    double residual_mpa) {
    // From -1/2 to 1/2, for the harm may grow without end: 0 where all that is borne is used.
    const auto used_up = [&](double times) {
        const StressCycle grown{times * cycle.amplitude_mpa, times * cycle.mean_mpa};
        const double harm =
            reversed_stress_mpa(criterion, with_residual(grown, residual_mpa), strength);
        return 0.5 - strength.reversed_mpa / (strength.reversed_mpa + harm);
    };
    constexpr double most = 1e9;
    double low = 0.0, high = 1.0;
    double at_low = used_up(low), at_high = used_up(high);
    while (at_high <= 0.0) {
        if (high > most) return std::nullopt;
        low = high, at_low = at_high;
        high *= 2.0, at_high = used_up(high);
    }
    // The residual stress alone is more than is borne.
    if (at_low > 0.0) return 0.0;
    return find_root(used_up, low, high, at_low, at_high);
}

}  // namespace

StressCycle cycle_between(double min_mpa, double max_mpa) {
    return {.amplitude_mpa = 0.5 * (max_mpa - min_mpa), .mean_mpa = 0.5 * (max_mpa + min_mpa)};
}

bool tells_life(Criterion criterion) { return criterion != Criterion::elliptic; }

double walker_exponent(double tensile_mpa) { return 0.8818 - 0.000200 * tensile_mpa; }

double reversed_stress_mpa(Criterion criterion,
                           const StressCycle& cycle,
                           const FatigueStrength& strength) {
    const double mean = std::max(cycle.mean_mpa, 0.0);
    switch (criterion) {
        case Criterion::goodman:
            return over(cycle.amplitude_mpa, 1.0 - mean / strength.tensile_mpa);
        case Criterion::gerber:
            return over(cycle.amplitude_mpa, 1.0 - std::pow(mean / strength.tensile_mpa, 2));
        case Criterion::elliptic: {
            const double left = 1.0 - std::pow(mean / strength.yield_mpa, 2);
            return over(cycle.amplitude_mpa, std::sqrt(std::max(left, 0.0)));
        }
        case Criterion::swt:
            return damaging(cycle, 0.5);
        case Criterion::walker:
            break;
    }
    return damaging(cycle, walker_exponent(strength.tensile_mpa));
}

std::optional<double> safety_factor(Criterion criterion,
                                    const StressCycle& cycle,
                                    const FatigueStrength& strength,
                                    double residual_mpa) {
    if (residual_mpa != 0.0) return factor_beside(criterion, cycle, strength, residual_mpa);
    const double mean = std::max(cycle.mean_mpa, 0.0);
    const double a = cycle.amplitude_mpa / strength.reversed_mpa;
    double used = 0.0;  // share of what is borne; the factor is its inverse
    switch (criterion) {
        case Criterion::goodman:
            used = a + mean / strength.tensile_mpa;
            break;
        case Criterion::gerber: {
            // The positive root of n a + (n m)^2 = 1, written so that no mean is no trouble.
            const double m = mean / strength.tensile_mpa;
            used = 0.5 * (a + std::hypot(a, 2.0 * m));
            break;
        }
        case Criterion::elliptic:
            used = std::hypot(a, mean / strength.yield_mpa);
            break;
        case Criterion::swt:
        case Criterion::walker:
            used = reversed_stress_mpa(criterion, cycle, strength) / strength.reversed_mpa;
            break;
    }
    if (!(used > 0.0)) return std::nullopt;
    return 1.0 / used;
}

std::optional<double> first_yield_factor(const StressCycle& cycle, double yield_mpa) {
    const double peak = cycle.amplitude_mpa + std::abs(cycle.mean_mpa);
    if (!(peak > 0.0)) return std::nullopt;
    return yield_mpa / peak;
}

}  // namespace backspring
