#pragma once

#include "backspring/fit/fit_model.hpp"

namespace backspring::detail {

/// Spring and tang of one knife on the bench, both pins in.
[[nodiscard]] Joint loaded_joint(const Design& design, const FitUnknowns& unknowns);

}  // namespace backspring::detail
