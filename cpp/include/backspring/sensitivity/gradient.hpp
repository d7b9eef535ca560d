#pragma once

#include <Eigen/Core>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "backspring/design/design.hpp"

namespace backspring {

/// How a result changes to either side of a number; none where a rule or a lost result is in the
/// way.
struct SidedRates {
    std::optional<double> below;  ///< as the number falls
    std::optional<double> above;  ///< as it rises
};

/// How the results of a design answer to its numbers, all at once.
struct Gradient {
    std::vector<std::string> figures;     ///< results by their names in a check, rows
    std::vector<std::string> dimensions;  ///< keys of the numbers, columns; see dimensions()
    Eigen::ArrayXd value;                 ///< of each result
    Eigen::ArrayXXd derivative;           ///< of each result by each number; NaN where none is
    Eigen::ArrayXXd below;                ///< the same as the number falls
    Eigen::ArrayXXd above;                ///< the same as it rises

    /// One derivative, none where the two sides differ or there is neither.
    ///
    /// @throws OutOfRange  the design has no such result or number
    [[nodiscard]] std::optional<double> find(std::string_view figure,
                                             std::string_view dimension) const;

    /// One derivative that there is.
    ///
    /// @throws OutOfRange  the design has no such result or number, or there is no derivative
    [[nodiscard]] double of(std::string_view figure, std::string_view dimension) const;

    /// A derivative to either side.
    ///
    /// @throws OutOfRange  the design has no such result or number
    [[nodiscard]] SidedRates sides(std::string_view figure, std::string_view dimension) const;
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
/// mm at least) to either side: good to 1e-5 of a derivative. So is a blade alone whose stop is
/// stated, or whose friction bends the spring, and one where a peak is a corner of its curve, as
/// where the tang passes from a face to the arc beside it, or where two strokes come as high. So
/// are all results by a face of a drawn tang, which cuts its outline anew.
///
/// Where a rule stands in the way on one side, or a result is lost there, the derivative is that of
/// the other. Where the sides differ there is none, and `sides` tells both.
///
/// @throws InvalidInput  with every broken rule
/// @source envelope theorem; implicit function theorem
[[nodiscard]] Gradient gradient(const Design& design);

}  // namespace backspring
