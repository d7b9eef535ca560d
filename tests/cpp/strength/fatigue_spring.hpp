#pragma once

#include <limits>

#include "backspring/strength/fatigue.hpp"
#include "catch.hpp"

namespace fatigue_spring {

using namespace backspring;

inline constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
inline constexpr double kEndless = std::numeric_limits<double>::infinity();

/// A spring of about 45 HRC, ground, strained to four fifths of its tensile strength.
inline FatigueInput spring() {
    FatigueInput input;
    input.stress_max_mpa = 1180.0;
    input.stress_min_mpa = 420.0;
    input.tensile_mpa = {1460.0, 1440.0, 1482.0};
    input.yield_mpa = {1240.0, 1150.0, 1360.0};
    input.width_mm = 2.3;
    input.thickness_mm = 3.1;
    return input;
}

inline double margin_of(const Fatigue& found, Criterion criterion) {
    for (const auto& margin : found.margins) {
        if (margin.criterion == criterion) return margin.margin.value;
    }
    FAIL("no margin by this criterion");
    return kNan;
}

}  // namespace fatigue_spring
