#include "backspring/strength/spring_allowable.hpp"

#include <cmath>
#include <optional>
#include <span>

#include "backspring/core/curve.hpp"
#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"

namespace backspring {
namespace {

/// One row of a table with one number for each range of lives.
struct Steps {
    const char* stated_for;
    SpringSteel steel;
    double few;   // below 10^3 cycles
    double some;  // 10^3 to 10^6
    double many;  // beyond
};

// Analysis and Design of Machine Elements, Table 14.3, p. 408; the cycle is not stated there.
constexpr Steps kSteps[] = {
    {"torsion spring, high-carbon steel", SpringSteel::carbon, 0.78, 0.62, 0.54},
    {"torsion spring, oil-tempered steel", SpringSteel::carbon, 0.80, 0.64, 0.55},
    {"torsion spring, stainless steel", SpringSteel::stainless, 0.75, 0.60, 0.50},
};

/// One row of a table with numbers at lives, x the logarithm of cycles.
struct Points {
    const char* stated_for;
    std::optional<SpringSteel> steel;  // none: stated for both kinds
    std::span<const CurvePoint> rows;
    const char* source;
    const char* confidence;
};

constexpr CurvePoint kWireEnds[] = {{5.0, 0.51}, {6.0, 0.47}, {7.0, 0.45}};
constexpr CurvePoint kDrawnWire[] = {{5.0, 0.53}, {6.0, 0.50}};
constexpr CurvePoint kTemperedWire[] = {{5.0, 0.55}, {6.0, 0.53}};

const Points kPoints[] = {
    {"end of an extension spring, music wire and 302 stainless",
     {},
     kWireEnds,
     "amesweb-spring-ends",
     "read"},
    {"torsion spring, music wire and 302 stainless", {}, kDrawnWire, "associated-spring", "memory"},
    {"torsion spring, hardened and tempered valve-spring wire", SpringSteel::carbon, kTemperedWire,
     "associated-spring", "memory"},
};

double step_at(const Steps& steps, double cycles) {
    if (cycles < 1e3) return steps.few;
    return cycles <= 1e6 ? steps.some : steps.many;
}

}  // namespace

std::vector<SpringAllowable> spring_allowables(SpringSteel steel, double cycles) {
    if (!(cycles >= 1.0)) {
        throw OutOfRange("cycles: must be at least 1, got " + with_unit(cycles, ""));
    }
    std::vector<SpringAllowable> found;
    found.reserve(std::size(kSteps) + std::size(kPoints));
    for (const Steps& steps : kSteps) {
        if (steps.steel != steel) continue;
        found.push_back(
            {steps.stated_for, step_at(steps, cycles), "machine-elements-spring-table", "read"});
    }
    const double life = std::log10(cycles);
    for (const Points& points : kPoints) {
        const bool reaches = life >= points.rows.front().x && life <= points.rows.back().x;
        if (!reaches || points.steel.value_or(steel) != steel) continue;
        found.push_back({points.stated_for, interpolate(points.rows, life, points.stated_for),
                         points.source, points.confidence});
    }
    return found;
}

}  // namespace backspring
