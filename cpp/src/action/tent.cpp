#include "tent.hpp"

#include <cmath>

namespace backspring {
namespace {

/// Where a place is under the round top of the tent of shear about another.
struct UnderTent {
    double top_mm_per_n;  ///< from its middle to where it is straight, by what shear gives
    double way;           ///< as a share of that: beyond 1 the tent is straight
    double sense;         ///< of the way, + ahead
};

UnderTent under_tent(const Flexibility& flexibility,
                     const BeamPlace& moves,
                     const BeamPlace& pressed) {
    constexpr double twentieth = 0.05;  // of the thickness
    const double top = twentieth * flexibility.shear_factor;
    const double away = moves.upto.shear - pressed.upto.shear;
    const double way = std::abs(away) < top ? std::abs(away) / top : 1.0;
    return {top, way, away > 0.0 ? 1.0 : away < 0.0 ? -1.0 : 0.0};
}

}  // namespace

// Force and movement each spread evenly over half of the round top, but for what a place gives
// under its own force, which stays.
Compliance detail::beside_compliance(const Flexibility& flexibility,
                                     const BeamPlace& moves,
                                     const BeamPlace& pressed) {
    Compliance answer = compliance(flexibility, moves, pressed);
    const UnderTent at = under_tent(flexibility, moves, pressed);
    const double left = 1.0 - at.way;
    answer.mm_per_n -= at.top_mm_per_n * left * left * left / 6.0;
    answer.rad_per_n += 0.5 * at.sense * moves.shear_rad_per_n * left * left;
    return answer;
}

double detail::tent_rate(const Flexibility& flexibility,
                         const BeamPlace& moves,
                         const BeamPlace& pressed) {
    const UnderTent at = under_tent(flexibility, moves, pressed);
    return at.way < 1.0 ? (1.0 - at.way) / at.top_mm_per_n : 0.0;
}

}  // namespace backspring
