#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>

#include "indenters.hpp"

namespace backspring::detail {

/// Where one part of a tang bears alone at several blade angles: all places are moved at once by
/// Newton's method, in plain loops over arrays.
class TouchesAbreast {
  public:
    static constexpr std::size_t kMost = OwnCompliances::kMost;

    /// @param joint       of a blade alone; outlives this
    /// @param part        that bears, not the kick
    /// @param angles_deg  at most kMost
    /// @param guesses     about where: slope on an arc, way ahead of the pivot on a flat [mm]
    TouchesAbreast(const Joint& joint,
                   const Part& part,
                   std::span<const double> angles_deg,
                   std::span<const double> guesses);

    /// Tells the contact at one of the angles; false where it has to be found by itself: another
    /// part may bear there, or the kick, an edge of the pad, a spring that is not smooth.
    [[nodiscard]] bool tell(std::size_t i, Contact& contact) const;

  private:
    using Numbers = OwnCompliances::Numbers;

    void find_out_parts();
    void settle();
    [[nodiscard]] bool look();
    [[nodiscard]] bool on_part(std::size_t i) const;

    const Joint& joint_;
    Part part_;
    std::span<const double> angles_deg_;
    std::array<std::optional<Indenter>, kMost> bodies_;
    OwnCompliances own_;
    Numbers place_;
    Numbers from_x_mm_, from_y_mm_;  ///< an arc's centre, or where a flat passes the pivot
    Numbers rear_mm_, front_mm_;     ///< a flat's ends
    Numbers station_mm_, height_mm_, slope_, overlap_mm_, force_n_, step_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
