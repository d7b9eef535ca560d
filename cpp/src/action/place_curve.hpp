#pragma once

#include <array>
#include <optional>
#include <vector>

#include "abreast.hpp"
#include "backspring/action/sweep.hpp"
#include "backspring/core/interpolant.hpp"
#include "indenters.hpp"

namespace backspring::detail {

using BothTouches = std::array<Touch, 2>;

/// How body and kick go together.
struct TwoCurves {
    BothTouches last;
    std::array<Interpolant, 2> places{};  ///< slope on an arc, station on a flat
};

/// How the touches of a blade alone go with the angle, by a few contacts near by: one as a curve,
/// body and kick together as two.
class PlaceCurve {
  public:
    /// @param joint  outlives this
    explicit PlaceCurve(const Joint& joint) : joint_(&joint) {}

    /// Takes in a contact at an angle of its own. With another part, or another edge of the pad,
    /// begins another curve.
    void add(const Contact& contact);

    /// The contact at an angle, soon found where those known tell about where the blade bears.
    [[nodiscard]] Contact contact_at(double blade_angle_deg) const;

    /// Contacts at several angles, where one part bears in all; nothing where that is not known.
    ///
    /// @param angles_deg  outlive what is returned
    [[nodiscard]] std::optional<TouchesAbreast> abreast(std::span<const double> angles_deg) const;

  private:
    /// A contact of several blades.
    struct Known {
        std::size_t kind;
        Contact contact;
    };

    [[nodiscard]] Contact with_others(double blade_angle_deg) const;

    void add_both(double blade_angle_deg, const BothTouches& touches);
    [[nodiscard]] BothTouches both_at(double blade_angle_deg) const;

    const Joint* joint_;
    bool tells_ = false;
    Part part_{.arc = -1};
    Interpolant curve_;
    std::optional<double> edge_mm_{};  ///< of the pad, where that bears
    std::optional<TwoCurves> both_{};
    std::optional<Touch> kick_{};  ///< alone
    std::vector<Known> known_{};   ///< of several blades
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
