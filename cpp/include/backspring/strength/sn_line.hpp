#pragma once

#include <optional>

#include "backspring/core/band.hpp"

namespace backspring {

/// Strength against cycles: straight in logarithms from the tensile strength at one cycle to f
/// times it at 10^3, and on to the endurance limit at 10^6; level beyond.
struct SnLine {
    double tensile_mpa = 0.0;        ///< at one cycle [MPa]
    double share_at_thousand = 0.0;  ///< f, of the tensile strength at 10^3 cycles
    double endurance_mpa = 0.0;      ///< at 10^6 cycles and beyond [MPa]
};

/// Share of the tensile strength that 10^3 cycles leave, f, with its band.
///
/// f = 1.06 - 2.8e-3 S + 6.9e-6 S^2, S in kpsi, between 70 and 200 kpsi, level outside. The band
/// reaches 5 % up, assumed, and 17 % down: strain-life constants of three hardened steels give 0.65
/// to 0.74, below the curve's 0.78.
///
/// @param tensile_mpa  [MPa], > 0
/// @source shigley-9
[[nodiscard]] Band share_at_thousand(double tensile_mpa);

/// A line whose parts are in order.
///
/// @param share_at_thousand  f, > 0 to less than 1
/// @throws InvalidInput      a strength not above 0, or an endurance limit not below f Sut
[[nodiscard]] SnLine make_sn_line(double tensile_mpa,
                                  double share_at_thousand,
                                  double endurance_mpa);

/// Reversed stress that is borne for a number of cycles.
///
/// a N^b from 10^3 to 10^6, a = (f Sut)^2/Se, b = -(1/3) log10(f Sut/Se); Sut N^(log10(f)/3) below.
///
/// @param cycles  >= 1
/// @returns       [MPa]
/// @throws OutOfRange  fewer than one cycle
/// @source shigley-9
[[nodiscard]] double fatigue_strength_mpa(const SnLine& line, double cycles);

/// Cycles that a reversed stress is borne.
///
/// (Sf/a)^(1/b) from 10^3 to 10^6 cycles; 0 where the first one breaks.
///
/// @param reversed_mpa  amplitude without mean stress [MPa], >= 0
/// @returns             nothing at or below the endurance limit: no limit is found
/// @source shigley-9
/// @note   hard steel has no true limit: from 10^8 cycles on it can still break from inside
[[nodiscard]] std::optional<double> cycles_to_failure(const SnLine& line, double reversed_mpa);

}  // namespace backspring
