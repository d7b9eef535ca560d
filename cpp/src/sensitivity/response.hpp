#pragma once

#include "elements.hpp"

namespace backspring::detail {

/// A number and how it answers to each of the elements.
struct Answering {
    double value = 0.0;
    Elements per_element = Elements::Zero();

    /// A part of a sum.
    [[nodiscard]] Answering scaled(double factor) const {
        return {factor * value, factor * per_element};
    }
};

/// What a contact can be asked for.
enum class Asked {
    opening_torque,  ///< friction included [N mm]
    deflection,      ///< at the dial [mm]
    moment           ///< at a station [N mm]
};

/// A number of a contact and its gradient in the elements.
///
/// The elements are few, so the equations of contact are carried through with their derivatives.
/// The unknowns, places of the touches and the angle of a blade free to seat, then drop out by the
/// implicit function theorem: df = f_e de - f_z (G_z)^-1 G_e de.
///
/// A straddled state has no forces: only its deflection means anything.
///
/// @param moment_at_mm  station ahead of the middle pin [mm]
[[nodiscard]] Answering respond(const Joint& joint,
                                const Friction& friction,
                                const State& state,
                                Asked asked,
                                double moment_at_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
