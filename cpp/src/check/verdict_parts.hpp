#pragma once

#include "backspring/check/verdict.hpp"
#include "backspring/strength/local_stress.hpp"
#include "backspring/strength/plastic_set.hpp"

namespace backspring::detail {

/// A margin with what is the same for all: limit over value.
[[nodiscard]] Margin make_margin(MarginKind kind, double value, double limit, Quantity quantity);

/// A place where the stress is higher than its section alone would carry.
struct Notch {
    MarginKind kind = MarginKind::hole_edge;  ///< of the margin
    std::string source;                       ///< of its factor
    LocalStress local;                        ///< at the worst of the travel
    double root_radius_mm = 0.0;              ///< [mm]
};

/// The middle pin's hole, the belly's worst kink and shoulder where their root radius is known, and
/// the belly where it is hollow; those outside what the models were held to are left out.
[[nodiscard]] std::vector<Notch> find_notches(const Design& design, const Worked& worked);

/// The worst kink of the belly and its worst shoulder if all had this root radius.
[[nodiscard]] std::vector<Notch> outline_notches(const Design& design,
                                                 const Worked& worked,
                                                 double radius_mm);

/// Yield and set.
///
/// @returns  the likely set of a spring that yields
std::optional<PlasticSet> judge_bending(std::vector<Margin>& margins,
                                        const Design& design,
                                        const Worked& worked);

/// The greatest plastic strain against the steel's elongation; nothing where all stays elastic.
void judge_strain(std::vector<Margin>& margins,
                  const Design& design,
                  const Worked& worked,
                  const std::vector<Notch>& notches,
                  const std::optional<PlasticSet>& set);

/// Local stress at the middle pin's hole and at kinks of the belly.
void judge_local(std::vector<Margin>& margins,
                 const Design& design,
                 const Worked& worked,
                 const std::vector<Notch>& notches);

/// Fatigue and the limits of spring makers' tables.
void judge_life(std::vector<Margin>& margins,
                const Design& design,
                const Worked& worked,
                const std::vector<Notch>& notches);

/// Pressure on the pad, galling, pins and liners.
void judge_wear(std::vector<Margin>& margins, const Design& design, const Worked& worked);

/// The edge's rap on closing: eased by a hand, and at worst let go.
void judge_rap(std::vector<Margin>& margins, const Design& design, const Worked& worked);

/// The gap left under the edge as a hand eases the blade shut [mm]; none where the design does not
/// tell it.
[[nodiscard]] std::optional<double> eased_gap_mm(const Design& design, const Worked& worked);

/// What fails first, notes last, the least margin first among those of one word.
void sort_margins(std::vector<Margin>& margins);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
