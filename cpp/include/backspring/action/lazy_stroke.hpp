#pragma once

#include <optional>

#include "backspring/action/turns.hpp"

namespace backspring {

/// The way from one rest of a blade to the next, opening; each part is worked out when first asked
/// for.
class LazyStroke {
  public:
    /// @param turns  from rest to rest, both included, at one degree or finer where a peak may lie
    explicit LazyStroke(Turns turns) : turns_(std::move(turns)) {}

    [[nodiscard]] const Turn& from() { return turns_[0]; }
    [[nodiscard]] const Turn& to() { return turns_[turns_.count() - 1]; }

    /// Where the torque against opening is largest, friction included.
    [[nodiscard]] const Turn& opening_peak();

    /// Where the torque against closing is largest, friction included.
    [[nodiscard]] const Turn& closing_peak();

    /// Whether the torque changes sign on the way; if not, the spring has let go.
    [[nodiscard]] bool has_crest();

    /// Where the torque changes sign: beyond it the blade snaps [deg]; nothing without a crest.
    [[nodiscard]] std::optional<double> crest_angle_deg();

    /// Energy that the crest releases less friction, from where the blade runs away; 0 where it
    /// does not [mJ].
    [[nodiscard]] double snap_energy_mj();

    /// Where any number of a turn is largest on the way.
    [[nodiscard]] Turn peak_of(const TurnValue& value) { return largest(turns_, value); }

    /// The turn at any angle.
    [[nodiscard]] Turn at(double blade_angle_deg) const { return turns_.at(blade_angle_deg); }

  private:
    int closing_top();
    double no_torque_nmm();
    int falls_below(const TurnValue& value);
    std::optional<double> angle_of_fall(int turn, const TurnValue& value);
    double friction_work_mj(double from_deg);

    Turns turns_;
    std::optional<Turn> opening_peak_, closing_peak_;
    std::optional<int> closing_top_, energy_top_, crest_turn_;
};

}  // namespace backspring
