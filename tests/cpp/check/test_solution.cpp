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

/// The strokes from all turns of the travel: nothing is left out of the search.
std::vector<Stroke> strokes_of_all_turns(Solution& solution) {
    std::vector<Stroke> strokes;
    const Rests& rests = solution.rests();
    if (!rests.closed || rests.open.torque_nmm >= 0.0) return strokes;
    const auto add = [&](const Contact& from, const Contact& to) {
        const auto stroke = make_stroke(solution.action(), solution.steps(), from, to);
        if (stroke) strokes.push_back(*stroke);
    };
    add(*rests.closed, rests.half_stop ? *rests.half_stop : rests.open);
    if (rests.half_stop) add(*rests.half_stop, rests.open);
    return strokes;
}

bool same_bits(const Stroke& a, const Stroke& b) {
    return a.peak_torque_nmm == b.peak_torque_nmm && a.crest_angle_deg == b.crest_angle_deg &&
           a.snap_energy_mj == b.snap_energy_mj &&
           a.closing_peak_torque_nmm == b.closing_peak_torque_nmm;
}

}  // namespace

static_assert(!std::is_constructible_v<Solution, Design&&>, "a solution holds no design");

TEST_CASE("strokes from a few turns are those from all of them", "[solution][property]") {
    int strokes = 0;
    each_wild_design([&](const Design& design) {
        Solution few(design), all(design);
        const auto wanted = strokes_of_all_turns(all);
        REQUIRE(few.strokes().size() == wanted.size());
        for (std::size_t i = 0; i < wanted.size(); ++i, ++strokes) {
            const Stroke &got = few.strokes()[i], &full = wanted[i];
            CHECK_THAT(got.peak_torque_nmm, WithinRel(full.peak_torque_nmm, 1e-6));
            CHECK_THAT(got.closing_peak_torque_nmm, WithinRel(full.closing_peak_torque_nmm, 1e-6));
            CHECK_THAT(got.crest_angle_deg, WithinAbs(full.crest_angle_deg, 1e-6));
            CHECK_THAT(got.energy_up_mj, WithinRel(full.energy_up_mj, 1e-6));
            CHECK_THAT(got.snap_energy_mj,
                       WithinRel(full.snap_energy_mj, 1e-6) || WithinAbs(0.0, 1e-6));
        }
    });
    CHECK(strokes > 200);
}

TEST_CASE("no turn of the travel is worse than the worst", "[solution][property]") {
    each_wild_design([&](const Design& design) {
        Solution solution(design);
        // At a cusp the peak is found to about 1e-3 deg, which leaves 5e-5 of it.
        const double stress = solution.most_stressed().peak.stress_mpa * (1.0 + 5e-5);
        const double force = solution.strongest().force_n * (1.0 + 5e-5);
        for (const Step& step :
             sweep(solution.action(), solution.travel().angle_deg(0), 180, 0.5)) {
            CHECK(step.peak.stress_mpa <= stress);
            CHECK(step.turn.contact.force_n <= force);
        }
    });
}

TEST_CASE("a solution says the same whatever it is asked first", "[solution][property]") {
    each_wild_design([](const Design& design) {
        Solution forward(design), backward(design);
        static_cast<void>(forward.steps());
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

TEST_CASE("a pull is worked out from less than half of the travel", "[solution]") {
    const Design design = designs::heron();
    Solution solution(design);
    int worked = 0;
    const auto counted = [&](double angle) {
        ++worked;
        return turn_at(solution.action(), angle);
    };
    Turns travel(counted, design.own().pad, solution.rests().closed->blade_angle_deg, 1.0);
    REQUIRE(travel.count() > 170);
    const int top = top_of(travel, [](const Turn& turn) { return turn.contact.force_n; });
    CHECK(worked < travel.count() / 2);
    const int before = worked;
    CHECK(travel[top].contact.force_n > 0.0);
    CHECK(worked == before);
}

TEST_CASE("a finer grid finds the same peaks", "[solution][convergence]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        Solution coarse(design, 2.0), fine(design, 0.1);
        CHECK_THAT(*peak_torque_nmm(coarse), WithinRel(*peak_torque_nmm(fine), 5e-5));
        CHECK_THAT(coarse.most_stressed().peak.stress_mpa,
                   WithinRel(fine.most_stressed().peak.stress_mpa, 5e-5));
    }
}

TEST_CASE("a broken design has no solution", "[solution][abuse]") {
    Design design = designs::heron();
    CHECK_THROWS_AS(Solution(design, 0.01), InvalidInput);
    design.spring.width_mm = -1.0;
    CHECK_THROWS_AS(Solution(design), InvalidInput);
}
