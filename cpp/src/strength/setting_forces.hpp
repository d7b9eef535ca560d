#pragma once

#include "backspring/action/contact.hpp"
#include "backspring/strength/plastic_spring.hpp"

namespace backspring::detail {

/// By how much places and movements may miss each other.
struct Enough {
    double mm;           ///< [mm]
    double share = 0.0;  ///< and of what sets further
};

/// Forces on a spring and the set that they leave.
struct Setting {
    Loads loads;
    FaceShift set;
};

/// Forces under which a spring that sets as it is bent stands where what touches it holds it.
///
/// The touches stay where they are. Movement and force grow together whatever the spring does, so
/// there is one answer: Newton's method with the spring's own tangent, a step no longer than what
/// it does along its way, finds it; forces that would pull are none.
///
/// @param elastic  loads of a contact, and what holds it there [N]
/// @param shift    of the face, at which they are
/// @param guess    loads to begin with; none: as if nothing set further
[[nodiscard]] Setting setting_forces(const PlasticSpring& plastic,
                                     const Flexibility& flexibility,
                                     const Loads& elastic,
                                     const FaceShift& shift,
                                     const Loads& guess,
                                     const Enough& enough);

/// Where one touch holds a spring, by how far the set has turned the face.
struct HeldPlace {
    double x_mm;                         ///< station [mm]
    double movement_mm;                  ///< there, elastic and set [mm]
    double mm_per_n;                     ///< by which it moves elastically [mm/N]
    double per_n = 0.0;                  ///< how fast that grows along the spring [1/N]
    double slope = 0.0;                  ///< of the set at which all this is
    double x_per_slope_mm = 0.0;         ///< how fast the station moves with that [mm]
    double movement_per_slope_mm = 0.0;  ///< how fast the movement grows with that [mm]

    /// Where it holds once the set has another slope.
    [[nodiscard]] HeldPlace at_slope(double other) const {
        HeldPlace place = *this;
        const double turned = other - slope, way = x_per_slope_mm * turned;
        place.x_mm += way;
        place.mm_per_n += per_n * way;
        place.movement_mm += movement_per_slope_mm * turned;
        place.slope = other;
        return place;
    }
};

/// The force under which a spring stands where one touch holds it.
[[nodiscard]] Setting setting_force(const PlasticSpring& plastic,
                                    const HeldPlace& held,
                                    const Loads& guess,
                                    const Enough& enough);

/// Leaves of loads what is left where the face moves away from what touches it and stays elastic.
void lessen(const Flexibility& flexibility, Loads& loads, const FaceShift& away);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
