#pragma once

namespace backspring::detail {

/// A rectangle with a slot, per unit of width.
struct Slot {
    double thickness_mm;  ///< of the rectangle
    double chord_mm;      ///< of the slot
    double offset_mm;     ///< slot's centre from the mid-line
};

/// Elastic core of a bent section; forces over yield stress and width.
struct PlasticCore {
    double core_mm;     ///< half height of the elastic core
    double neutral_mm;  ///< neutral axis from the mid-line
    double moment_mm2;  ///< moment over yield stress and width
};

/// The section whose elastic core has a half height; 0 for all yielding.
[[nodiscard]] PlasticCore plastic_core(const Slot& slot, double core_mm);

/// Half height of the core where the slot lies on the mid-line, or as if it did.
[[nodiscard]] double core_on_mid_line(const Slot& slot, double moment_mm2);

/// The core under a moment beyond yielding and below the plastic moment.
///
/// In closed form with the slot on the mid-line, else by Newton steps; where they fail, by nested
/// root search.
///
/// @param outer_mm  centroid to the farther outer fibre, the core's half height at first yield
[[nodiscard]] PlasticCore core_under(const Slot& slot, double moment_mm2, double outer_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
