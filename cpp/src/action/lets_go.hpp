#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

#include "touches_step.hpp"

namespace backspring::detail {

/// Where a part of a blade stands deepest in a face that others bend.
struct StandsOut {
    double overlap_mm;  ///< endlessly far below 0 where it does not reach the pad
    double lever_mm;    ///< what a turn adds to that
    Touch touch;        ///< without a force yet
};

/// The face of one end of a spring as the blades that bear bend it, for a blade that does not.
class FaceAsBent {
  public:
    /// @param touches  with their forces; those of the other end are left out
    /// @param root     how the other end moves this one's root
    FaceAsBent(const Flexibility& flexibility,
               std::span<const AnyTouch> touches,
               bool far,
               const RootMove& root);

    /// Of a tang's body and its kick.
    [[nodiscard]] std::array<StandsOut, 2> parts_of(const Mounted& tang,
                                                    int blade,
                                                    double blade_angle_deg) const;

    /// Whether another blade bears by a flat.
    [[nodiscard]] bool has_flat() const { return has_flat_; }

  private:
    struct Force {
        BeamPlace place;
        double force_n;
    };

    const Flexibility& flexibility_;
    RootMove root_;
    std::vector<Force> forces_;
    bool has_flat_ = false;
};

/// How a blade stands that is free to seat on its kick and did not bear.
struct Loose {
    double blade_angle_deg;
    std::vector<Touch> bear;  ///< body and kick, where both stand in the face at any angle
};

/// Where it stands as alone, if it is clear there, or where it lets go on its way from there; or
/// about where its body and kick come to bear together.
///
/// @param about_deg  where it stood in a contact near by
/// @returns          nothing where that is not told
[[nodiscard]] std::optional<Loose> loose_at(const FaceAsBent& face,
                                            const Neighbour& other,
                                            int blade,
                                            double about_deg);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
