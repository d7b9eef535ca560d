#pragma once

#include <span>
#include <string_view>

namespace backspring {

/// One row of a published table.
struct CurvePoint {
    double x;
    double y;
};

/// Linear interpolation in a table whose x rises.
///
/// @param table  rows, at least two, x strictly rising
/// @param x      where to read
/// @param name   what the table holds, for the message
/// @returns      y at x
/// @throws OutOfRange  outside the table: nothing is extrapolated
[[nodiscard]] double interpolate(std::span<const CurvePoint> table,
                                 double x,
                                 std::string_view name);

}  // namespace backspring
