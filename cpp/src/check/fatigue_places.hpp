#pragma once

#include <optional>
#include <vector>

#include "backspring/strength/fatigue.hpp"
#include "backspring/strength/stress_range.hpp"
#include "verdict_parts.hpp"

namespace backspring::detail {

/// A place that may crack.
struct FatiguePlace {
    std::optional<MarginKind> notch;  ///< none for the outer fibre
    double station_mm = 0.0;
    double stress_mpa = 0.0;    ///< nominal, greatest of the travel
    double notch_factor = 1.0;  ///< the part of it that counts for fatigue
    Finish finish = Finish::ground;
    double residual_mpa = 0.0;
    bool soft_skin = false;
};

/// A notch as a place that may crack, with the surface that is there.
[[nodiscard]] FatiguePlace fatigue_place(const Design& design, const Notch& notch);

/// The outer fibre where it is worst stressed, and every notch in tension.
[[nodiscard]] std::vector<FatiguePlace> fatigue_places(const Design& design,
                                                       const PeakStress& peak,
                                                       const std::vector<Notch>& notches);

/// Fatigue at places of a spring over the travel, for the openings that are judged.
class Cycles {
  public:
    Cycles(const Design& design, const Worked& worked) : design_(design), worked_(worked) {}

    [[nodiscard]] Fatigue at(const FatiguePlace& place) { return fatigue(input(place)); }

    /// The margin that judges, at its likely value; nothing where there is none.
    [[nodiscard]] std::optional<double> margin_at(const FatiguePlace& place) {
        return likely_margin(input(place), Criterion::swt);
    }

    /// Openings until it cracks, likewise.
    [[nodiscard]] double life_at(const FatiguePlace& place) {
        return likely_life_openings(input(place));
    }

  private:
    [[nodiscard]] FatigueInput input(const FatiguePlace& place);

    const Design& design_;
    const Worked& worked_;
};

/// Margin by smax sa, the criterion that judges.
[[nodiscard]] const Band& judging_margin(const Fatigue& fatigue);

/// Openings that are judged: those wanted, or a lifetime's.
[[nodiscard]] double judged_openings(const Design& design);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
