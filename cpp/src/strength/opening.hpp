#pragma once

#include <span>
#include <vector>

#include "backspring/action/sweep.hpp"
#include "backspring/strength/plastic_set.hpp"
#include "backspring/strength/plastic_spring.hpp"

namespace backspring::detail {

/// A spring on its way through the travel, each angle elastic or bending it further.
class Opening {
  public:
    /// @param plastic  not yet bent
    Opening(const Joint& joint, PlasticSpring plastic);

    /// Bends the spring as far as the tang makes it at one angle; whether it yields further.
    bool pass(double blade_angle_deg);

    /// Whether a contact's forces, lessened by the set so far, surely bend nothing further.
    [[nodiscard]] bool surely_elastic(const Contact& contact) const;

    [[nodiscard]] const FaceShift& shift() const { return shift_; }
    [[nodiscard]] std::vector<PlasticZone> zones() const { return plastic_.zones(); }

  private:
    /// Forces on the spring that only grow or shrink together; a force of 1 N in all.
    using Pattern = std::vector<Load>;

    /// The joint at an angle once the forces have done their set.
    struct Trial {
        double force_n = 0.0;   ///< tried
        double excess_n = 0.0;  ///< what the tang then needs beyond it; 0 where both agree
        FaceShift shift;
        Contact contact;
    };

    [[nodiscard]] Trial attempt(const Pattern& pattern, double force_n, double angle_deg) const;
    [[nodiscard]] bool settle_quickly(const Contact& start, double share);
    void settle_surely(const Contact& start);
    [[nodiscard]] Pattern single_place(const Contact& start) const;
    [[nodiscard]] Trial agree(const Pattern& pattern, const Contact& start) const;
    void keep(const Pattern& pattern, const Trial& trial);

    const Joint& joint_;  // as fitted
    Joint moved_;         // with the face as it is by now
    Joint held_;          // as fitted, the other blades held where they stand at the angle
    PlasticSpring plastic_;
    FaceShift shift_;
    std::vector<MomentLine> borne_;  // moments that have bent it
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
