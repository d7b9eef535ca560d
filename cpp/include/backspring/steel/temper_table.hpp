#pragma once

#include <optional>
#include <vector>

#include "backspring/core/band.hpp"
#include "backspring/steel/temper.hpp"

namespace backspring {

/// One row of a published temper table.
struct TemperPoint {
    double temper_c = 0.0;  ///< [C]
    Band hardness_hrc;      ///< [HRC]
};

/// Hardness after tempering at one hold, row by row; between rows it is interpolated.
///
/// A table knows no other time. Half the hold to four times the hold is taken as the same: in
/// carbon steel doubling the time is worth 0.5 to 1 HRC at spring hardness.
struct TemperTable {
    std::vector<TemperPoint> points;  ///< two or more, temper rising, hardness never rising
    std::optional<double> hold_h;     ///< the table's hold, none when it states none [h]
};

/// Hardness after one temper.
///
/// @param table     the steel's table
/// @param temper_c  within the table
/// @param time_h    judged against the table's hold when both are known; not counted otherwise
/// @returns         [HRC]
/// @throws OutOfRange    outside the table or its times
/// @throws InvalidInput  for a table that is none
[[nodiscard]] Band hardness_after_temper(const TemperTable& table,
                                         double temper_c,
                                         std::optional<double> time_h = std::nullopt);

/// Lowest temper that leaves a hardness.
///
/// @param table         the steel's table
/// @param hardness_hrc  within the table
/// @returns             [C]; where the table stays level, the lower end
/// @throws OutOfRange    outside the table
/// @throws InvalidInput  for a table that is none
[[nodiscard]] double temper_for_hardness(const TemperTable& table, double hardness_hrc);

/// Hardness left when a tempered part is heated once more: at or below the temper nothing changes.
///
/// @param table     the steel's table
/// @param temper_c  the first heat, within the table
/// @param later_c   up to the temper
/// @returns         [HRC]
/// @throws OutOfRange    above the temper: a table cannot say what time does there
/// @throws InvalidInput  for a table that is none
/// @note  A stay at the temper that is longer than the hold softens a little more.
[[nodiscard]] Band hardness_after_heat(const TemperTable& table, double temper_c, double later_c);

}  // namespace backspring
