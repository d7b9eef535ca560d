#include <cmath>
#include <vector>

#include "backspring/core/error.hpp"
#include "backspring/design/dimension.hpp"
#include "backspring/sensitivity/gradient.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "figures_of.hpp"
#include "full_round.hpp"

using namespace backspring;

namespace {

double scale_of(double value) { return std::max(1.0, std::abs(value)); }

/// Central differences of all results by one number.
std::map<std::string, double> differences(const Design& design, const std::string& key) {
    const double value = *dimension_value(design, key), step = 1e-4 * scale_of(value);
    auto high = figures_of(with_dimension(design, key, value + step));
    for (const auto& [name, low] : figures_of(with_dimension(design, key, value - step))) {
        high[name] = (high[name] - low) / (2.0 * step);
    }
    return high;
}

Design with_corners(const Design& design, double open, double closed) {
    Design changed = design;
    changed.own().tang.corner_open_mm = open;
    changed.own().tang.corner_closed_mm = closed;
    return changed;
}

}  // namespace

TEST_CASE("the gradient is that of whole checks", "[shop][property]") {
    // Against central differences of check(), to 1e-5 of the largest entry of the row; entries are
    // made alike by the size of the number they belong to.
    const auto& [name, design] = GENERATE(from_range(designs::all()));
    CAPTURE(name);
    const Gradient result = gradient(design);
    std::vector<std::map<std::string, double>> columns;
    std::vector<double> scales;
    for (const std::string& key : result.dimensions) {
        if (key.starts_with("tang.corner_") && key != "tang.corner_radius") continue;
        scales.push_back(scale_of(*dimension_value(design, key)));
        columns.push_back(differences(design, key));
    }
    for (std::size_t i = 0; i < result.figures.size(); ++i) {
        const std::string& figure = result.figures[i];
        CAPTURE(figure);
        double largest = 0.0;
        for (std::size_t j = 0; j < columns.size(); ++j) {
            largest = std::max(largest, std::abs(columns[j].at(figure)) * scales[j]);
        }
        for (std::size_t j = 0; j < columns.size(); ++j) {
            CAPTURE(result.dimensions[j]);
            const double own = result.of(figure, result.dimensions[j]);
            CHECK(std::abs(own - columns[j].at(figure)) * scales[j] <= 1e-5 * largest);
        }
    }
}

TEST_CASE("the gradient's values are those of the check", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Gradient result = gradient(design);
        auto checked = figures_of(design);
        CHECK(result.figures.size() == checked.size());
        for (std::size_t i = 0; i < result.figures.size(); ++i) {
            CHECK_THAT(result.value[static_cast<Eigen::Index>(i)],
                       WithinRel(checked.at(result.figures[i]), 1e-9));
        }
    }
}

TEST_CASE("one corner alone has its own derivative", "[shop][property]") {
    const Design design = designs::heron();
    const Gradient result = gradient(design);
    const double step = 1e-4;
    const double open = (figures_of(with_corners(design, 0.7 + step, 0.7))["peak_pull_n"] -
                         figures_of(with_corners(design, 0.7 - step, 0.7))["peak_pull_n"]) /
                        (2.0 * step);
    CHECK_THAT(result.of("peak_pull_n", "tang.corner_open"), WithinAbs(open, 1e-5));
    for (const std::string& figure : result.figures) {
        const double both =
            result.of(figure, "tang.corner_open") + result.of(figure, "tang.corner_closed");
        CHECK_THAT(both, WithinAbs(result.of(figure, "tang.corner_radius"), 1e-6));
    }
}

TEST_CASE("what is proportional has its closed form", "[shop][closed form]") {
    // Stiffness is proportional to width and modulus; stress at a given shape to modulus.
    const Design design = designs::dunlin();
    const Gradient result = gradient(design);
    const double stiffness = figures_of(design)["stiffness_n_per_mm"];
    const double stress = figures_of(design)["travel_peak_stress_mpa"];
    CHECK_THAT(result.of("stiffness_n_per_mm", "spring.width"), WithinRel(stiffness / 2.3, 1e-8));
    CHECK_THAT(result.of("stiffness_n_per_mm", "spring.youngs_modulus"),
               WithinRel(stiffness / 205000.0, 1e-8));
    CHECK_THAT(result.of("travel_peak_stress_mpa", "spring.youngs_modulus"),
               WithinRel(stress / 205000.0, 1e-8));
    CHECK_THAT(result.of("travel_peak_stress_mpa", "spring.width"), WithinAbs(0.0, 1e-5));
    CHECK_THAT(result.of("reading_loaded_closed_mm", "spring.width"), WithinAbs(0.0, 1e-10));
}

