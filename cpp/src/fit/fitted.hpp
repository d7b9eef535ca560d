#pragma once

#include "backspring/fit/fit_model.hpp"

namespace backspring::detail {

/// The design with the faces of each position moved until both loaded readings are the target.
///
/// @throws NoConvergence  no tang gives that reading
[[nodiscard]] Design fitted(const Design& design, double target_mm, const FitUnknowns& unknowns);

}  // namespace backspring::detail
