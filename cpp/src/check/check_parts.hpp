#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "backspring/action/rest.hpp"
#include "backspring/check/check.hpp"

namespace backspring {

/// A check with or without its verdict, so that what the verdict costs can be measured.
[[nodiscard]] Check check(const Design& design, double step_deg, bool with_verdict);

/// A position from its contact and the worst stress of the whole spring; readings are left open.
[[nodiscard]] Position make_position(const Design& design,
                                     const std::string& name,
                                     const Contact& contact,
                                     const PeakStress& peak);

/// The joint in each position the blade has, open first.
[[nodiscard]] std::vector<Position> make_positions(const Design& design,
                                                   const Action& action,
                                                   const Rests& loaded);

/// The ways between the rests, opening, in turn; none where the blade does not stay.
[[nodiscard]] std::vector<Stroke> make_strokes(const Action& action,
                                               const std::vector<Step>& steps,
                                               const Rests& rests);

/// The same, each way found by the given look at it.
using StrokeBetween = std::function<std::optional<Stroke>(const Contact& from, const Contact& to)>;
[[nodiscard]] std::vector<Stroke> make_strokes(const StrokeBetween& stroke_between,
                                               const Rests& rests);

/// The strokes as the hand feels them.
[[nodiscard]] std::vector<StrokeReport> make_reports(const Design& design,
                                                     const Rests& rests,
                                                     const std::vector<Stroke>& strokes);

/// The worst of a travel from where force and stress are largest.
[[nodiscard]] Travel make_travel(const Design& design,
                                 const Contact& force,
                                 const Contact& stress,
                                 const PeakStress& peak);

/// The contact of the travel with the largest force on the spring.
[[nodiscard]] Contact strongest(const Action& action, const std::vector<Step>& steps);

/// The contact of the travel with the largest bending stress.
[[nodiscard]] Contact most_stressed(const Action& action, const std::vector<Step>& steps);

}  // namespace backspring
