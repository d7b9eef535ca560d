#pragma once

#include <string>
#include <vector>

namespace backspring {

/// The kinds of steel that spring makers' tables keep apart, as far as knife springs use them.
enum class SpringSteel {
    carbon,     ///< carbon or low-alloy, hardened and tempered
    stainless,  ///< chromium or chromium-nickel
};

/// Greatest bending stress spring makers' tables allow, over tensile strength.
struct SpringAllowable {
    std::string stated_for;  ///< steel and kind of spring
    double fraction = 0.0;   ///< greatest stress over tensile strength
    std::string source;      ///< key of the source
    std::string confidence;  ///< "read" or "memory"
};

/// What the trade's tables allow for a number of cycles.
///
/// Some tables state one number for a whole range of lives and are read as steps; others state
/// numbers at lives, between which the fraction is straight in the logarithm of cycles. A table
/// that does not reach a number of cycles is left out.
///
/// @param cycles  >= 1
/// @returns       one entry a table, never none
/// @throws OutOfRange  fewer than one cycle
/// @source machine-elements-spring-table, amesweb-spring-ends, associated-spring
/// @note   the nearest published relatives, not flat springs: torsion springs and the ends of
///         extension springs, both of wire in bending. Where a stress ratio is stated it is 0; the
///         spring of a knife never unloads, so its range is smaller. Not peened
[[nodiscard]] std::vector<SpringAllowable> spring_allowables(SpringSteel steel, double cycles);

}  // namespace backspring
