#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/check/check_two.hpp"
#include "two_parts.hpp"

namespace backspring::detail {

/// A position of a blade and how the blade stands in it.
struct Place {
    std::string name;
    BladeStand stand;
};

/// The positions a tang has: open, half_stop (where there is one), closed.
[[nodiscard]] std::vector<Place> places_of(const Tang& tang);

/// A spring with two blades as one of them sees it.
struct TwoView {
    const TwoJoints& joints;
    const WholeSpring& whole;
    const Design& own;    ///< this blade's end
    const Design& other;  ///< the other blade's end
    bool second;          ///< this blade is the second one

    [[nodiscard]] std::optional<TwoContacts> at(const BladeStand& own_stand,
                                                const BladeStand& other_stand) const {
        return second ? contacts_at(joints, other_stand, own_stand)
                      : contacts_at(joints, own_stand, other_stand);
    }
    [[nodiscard]] const Contact& own_contact(const TwoContacts& both) const {
        return second ? both.second : both.first;
    }
    [[nodiscard]] const Contact& other_contact(const TwoContacts& both) const {
        return second ? both.first : both.second;
    }
    [[nodiscard]] const Joint& joint() const { return second ? joints.second : joints.first; }

    /// How far the back has moved out at this blade's dial.
    [[nodiscard]] double moved_mm(const TwoContacts& both) const {
        const double turn = second ? both.second_turn_rad : both.first_turn_rad;
        return deflection_mm(joint(), own_contact(both), own.own().fit.dial_mm) +
               turn * own.own().fit.dial_mm;
    }
};

/// This blade in all its positions, and turned, while the other stays in one place.
[[nodiscard]] Beside look_beside(const TwoView& view, const Place& other, double step_deg);

/// What a maker should know of one blade's rows.
void add_notices(std::vector<Notice>& notices,
                 const TwoView& view,
                 const std::vector<Beside>& rows);

/// Holds both blades against the targets: the worst of all rows counts.
[[nodiscard]] std::vector<TargetResult> judge(const Targets& targets, const TwoCheck& check);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
