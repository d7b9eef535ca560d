#pragma once

#include <deque>
#include <vector>

#include "backspring/check/targets.hpp"

namespace backspring {

/// The own blade of a design with the others in each of their positions; the worst of it counts.
///
/// A blade alone on its spring has one solution, of the design itself.
///
/// @note  for one thread at a time
class CaseSolutions {
  public:
    /// @param design  outlives this
    /// @throws InvalidInput  with every broken rule
    explicit CaseSolutions(const Design& design);
    explicit CaseSolutions(Design&& design) = delete;
    CaseSolutions(const CaseSolutions&) = delete;
    CaseSolutions& operator=(const CaseSolutions&) = delete;

    [[nodiscard]] auto begin() { return all_.begin(); }
    [[nodiscard]] auto end() { return all_.end(); }

    /// With all others closed.
    [[nodiscard]] Solution& front() { return all_.front(); }

    /// The value that ranks highest of all cases; none where no case has one.
    ///
    /// @param value  of a solution, or none
    template <class Value, class Rank>
    [[nodiscard]] std::optional<double> worst(Value value, Rank rank) {
        std::optional<double> found;
        for (Solution& solution : all_) {
            const std::optional<double> one = value(solution);
            if (one && (!found || rank(*one) > rank(*found))) found = one;
        }
        return found;
    }

  private:
    std::vector<Design> designs_;
    std::deque<Solution> all_;
};

/// Largest of a value over all cases.
template <class Value>
[[nodiscard]] std::optional<double> largest(CaseSolutions& cases, Value value) {
    return cases.worst(value, [](double one) { return one; });
}

/// Least of a value over all cases.
template <class Value>
[[nodiscard]] std::optional<double> least(CaseSolutions& cases, Value value) {
    return cases.worst(value, [](double one) { return -one; });
}

/// A value where it is farthest from nothing, with its sign.
template <class Value>
[[nodiscard]] std::optional<double> farthest(CaseSolutions& cases, Value value) {
    return cases.worst(value, [](double one) { return one < 0.0 ? -one : one; });
}

/// Largest torque against opening of all cases, friction included [N mm].
[[nodiscard]] std::optional<double> peak_torque_nmm(CaseSolutions& cases);

/// The same felt at the nail nick [N].
[[nodiscard]] std::optional<double> peak_pull_n(CaseSolutions& cases);

/// The peak pull of the case that takes least [N].
[[nodiscard]] std::optional<double> least_peak_pull_n(CaseSolutions& cases);

/// The contact with the largest bending stress of all cases.
[[nodiscard]] const Stressed& most_stressed(CaseSolutions& cases);

/// Yield stress over that stress; none for a spring without stress.
[[nodiscard]] std::optional<Band> yield_margin(CaseSolutions& cases);

/// Loaded readings, each of the case that is farthest from flush.
[[nodiscard]] Readings readings(CaseSolutions& cases);

/// Every target, judged in each case: the worst.
[[nodiscard]] std::vector<TargetResult> judge_targets(CaseSolutions& cases);

/// Whether the blade snaps on every way between its positions in all cases.
[[nodiscard]] bool snaps_everywhere(CaseSolutions& cases);

}  // namespace backspring
