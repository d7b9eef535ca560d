#pragma once

#include <string>
#include <vector>

#include "backspring/check/check.hpp"
#include "backspring/check/solution.hpp"

namespace backspring::detail {

/// A check with or without its verdict, so that what the verdict costs can be measured.
[[nodiscard]] Check check(const Design& design, bool with_verdict);

/// The own blade with the others where they stand.
[[nodiscard]] Check check_case(Solution& solution, bool with_verdict);

/// A position from its contact and the worst stress of the whole spring; readings are left open.
[[nodiscard]] Position make_position(const Design& design,
                                     const std::string& name,
                                     const Contact& contact,
                                     const PeakStress& peak);

/// The joint in each position the blade has, open first.
///
/// @param band  of the loaded readings, or none
[[nodiscard]] std::vector<Position> make_positions(Solution& solution,
                                                   const std::optional<StopBand>& band);

/// The strokes as the hand feels them.
[[nodiscard]] std::vector<StrokeReport> make_reports(const Design& design,
                                                     const Rests& rests,
                                                     const std::vector<Stroke>& strokes);

/// The worst of a travel from where force and stress are largest.
[[nodiscard]] Travel make_travel(const Design& design,
                                 const Peak& force,
                                 const Contact& stress,
                                 const PeakStress& peak);

/// What a verdict looks at, worked out.
[[nodiscard]] Worked worked_out(Solution& solution);

/// Takes every impossible number out of a check.
///
/// @returns  names of those taken out, each once
[[nodiscard]] std::vector<std::string> take_out_impossible(Check& check, const Design& design);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
