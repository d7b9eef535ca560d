#pragma once

#include <limits>
#include <vector>

#include "backspring/action/turns.hpp"

namespace backspring {

/// A sum of shares of the force on the spring and of its moment about the middle pin.
struct ForceShares {
    double per_n, per_nmm;

    [[nodiscard]] double of(double force_n, double moment_nmm) const {
        return per_n * force_n + per_nmm * moment_nmm;
    }
    /// Of all touches of the contact's own blade.
    [[nodiscard]] double of(const Contact& contact) const;
};

/// Force and moment of a blade alone at all turns of a travel: whatever goes with both alike, as
/// the moment at a place of the spring, is told by them.
class TravelForces {
  public:
    /// @param travel  outlives this
    explicit TravelForces(const Turns& travel);

    /// Whether it tells what bears: not of a blade beside others.
    [[nodiscard]] bool tells() const { return travel_->action().joint.alone(); }

    /// Whether it tells the moment at a station: all that bears lies ahead of it.
    [[nodiscard]] bool tells_at(double station_mm) const {
        return tells() && station_mm <= least_mm_;
    }

    /// Where such a sum is largest.
    [[nodiscard]] Peak largest(const ForceShares& shares) const;

  private:
    const Turns* travel_;
    std::vector<double> forces_n_, moments_nmm_;
    double least_mm_ = std::numeric_limits<double>::infinity();
};

}  // namespace backspring
