#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/design/design.hpp"

namespace backspring {

/// A measure of the spring that sizing may change.
///
/// Keys: "spring.thickness" is the thickness at the middle pin, the whole profile goes with it in
/// proportion; with a station, that station's own thickness alone. "fit.preload". "spring.width".
/// "tang.pivot" moves pivot, pad and dial together, the steel stays and is made longer at its end
/// when the pad needs it. "spring.length" does the same and stretches the steel between middle pin
/// and pad; blades on the same pin go along. "blades.NAME.fit.preload" is another blade's.
struct SizeDimension {
    std::string key;                   ///< which measure
    std::optional<double> station_mm;  ///< with "spring.thickness" only [mm]
    std::optional<double> low_mm;      ///< least allowed; none: see size_bounds() [mm]
    std::optional<double> high_mm;     ///< greatest allowed [mm]
    std::vector<double> stock_mm;      ///< sizes it comes in; none: any [mm]
};

/// Refuses dimensions that are unknown, given twice, have no such station or crossed bounds.
///
/// @throws InvalidInput  with every broken rule
void require_dimensions(const Design& design, const std::vector<SizeDimension>& dimensions);

/// The measure as it is [mm].
[[nodiscard]] double size_of(const Design& design, const SizeDimension& dimension);

/// A copy of a design with the measure changed; the design's rules judge it later.
[[nodiscard]] Design with_size(const Design& design, const SizeDimension& dimension, double mm);

/// Limits of a measure [mm].
struct SizeBounds {
    double low_mm = 0.0;   ///< [mm]
    double high_mm = 0.0;  ///< [mm]
};

/// Limits as given, or else about the measure as it is: 0.4 to 2.5 times for thickness, width and
/// preload, 0.75 to 1.3 times for pivot and length.
[[nodiscard]] SizeBounds size_bounds(const Design& design, const SizeDimension& dimension);

}  // namespace backspring
