#include <cmath>

#include "backspring/grind/grind_table.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

double largest_pull(const Check& check) {
    double largest = 0.0;
    for (const auto& stroke : check.strokes) largest = std::max(largest, *stroke.peak_pull_n);
    return largest;
}

}  // namespace

TEST_CASE("each row is the check of the ground design", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        for (const GrindFace face : designs::kGrindFaces) {
            for (const GrindRow& row : grind_table(design, {face, 0.25, {}}, 0.1)) {
                CAPTURE(name, static_cast<int>(face), row.removed_mm);
                const Check fresh = check(grind(design, {face, row.removed_mm, {}}));
                CHECK(*row.peak_pull_n == largest_pull(fresh));
                CHECK(row.travel_peak_stress_mpa == fresh.travel.peak_stress_mpa);
                CHECK(row.yield_margin == fresh.travel.yield_margin);
                CHECK(row.stiffness_n_per_mm == fresh.stiffness_n_per_mm);
                CHECK(*row.reading_loaded_closed_mm == fresh.position("closed")->reading_loaded_mm);
                const Position* half_stop = fresh.position("half_stop");
                CHECK(row.reading_loaded_half_stop_mm.has_value() == (half_stop != nullptr));
            }
        }
    }
}

TEST_CASE("rows go from nothing to the full depth", "[shop][property]") {
    const auto depths = [](double to, double step) {
        std::vector<double> all;
        for (const GrindRow& row : grind_table(designs::heron(), {GrindFace::back, to, {}}, step)) {
            all.push_back(row.removed_mm);
        }
        return all;
    };
    CHECK(depths(0.25, 0.1) == std::vector{0.0, 0.1, 0.2, 0.25});
    CHECK(depths(0.3, 0.1) == std::vector{0.0, 0.1, 0.2, 0.3});
    CHECK(depths(0.0, 0.1) == std::vector{0.0});
    CHECK(depths(0.1, 0.5) == std::vector{0.0, 0.1});
}

TEST_CASE("every pass takes pull away", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        for (const GrindFace face : designs::kGrindFaces) {
            const auto rows = grind_table(design, {face, 0.36, {}}, 0.02);
            for (std::size_t i = 1; i < rows.size(); ++i) {
                CAPTURE(name, static_cast<int>(face), rows[i].removed_mm);
                CHECK(*rows[i].peak_pull_n < *rows[i - 1].peak_pull_n);
                CHECK(rows[i].stiffness_n_per_mm < rows[i - 1].stiffness_n_per_mm);
            }
        }
    }
}

TEST_CASE("steel ahead of every contact does nothing", "[shop][property]") {
    Design design = designs::heron();
    design.own().pad.end_mm = design.spring.thickness.back().x_mm = 45.0;
    const GrindRow was = grind_row(design, 0.0);
    const GrindRow is =
        grind_row(grind(design, {GrindFace::back, 0.5, GrindRegion{40.0, 45.0}}), 0.5);
    CHECK_THAT(*is.peak_pull_n, WithinRel(*was.peak_pull_n, 1e-12));
    CHECK_THAT(is.travel_peak_stress_mpa, WithinRel(was.travel_peak_stress_mpa, 1e-12));
}

TEST_CASE("without a nail nick a row has torque only", "[shop][property]") {
    Design design = designs::heron();
    const GrindRow with = grind_row(design, 0.0);
    design.own().blade.nail_nick_mm.reset();
    const GrindRow without = grind_row(design, 0.0);
    CHECK_FALSE(without.peak_pull_n.has_value());
    CHECK_THAT(*without.peak_torque_nmm / 35.0, WithinRel(*with.peak_pull_n, 1e-14));
}

TEST_CASE("passes are counted up, and rounding is no pass", "[shop][property]") {
    CHECK(grind_passes(0.3, 0.1) == 3);
    CHECK(grind_passes(0.31, 0.1) == 4);
    CHECK(grind_passes(0.0, 0.1) == 0);
    CHECK(grind_passes(0.05, 0.1) == 1);
}

TEST_CASE("a table that cannot be made is refused", "[shop][abuse]") {
    const Cut cut{GrindFace::back, 0.3, {}};
    for (const double step : {0.0, -0.1, std::nan(""), 1e-9}) {
        CHECK_THROWS_AS(grind_table(designs::heron(), cut, step), InvalidInput);
        CHECK_THROWS_AS(grind_passes(0.3, step), InvalidInput);
    }
    CHECK_THROWS_AS(grind_table(designs::heron(), {GrindFace::back, 2.0, {}}, 0.1), InvalidInput);
    CHECK_THROWS_AS(grind_passes(-0.3, 0.1), InvalidInput);
}
