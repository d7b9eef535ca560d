#pragma once

#include <optional>
#include <vector>

#include "backspring/action/rap.hpp"
#include "backspring/core/interpolant.hpp"

namespace backspring::detail {

/// The way past a closed rest, as far as a spring alone takes up an energy.
///
/// It is cut where another part comes to bear; between cuts everything goes smoothly, and
/// polynomials through a few turns tell it: as soon as the torque adds up to the energy, which the
/// contacts themselves tell, so does friction to its work.
class PastRest {
  public:
    /// @param action, closed  outlive this
    PastRest(const Action& action, const Contact& closed, double most_mj);

    /// The overtravel that takes up an energy; nothing where the way is too short for it.
    [[nodiscard]] std::optional<Overtravel> taking_up(double energy_mj) const;

  private:
    /// A stretch of the way, by the angle past the rest [rad].
    struct Section {
        double from_rad, to_rad;
        double work_mj;  ///< of friction before it
        Interpolant stored_mj{}, friction_nmm{};

        [[nodiscard]] double work_to_mj(double past_rad) const;
        [[nodiscard]] double taken_to_mj(double past_rad) const;
        [[nodiscard]] double place_of(double energy_mj) const;
    };

    void add(const Piece& piece, double from_rad, double to_rad, int halvings);
    [[nodiscard]] double angle_deg(double past_rad) const;

    const Action& action_;
    const Contact& closed_;
    double most_mj_;
    std::vector<Section> sections_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
