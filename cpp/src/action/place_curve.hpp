#pragma once

#include <array>
#include <optional>

#include "backspring/action/sweep.hpp"
#include "backspring/core/interpolant.hpp"
#include "indenters.hpp"

namespace backspring::detail {

/// How the touches of a blade alone go with the angle, by a few contacts near by: one as a curve,
/// body and kick together as they last were.
class PlaceCurve {
  public:
    /// @param joint  outlives this
    explicit PlaceCurve(const Joint& joint) : joint_(&joint), tells_(joint.alone()) {}

    /// Takes in a contact at an angle of its own. One touch of a kick, at an edge of the pad or on
    /// another part than the first is no place of a curve.
    void add(const Contact& contact);

    /// The contact at an angle, soon found where those known tell about where the blade bears.
    [[nodiscard]] Contact contact_at(double blade_angle_deg) const;

  private:
    const Joint* joint_;
    bool tells_;
    int count_ = 0;
    Part part_{};
    Interpolant curve_;
    std::optional<std::array<Touch, 2>> both_{};
    std::optional<Touch> kick_{};  ///< alone
};

/// turn_at(), by what is known of contacts near by.
[[nodiscard]] inline Turn turn_near(const Action& action,
                                    double blade_angle_deg,
                                    const PlaceCurve& way) {
    return make_turn(action, way.contact_at(blade_angle_deg));
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
