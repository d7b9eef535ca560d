#pragma once

#include <optional>

namespace backspring {

/// A stress that goes up and down, as amplitude about a mean.
struct StressCycle {
    double amplitude_mpa = 0.0;  ///< half the range, >= 0 [MPa]
    double mean_mpa = 0.0;       ///< tension positive [MPa]

    [[nodiscard]] double max_mpa() const { return mean_mpa + amplitude_mpa; }
};

/// The cycle between a least and a greatest stress.
[[nodiscard]] StressCycle cycle_between(double min_mpa, double max_mpa);

/// What the steel bears, for the criteria.
struct FatigueStrength {
    double reversed_mpa = 0.0;  ///< amplitude borne without mean stress: endurance limit, or the
                                ///< fatigue strength at a number of cycles [MPa]
    double tensile_mpa = 0.0;   ///< tensile strength [MPa]
    double yield_mpa = 0.0;     ///< 0.2 % proof stress [MPa]
};

/// How a mean stress is held to shorten life.
///
/// With Sa what is borne without mean stress, sa amplitude and sm mean:
/// goodman sa/Sa + sm/Sut = 1, cautious; gerber sa/Sa + (sm/Sut)^2 = 1, a mean through tests;
/// elliptic (sa/Sa)^2 + (sm/Sy)^2 = 1; swt Sa = sqrt(smax sa), sound for hard steel;
/// walker Sa = smax^(1-g) sa^g, g falling with strength.
enum class Criterion {
    goodman,   ///< straight line to the tensile strength
    gerber,    ///< parabola to the tensile strength
    elliptic,  ///< ellipse to the yield stress
    swt,       ///< greatest stress times amplitude
    walker,    ///< the same with an exponent of the steel's own
};

/// Whether a criterion is a finding about life; the ellipse is a design line to the yield stress.
[[nodiscard]] bool tells_life(Criterion criterion);

/// Walker's exponent for steels, g = 0.8818 - 0.000200 Sut.
///
/// @param tensile_mpa  [MPa], to 3000
/// @source dowling-2009
[[nodiscard]] double walker_exponent(double tensile_mpa);

/// How many times the whole cycle can grow before a criterion is met.
///
/// A compressive mean is taken as none: no help is counted on. A residual stress adds to the mean
/// and does not grow with the load.
///
/// @param residual_mpa  in the steel before it is loaded, compression negative [MPa]
/// @returns  nothing where no fatigue is foreseen: no amplitude and no mean, or never in tension
/// @source shigley-9, dowling-2009; mattson-roberts for the residual stress
/// @note   none of these looks at yielding: see first_yield_factor
[[nodiscard]] std::optional<double> safety_factor(Criterion criterion,
                                                  const StressCycle& cycle,
                                                  const FatigueStrength& strength,
                                                  double residual_mpa = 0.0);

/// A cycle with a residual stress in its mean.
[[nodiscard]] constexpr StressCycle with_residual(const StressCycle& cycle, double residual_mpa) {
    return {cycle.amplitude_mpa, cycle.mean_mpa + residual_mpa};
}

/// Amplitude that does as much harm without mean stress.
///
/// @returns  [MPa]; infinite where the mean alone breaks or, for the ellipse, yields
/// @source shigley-9, dowling-2009
[[nodiscard]] double reversed_stress_mpa(Criterion criterion,
                                         const StressCycle& cycle,
                                         const FatigueStrength& strength);

/// How many times the cycle can grow before the first one yields, Sy/(sa + |sm|).
///
/// @returns  nothing without stress
/// @source shigley-9
[[nodiscard]] std::optional<double> first_yield_factor(const StressCycle& cycle, double yield_mpa);

}  // namespace backspring