TEST_CASE("with the rear pin out the spring's measures mean nothing", "[shop][property]") {
    const Gradient result = gradient(designs::heron());
    for (const char* key : {"spring.width", "spring.thickness_scale", "fit.preload"}) {
        CHECK(result.of("reading_unloaded_closed_mm", key) == 0.0);
    }
}

TEST_CASE("an open face that ends with the pad is read as one that ends before it", "[gradient]") {
    // The spring lies flat on the face, and which of its places is said to bear changes nothing.
    Design design = designs::heron();
    const Gradient before = gradient(design);
    design.own().tang.front_mm = design.own().pad.end_mm - design.own().tang.pivot_mm;
    const Gradient result = gradient(design);
    for (const char* figure : {"reading_unloaded_half_stop_mm", "reading_unloaded_closed_mm"}) {
        for (const std::string& key : result.dimensions) {
            CAPTURE(figure, key);
            CHECK_THAT(result.of(figure, key), WithinAbs(before.of(figure, key), 1e-9));
        }
    }
}

TEST_CASE("what a design does not have is left out", "[shop][property]") {
    Design design = designs::wren();
    design.own().blade.nail_nick_mm.reset();
    const Gradient result = gradient(design);
    CHECK_THROWS_AS(result.of("peak_pull_n", "fit.preload"), OutOfRange);
    CHECK_THROWS_AS(result.of("reading_loaded_half_stop_mm", "fit.preload"), OutOfRange);
    CHECK_THROWS_AS(result.of("peak_torque_nmm", "tang.half_stop"), OutOfRange);
    design.own().fit.preload_mm = -1.0;
    CHECK_THROWS_AS(gradient(design), InvalidInput);
}

namespace {}  // namespace

TEST_CASE("at a corner of the torque curve both sides are those of whole checks",
          "[gradient][property]") {
    const Design design = full_round();
    const Gradient result = gradient(design);
    const double here = figures_of(design).at("peak_torque_nmm"), step = 1e-4;
    for (const char* key : {"tang.closed", "tang.open", "fit.preload", "spring.thickness_offset"}) {
        CAPTURE(key);
        const double value = dimension_value(design, key).value();
        const auto there = [&](double by) {
            return figures_of(with_dimension(design, key, value + by)).at("peak_torque_nmm");
        };
        const SidedRates sides = result.sides("peak_torque_nmm", key);
        // Differences err by the curvature times the step.
        CHECK_THAT(sides.below.value(), WithinRel((here - there(-step)) / step, 2e-3));
        CHECK_THAT(sides.above.value(), WithinRel((there(step) - here) / step, 2e-3));
        CHECK_THAT(result.of("peak_torque_nmm", key), WithinRel(sides.above.value(), 2e-3));
    }
}

TEST_CASE("where the sides differ there is no derivative, and both are told", "[gradient]") {
    // No friction can be taken away from none.
    Design design = designs::heron();
    design.friction.spring = design.friction.pivot = 0.0;
    const Gradient result = gradient(design);
    CHECK_FALSE(result.find("peak_torque_nmm", "friction.offset"));
    CHECK_THROWS_AS(result.of("peak_torque_nmm", "friction.offset"), OutOfRange);
    const SidedRates offset = result.sides("peak_torque_nmm", "friction.offset");
    CHECK(offset.below.value() == 0.0);
    const SidedRates spring = result.sides("peak_torque_nmm", "friction.spring");
    const SidedRates pivot = result.sides("peak_torque_nmm", "friction.pivot");
    CHECK_FALSE(spring.below);
    CHECK(result.of("peak_torque_nmm", "friction.spring") == spring.above.value());
    CHECK_THAT(offset.above.value(), WithinRel(spring.above.value() + pivot.above.value(), 1e-4));
}

TEST_CASE("a smooth result has the same derivative to either side", "[gradient][property]") {
    const Gradient result = gradient(designs::heron());
    CHECK((result.below == result.derivative).all());
    CHECK((result.above == result.derivative).all());
}
