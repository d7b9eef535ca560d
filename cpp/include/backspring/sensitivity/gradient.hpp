#pragma once

#include <Eigen/Core>
#include <string>
#include <string_view>
#include <vector>

#include "backspring/design/design.hpp"

namespace backspring {

/// How the results of a design answer to its numbers, all at once.
struct Gradient {
    std::vector<std::string> figures;     ///< results by their names in a check, rows
    std::vector<std::string> dimensions;  ///< keys of the numbers, columns; see dimensions()
    Eigen::ArrayXd value;                 ///< of each result
    Eigen::ArrayXXd derivative;           ///< of each result by each number

    /// One derivative.
    ///
    /// @throws OutOfRange  the design has no such result or number
    [[nodiscard]] double of(std::string_view figure, std::string_view dimension) const;
};

/// Gradient of peak torque and pull, stiffness, worst stress of the travel, yield margin and
/// readings in every number of a design.
///
/// A contact sees the design through few numbers: compliance integrals up to where the tang bears,
/// the arc that bears, the face. Contact's own gradient in these is analytic and implicit: places,
/// forces and rests move with them. How these few follow from a number of the design is explicit
/// and is differenced centrally, to 1e-9, without solving a contact again.
///
/// Besides the keys of dimensions(): "tang.corner_open" and "tang.corner_closed", one rear corner
/// alone. Results and numbers that the design does not have are left out.
///
/// Beside other blades each result is that of the case in which it is worst, with the reading at
/// open besides, and the numbers of the other blades come last, as "blades.pen.tang.closed". There
/// the results of whole solutions are differenced centrally, 0.00002 of the number apart (0.00002
/// mm at least) to either side: good to 1e-5 of a derivative. Where a rule stands in the way on one
/// side, the other is taken; NaN where on both. So is a blade alone whose stop is stated, or whose
/// friction bends the spring.
///
/// @throws InvalidInput  with every broken rule
/// @source envelope theorem; implicit function theorem
/// @note  a peak that sits where the tang passes from one face to another is a kink, and is taken
///        as if its angle stayed
[[nodiscard]] Gradient gradient(const Design& design);

}  // namespace backspring
