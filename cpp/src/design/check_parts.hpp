#pragma once

#include <vector>

#include "backspring/action/rest.hpp"
#include "backspring/design/check.hpp"

namespace backspring {

/// A check with or without its verdict, so that what the verdict costs can be measured.
[[nodiscard]] Check check(const Design& design, double step_deg, bool with_verdict);

/// The joint in each position the blade has, open first.
[[nodiscard]] std::vector<Position> make_positions(const Design& design,
                                                   const Action& action,
                                                   const Rests& loaded);

/// The ways between the rests, opening, in turn; none where the blade does not stay.
[[nodiscard]] std::vector<Stroke> make_strokes(const Action& action,
                                               const std::vector<Step>& steps,
                                               const Rests& rests);

/// The strokes as the hand feels them.
[[nodiscard]] std::vector<StrokeReport> make_reports(const Design& design,
                                                     const Rests& rests,
                                                     const std::vector<Stroke>& strokes);

/// The contact of the travel with the largest force on the spring.
[[nodiscard]] Contact strongest(const Action& action, const std::vector<Step>& steps);

/// The contact of the travel with the largest bending stress.
[[nodiscard]] Contact most_stressed(const Action& action, const std::vector<Step>& steps);

}  // namespace backspring
