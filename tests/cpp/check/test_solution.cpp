#include <algorithm>
#include <type_traits>

#include "backspring/check/check.hpp"
#include "catch.hpp"
#include "wild_changes.hpp"

using namespace backspring;

namespace {

constexpr int kRows = 40;

/// Calls with wild designs that keep to every rule: the same ones every time.
template <class See>
void each_wild_design(See see) {
    unsigned start = 100;
    for (const auto& [name, design] : designs::all()) {
        const auto changes = designs::wild_changes(design, start++, kRows);
        for (Eigen::Index row = 0; row < kRows; ++row) {
            const Design wild = designs::row_of(design, changes, row);
            CAPTURE(name, row);
            if (faults(wild).empty()) see(wild);
        }
    }
}

bool same_bits(const Stroke& a, const Stroke& b) {
    return a.peak_torque_nmm == b.peak_torque_nmm && a.crest_angle_deg == b.crest_angle_deg &&
           a.snap_energy_mj == b.snap_energy_mj &&
           a.closing_peak_torque_nmm == b.closing_peak_torque_nmm;
}

}  // namespace

static_assert(!std::is_constructible_v<Solution, Design&&>, "a solution holds no design");

TEST_CASE("no angle of the travel is worse than the worst", "[solution][property]") {
    // A smooth peak is found to rounding; so is a cusp, whose place is found to 1e-10 deg.
    constexpr double found = 1.0 + 1e-9;
    each_wild_design([&](const Design& design) {
        Solution solution(design);
        const Action& action = solution.action();
        const double from = angle_of(solution.travel().all().front());
        const double stress = solution.most_stressed().peak.stress_mpa * found;
        const double force = solution.strongest().value * found;
        std::vector<Step> steps = sweep(action, from, 180.0, 0.5);
        for (const Step& step : steps) {
            CHECK(step.peak.stress_mpa <= stress);
            CHECK(step.turn.contact.force_n <= force);
        }
        for (LazyStroke& way : solution.ways()) {
            const double opening = way.opening_peak().opening_nmm();
            for (const Step& step : steps) {
                const double angle = step.turn.contact.blade_angle_deg;
                if (angle < angle_of(&way.from()) || angle > angle_of(&way.to())) continue;
                CHECK(step.turn.opening_nmm() <= opening + 1e-9 * std::abs(opening) + 1e-9);
            }
        }
    });
}

TEST_CASE("a solution says the same whatever it is asked first", "[solution][property]") {
    each_wild_design([](const Design& design) {
        Solution forward(design), backward(design);
        static_cast<void>(forward.travel());
        const auto first = forward.strokes();
        const double worst = forward.most_stressed().peak.stress_mpa;
        const auto pull = peak_torque_nmm(forward);

        CHECK(backward.most_stressed().peak.stress_mpa == worst);
        for (auto way = backward.ways().rbegin(); way != backward.ways().rend(); ++way) {
            if (way->has_crest()) CHECK(way->snap_energy_mj() >= 0.0);
        }
        CHECK(peak_torque_nmm(backward) == pull);
        CHECK(std::equal(first.begin(), first.end(), backward.strokes().begin(),
                         backward.strokes().end(), same_bits));
    });
}

TEST_CASE("a travel is told by few turns", "[solution]") {
    const Design design = designs::heron();
    Solution solution(design);
    CHECK(solution.travel().all().size() < 90);
}

TEST_CASE("peaks are the same wherever the look begins", "[solution][convergence]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        Solution solution(design);
        const auto stress = [&](const Turn& turn) {
            return peak_stress(solution.action(), turn.contact).stress_mpa;
        };
        const auto opening = [](const Turn& turn) { return turn.opening_nmm(); };
        const double from = angle_of(solution.travel().all().front());
        const Turns other(solution.action(), {from, 31.7, 33.1, 77.0, 133.3, 180.0});
        CHECK_THAT(*peak_torque_nmm(solution), WithinRel(opening(largest(other, opening)), 1e-9));
        CHECK_THAT(solution.most_stressed().peak.stress_mpa,
                   WithinRel(stress(largest(other, stress)), 1e-9));
    }
}

TEST_CASE("a broken design has no solution", "[solution][abuse]") {
    Design design = designs::heron();
    design.spring.width_mm = -1.0;
    CHECK_THROWS_AS(Solution(design), InvalidInput);
}
