#pragma once

#include <optional>
#include <vector>

#include "backspring/action/reading.hpp"
#include "backspring/action/stroke.hpp"
#include "backspring/design/design.hpp"
#include "backspring/strength/stress_range.hpp"

namespace backspring {

/// A contact of the travel with the worst stress along the spring there.
struct Stressed {
    Contact contact;  ///< where the blade stands
    PeakStress peak;  ///< worst place of the spring
};

/// What one design does, each part worked out when first asked for and kept.
///
/// Every question about a design asks one: check, many designs, grind, size, tolerance,
/// sensitivity and fit.
///
/// @note  for one thread at a time
class Solution {
  public:
    /// @param design  outlives this
    /// @throws InvalidInput  with every broken rule
    explicit Solution(const Design& design);
    explicit Solution(Design&& design) = delete;
    /// @param loaded  both pins in, in place of the one drawn
    Solution(const Design& design, Joint loaded);
    Solution(const Solution&) = delete;
    Solution& operator=(const Solution&) = delete;

    [[nodiscard]] const Design& design() const { return design_; }
    [[nodiscard]] const Joint& joint() const { return action_.joint; }
    [[nodiscard]] bool has_half_stop() const { return design_.own().tang.half_stop_mm.has_value(); }

    /// Joint, friction, and where the stress can peak.
    [[nodiscard]] const Action& action();

    /// Where the blade stays, and what the dial shows there, pins in.
    [[nodiscard]] const Rests& rests();
    [[nodiscard]] const Readings& readings();

    /// The same with the rear pin out.
    [[nodiscard]] const Joint& unloaded_joint();
    [[nodiscard]] const Rests& unloaded_rests();
    [[nodiscard]] const Readings& unloaded_readings();

    /// From closed, or 0 deg where the blade does not stay, to open, with a mark at each rest.
    [[nodiscard]] const Turns& travel();

    /// Ways between the rests, opening, in turn; none where the blade does not stay closed and
    /// open.
    [[nodiscard]] std::vector<LazyStroke>& ways();

    /// The ways on which the blade snaps, whole.
    [[nodiscard]] const std::vector<Stroke>& strokes();

    /// The largest force on the spring over the travel [N].
    [[nodiscard]] Peak strongest();

    /// The contact of the travel with the largest bending stress.
    [[nodiscard]] const Stressed& most_stressed();

    /// Ranges of the stress over the travel.
    [[nodiscard]] StressRanges& ranges();

    /// Stiffness at the pivot station [N/mm].
    [[nodiscard]] double stiffness_n_per_mm() const;

  private:
    const Design& design_;
    Action action_;
    bool has_probe_ = false;
    std::optional<Rests> rests_, unloaded_rests_;
    std::optional<Readings> readings_, unloaded_readings_;
    std::optional<Joint> unloaded_joint_;
    std::optional<Turns> travel_;
    std::optional<std::vector<LazyStroke>> ways_;
    std::optional<std::vector<Stroke>> strokes_;
    std::optional<Stressed> most_stressed_;
    std::optional<StressRanges> ranges_;
};

/// Where the torque against opening, friction included, is largest of all strokes; none without a
/// stroke.
[[nodiscard]] std::optional<Turn> hardest_turn(Solution& solution);

/// The largest torque against opening, friction included [N mm]; none without a stroke.
[[nodiscard]] std::optional<double> peak_torque_nmm(Solution& solution);

/// The same felt at the nail nick [N]; none without a stroke or a nick.
[[nodiscard]] std::optional<double> peak_pull_n(Solution& solution);

/// The largest bending stress on one way [MPa]; none where the blade has no such way.
///
/// @param way  0 from closed, 1 from half-stop
[[nodiscard]] std::optional<double> way_peak_stress_mpa(Solution& solution, std::size_t way);

/// The largest torque against opening on one way, friction included [N mm]; none without it.
///
/// @param way  0 from closed, 1 from half-stop
[[nodiscard]] std::optional<double> way_peak_torque_nmm(Solution& solution, std::size_t way);

/// Yield stress over the worst stress of the travel; none for a spring without stress.
[[nodiscard]] std::optional<Band> yield_margin(Solution& solution);

/// Whether the blade snaps on every way between its positions.
[[nodiscard]] bool snaps_everywhere(Solution& solution);

}  // namespace backspring
