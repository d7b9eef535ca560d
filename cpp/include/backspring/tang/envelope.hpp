#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <span>

#include "backspring/tang/outline.hpp"

namespace backspring {

/// A place on the tang as it stands at a blade angle, from the pivot.
struct SurfacePoint {
    double x_mm;        ///< along the spring, + ahead [mm]
    double y_mm;        ///< outward [mm]
    double slope;       ///< dy/dx of the outline
    int arc = 0;        ///< which arc it lies on, or the one ahead of its flat
    bool flat = false;  ///< on the flat behind that arc
};

/// The upper side of a convex outline turned to a blade angle.
///
/// The slope rises from front to rear: each slope belongs to one arc, or to the flat between two.
/// Faces steeper than kSteep are left out: nothing can bear on them.
class TurnedOutline {
  public:
    static constexpr double kSteep = 1000.0;

    /// @param arcs      in the order of their normals, see Outline
    /// @param turn_rad  blade angle less 180 degrees [rad]
    TurnedOutline(std::span<const Arc> arcs, double turn_rad);

    /// Another outline that is turned with it.
    [[nodiscard]] TurnedOutline of(std::span<const Arc> arcs) const {
        TurnedOutline other = *this;
        other.arcs_ = arcs;
        return other;
    }

    [[nodiscard]] int count() const { return static_cast<int>(arcs_.size()); }
    [[nodiscard]] double radius_mm(int arc) const { return at(arc).radius_mm; }

    /// Slope at an arc's front end, -kSteep where it begins below the upper side.
    [[nodiscard]] double lowest_slope(int arc) const { return slope_at(at(arc).from_rad); }

    /// Slope at an arc's rear end, kSteep where it ends below the upper side.
    [[nodiscard]] double highest_slope(int arc) const { return slope_at(at(arc).to_rad); }

    /// Whether an arc has a slope well within its ends; false where only these would tell.
    [[nodiscard]] bool surely_has(int arc, double slope) const {
        constexpr double level = 0.5 * std::numbers::pi, most = 0.6, doubt = 1e-9;
        const double cube = slope * slope * slope / 3.0;
        // The slope's angle lies between both.
        const double low = std::min(slope, slope - cube), high = std::max(slope, slope - cube);
        return std::abs(slope) < most && at(arc).from_rad + turn_rad_ < level + low - doubt &&
               at(arc).to_rad + turn_rad_ > level + high + doubt;
    }

    /// The arc on top, where the outline is level, or the one behind the flat that is.
    [[nodiscard]] int level_arc() const;

    /// The place of an arc, or of the circle it is part of, that has a slope.
    [[nodiscard]] SurfacePoint at_slope(int arc, double slope) const {
        const Arc& a = at(arc);
        const double out = a.radius_mm / std::sqrt(1.0 + slope * slope);
        return {cos_ * a.u_mm - sin_ * a.w_mm - slope * out, sin_ * a.u_mm + cos_ * a.w_mm + out,
                slope, arc};
    }

    /// Top of the outline above a station; nothing where the outline does not reach it.
    [[nodiscard]] std::optional<SurfacePoint> top_at(double x_mm) const;

    /// The same, of an arc that surely is the top there; nothing where others would have to be
    /// looked at.
    [[nodiscard]] std::optional<SurfacePoint> top_of(int arc, double x_mm) const;

  private:
    [[nodiscard]] const Arc& at(int arc) const { return arcs_[static_cast<std::size_t>(arc)]; }
    [[nodiscard]] double slope_at(double normal_rad) const;

    std::span<const Arc> arcs_;
    double turn_rad_;
    double cos_;
    double sin_;
};

}  // namespace backspring
