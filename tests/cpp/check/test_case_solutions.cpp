#include <cmath>

#include "backspring/check/case_solutions.hpp"
#include "backspring/check/check.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

std::vector<Design> several() {
    return {designs::bunting(SupportKind::two_pins), designs::bunting(SupportKind::clamped),
            designs::whinchat()};
}

}  // namespace

TEST_CASE("what holds of a blade is the worst row of its check", "[blades][property]") {
    for (const Design& design : several()) {
        for (std::size_t blade = 0; blade < design.blades.size(); ++blade) {
            const Design seen = seen_from(design, blade);
            const Check full = check(seen);
            CaseSolutions solved(seen);
            std::optional<double> torque;
            double stress = 0.0, margin = 1e9, closed = 0.0;
            for (const Beside& row : full.beside) {
                stress = std::max(stress, row.travel.peak_stress_mpa);
                margin = std::min(margin, *row.travel.yield_margin_low);
                for (const StrokeReport& each : row.strokes) {
                    torque = std::max(torque.value_or(0.0), each.stroke.peak_torque_nmm);
                }
                const double reading = row.position("closed")->reading_loaded_mm;
                if (std::abs(reading) > std::abs(closed)) closed = reading;
            }
            CAPTURE(blade);
            CHECK(full.beside.size() > 1);
            CHECK(peak_torque_nmm(solved) == torque);
            CHECK(most_stressed(solved).peak.stress_mpa == stress);
            CHECK(yield_margin(solved)->low == margin);
            CHECK(readings(solved).closed_mm == closed);
        }
    }
}

TEST_CASE("the pull that is least is that of one case, the largest that of another", "[blades]") {
    Design design = designs::bunting(SupportKind::two_pins);
    const Check full = check(design);
    CaseSolutions solved(design);
    REQUIRE(full.beside.size() == 2);
    std::vector<double> pulls;
    for (const Beside& row : full.beside) {
        double pull = 0.0;
        for (const StrokeReport& each : row.strokes) pull = std::max(pull, *each.peak_pull_n);
        pulls.push_back(pull);
    }
    REQUIRE(pulls[0] != pulls[1]);
    CHECK(peak_pull_n(solved) == std::max(pulls[0], pulls[1]));
    CHECK(least_peak_pull_n(solved) == std::min(pulls[0], pulls[1]));
    // Limits between the two: either one alone would be met.
    design.targets.pull_low_n = std::lerp(pulls[0], pulls[1], 0.5);
    CaseSolutions low(design);
    CHECK_FALSE(judge_targets(low).front().met);
    CHECK_FALSE(check(design).targets.front().met);
}

TEST_CASE("a blade alone has one solution, of the design itself", "[blades]") {
    const Design design = designs::heron();
    CaseSolutions solved(design);
    CHECK(&solved.front().design() == &design);
    CHECK(std::distance(solved.begin(), solved.end()) == 1);
}
