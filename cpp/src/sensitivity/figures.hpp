#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/design/design.hpp"
#include "backspring/spring/bending.hpp"
#include "elements.hpp"

namespace backspring::detail {

/// Which of a design's joints a state belongs to.
enum class JointKind {
    loaded,    ///< pins in
    unloaded,  ///< rear pin out
    stiffness  ///< pins in, the dial at the pivot station
};

/// The joint of a design; its flexibility is given when spring and frame are as they were.
[[nodiscard]] Joint make_joint(const Design& design,
                               JointKind kind,
                               const std::optional<Flexibility>& flexibility = {});

/// A contact that figures are taken from.
struct Watched {
    JointKind kind = JointKind::loaded;
    Joint joint;
    State state;
};

/// What one watched contact has to do with a figure.
struct Share {
    std::size_t watched = 0;
    Elements per_element;
};

/// The worst place of the spring: stress = moment x stress per moment there.
struct WorstPlace {
    double x_mm = 0.0;
    double moment_nmm = 0.0;  ///< at the place, or at the middle pin for a place behind it
    double force_n = 0.0;     ///< on the spring ahead of the place
};

/// One result of a design and all it follows from.
struct Figure {
    std::string name;
    double value = 0.0;
    std::vector<Share> shares;
    std::optional<WorstPlace> worst;  ///< only for stress
    bool at_kink = false;             ///< its peak is a corner of its curve, or one of two alike
};

/// Results that have a gradient, with the contacts they come from.
struct Figures {
    std::vector<Watched> watched;
    std::vector<Figure> all;
};

/// Works a design out as check() does, and how each result answers to the elements.
///
/// Peaks stay at their angle and stations (envelope theorem), rests move so that the torque stays
/// nothing.
///
/// @throws InvalidInput  with every broken rule
[[nodiscard]] Figures make_figures(const Design& design);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
