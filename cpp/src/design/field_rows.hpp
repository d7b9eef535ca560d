#pragma once

#include "backspring/design/field.hpp"

// A plain number of a design: where it is says all.
#define BACKSPRING_PLACE(place)                                              \
    .get = [](const Design& d) -> std::optional<double> { return d.place; }, \
    .set = [](Design& d, double value) { d.place = value; }

namespace backspring::detail {

// Far beyond any folding knife; what lies outside is a slip of the pen or of units.
inline constexpr double kLongestMm = 500.0;
inline constexpr double kThickestMm = 50.0;
inline constexpr double kThinnestMm = 0.01;
inline constexpr double kShortestMm = 0.05;
inline constexpr double kMostClearanceMm = 1.0;
inline constexpr double kWeakestMpa = 1.0;
inline constexpr double kStrongestMpa = 3000.0;
inline constexpr double kSoftestMpa = 10.0;  // Young's modulus of balsa across its grain
inline constexpr double kStiffestMpa = 1e6;
inline constexpr double kStrongestBandMpa = 1e4;  // the upper end of what is uncertain
// The least and greatest of the table that turns Rockwell C into Vickers.
inline constexpr double kSoftestHrc = 20.0;
inline constexpr double kHardestHrc = 68.0;

/// Rows of the steel in [spring].
[[nodiscard]] std::vector<Field> steel_fields();
/// Rows of the stock in [spring].
[[nodiscard]] std::vector<Field> spring_fields();
/// Rows of support, holes and pad in [spring].
[[nodiscard]] std::vector<Field> pin_fields();
/// Rows of the surface in [spring].
[[nodiscard]] std::vector<Field> surface_fields();
/// Rows of [tang].
[[nodiscard]] std::vector<Field> tang_fields();
/// Rows of [blade]'s edge and tip.
[[nodiscard]] std::vector<Field> edge_fields();
/// Rows of [fit], [blade] and [pins].
[[nodiscard]] std::vector<Field> fit_fields();
/// Rows of [frame].
[[nodiscard]] std::vector<Field> frame_fields();
/// Rows of [friction] and [targets].
[[nodiscard]] std::vector<Field> target_fields();
/// Rows of [priors].
[[nodiscard]] std::vector<Field> prior_fields();

/// The first of numbers that are all alike; nothing for none, or for some that differ.
[[nodiscard]] std::optional<double> alike(const std::vector<double>& numbers);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
