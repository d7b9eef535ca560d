#include <algorithm>
#include <cmath>
#include <vector>

#include "backspring/spring/bending.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

/// Largest stress at stations a hundredth of a millimetre apart.
double sampled_peak(const Spring& spring, const std::vector<Load>& loads) {
    double peak = 0.0;
    for (int i = -3800; i <= 3650; ++i) {
        const FibreStress stress = fibre_stress(spring, loads, 0.01 * i);
        peak = std::max({peak, std::abs(stress.back_mpa), std::abs(stress.belly_mpa)});
    }
    return peak;
}

}  // namespace

TEST_CASE("a blunt taper is worst stressed at its root", "[spring][closed form]") {
    Spring spring = designs::dunlin().spring;
    spring.width_mm = 2.5;
    spring.thickness = {{0.0, 4.0}, {40.0, 2.0}};
    const std::vector<Load> load{{40.0, 20.0}};
    const PeakStress peak = peak_stress(make_stress_probe(spring), load);
    CHECK_THAT(peak.stress_mpa, WithinRel(120.0, 1e-12));
    CHECK(peak.station_mm == 0.0);
}

TEST_CASE("a sharp taper is worst stressed where it is twice its tip", "[spring][closed form]") {
    // 1.5 P L / [b h_tip (h_root - h_tip)], n/(1 - n) of the length from the tip.
    Spring spring = designs::dunlin().spring;
    spring.width_mm = 2.5;
    spring.thickness = {{0.0, 4.0}, {40.0, 1.0}};
    const std::vector<Load> load{{40.0, 20.0}};
    const PeakStress peak = peak_stress(make_stress_probe(spring), load);
    CHECK_THAT(peak.stress_mpa, WithinRel(160.0, 1e-12));
    CHECK_THAT(peak.station_mm, WithinRel(40.0 - 40.0 / 3.0, 1e-12));
}

TEST_CASE("a leaning taper is stressed as one that is thinner by its cosine",
          "[spring][closed form]") {
    // Leaning by 1 in 2 it is thinner across by the cosine, whose square is 4/5: 160/0.8, at the
    // same station.
    Spring spring = designs::dunlin().spring;
    spring.width_mm = 2.5;
    spring.thickness = {{0.0, 4.0}, {40.0, 1.0}};
    spring.mid_line = {{0.0, 20.0}, {40.0, 0.0}};
    const std::vector<Load> load{{40.0, 20.0}};
    const PeakStress peak = peak_stress(make_stress_probe(spring), load);
    CHECK_THAT(peak.stress_mpa, WithinRel(200.0, 1e-12));
    CHECK_THAT(peak.station_mm, WithinRel(40.0 - 40.0 / 3.0, 1e-12));
}

TEST_CASE("no station anywhere is stressed more than the peak", "[spring][oracle]") {
    const std::vector<Load> loads =
        GENERATE(std::vector<Load>{{29.0, 80.0}}, std::vector<Load>{{35.0, 80.0}},
                 std::vector<Load>{{24.0, 60.0}, {33.0, 30.0}},
                 std::vector<Load>{{22.0, 90.0}, {36.0, 5.0}});
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name, loads.front().x_mm);
        const double peak = peak_stress(make_stress_probe(design.spring), loads).stress_mpa;
        const double sampled = sampled_peak(design.spring, loads);
        // Across holes the peak is taken from close stations, within 0.02 %; sampling a taper
        // every 0.01 mm misses less.
        CHECK(peak >= sampled * (1.0 - 2e-4));
        CHECK(peak <= sampled * (1.0 + 2e-4));
    }
}

TEST_CASE("the peak is the stress at the station it names", "[spring][property]") {
    const std::vector<Load> loads{{24.0, 60.0}, {33.0, 30.0}};
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const PeakStress peak = peak_stress(make_stress_probe(design.spring), loads);
        // At a step the thin side counts, which lies just ahead.
        const FibreStress at = fibre_stress(design.spring, loads, peak.station_mm);
        CHECK_THAT(std::max(std::abs(at.back_mpa), std::abs(at.belly_mpa)),
                   WithinRel(peak.stress_mpa, 1e-9));
    }
}

TEST_CASE("a weak rear span is found behind the middle pin", "[spring][property]") {
    Spring spring = designs::heron().spring;
    spring.thickness[0].thickness_mm = 1.5;
    spring.thickness[1].thickness_mm = 1.5;
    spring.holes.clear();
    const std::vector<Load> load{{32.0, 60.0}};
    const PeakStress peak = peak_stress(make_stress_probe(spring), load);
    CHECK(peak.station_mm < 0.0);
    CHECK_THAT(peak.stress_mpa, WithinRel(sampled_peak(spring, load), 1e-4));
}

TEST_CASE("without a load there is no stress", "[spring][abuse]") {
    const StressProbe probe = make_stress_probe(designs::heron().spring);
    CHECK(peak_stress(probe, {}).stress_mpa == 0.0);
    const std::vector<Load> nothing{{30.0, 0.0}};
    CHECK(peak_stress(probe, nothing).stress_mpa == 0.0);
}
