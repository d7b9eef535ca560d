#include <cmath>
#include <limits>

#include "backspring/check/bounds.hpp"
#include "backspring/check/check.hpp"
#include "backspring/fit/fit_model.hpp"
#include "backspring/many/batch.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

/// Large pattern whose kick meets the spring far ahead: with the rear pin out its nose holds the
/// spring before the face does.
Design far_kick() {
    Design design = designs::heron();
    design.spring.thickness = {{-46.0, 4.0}, {-5.0, 5.0}, {5.0, 4.9}, {33.0, 3.1}, {51.5, 3.0}};
    design.spring.width_mm = 3.0;
    design.spring.support.rear_pin_mm = 40.0;
    design.spring.holes = {{-40.0, 2.0, 0.0, HoleFor::rear_pin},
                           {0.0, 2.5, 0.0, HoleFor::middle_pin}};
    design.own().pad = {34.5, 51.5};
    design.own().tang = {.pivot_mm = 47.0,
                         .open_mm = 5.5,
                         .half_stop_mm = 5.58,
                         .closed_mm = 5.5,
                         .corner_open_mm = 0.9,
                         .corner_closed_mm = 0.8,
                         .front_mm = 6.0,
                         .round_end_mm = std::nullopt,
                         .kick = Kick{.distance_mm = 7.4, .height_mm = 0.3, .radius_mm = 0.6}};
    design.own().fit = {.preload_mm = 1.0, .dial_mm = 47.0};
    return design;
}

/// A moderate kick that holds the blade from closing.
Design high_kick() {
    Design design = designs::plover();
    design.own().tang.closed_mm = 4.67;
    design.own().tang.kick = Kick{.distance_mm = 5.0, .height_mm = 0.94, .radius_mm = 0.35};
    return design;
}

Design no_width() {
    Design design = designs::heron();
    design.spring.width_mm = 5e-324;
    return design;
}

bool says_so(const Check& check) { return !check.impossible.empty(); }

/// Every number of a check that is given is possible; one that is not given is told of.
void require_possible(const Design& design, const Check& check) {
    const auto hold = [&](ResultKind kind, double value) {
        CHECK((is_possible(design, kind, value) || (std::isnan(value) && says_so(check))));
    };
    const auto maybe = [&](ResultKind kind, const std::optional<double>& value) {
        if (value) CHECK(is_possible(design, kind, *value));
    };
    for (const Position& each : check.positions) {
        hold(ResultKind::force, each.force_n);
        hold(ResultKind::energy, each.energy_mj);
        hold(ResultKind::stress, each.peak_stress_mpa);
        hold(ResultKind::reading, each.reading_loaded_mm);
        maybe(ResultKind::reading, each.reading_unloaded_mm);
    }
    for (const StrokeReport& each : check.strokes) {
        hold(ResultKind::effort, each.stroke.start_torque_nmm);
        hold(ResultKind::effort, each.stroke.peak_torque_nmm);
        hold(ResultKind::energy, each.stroke.snap_energy_mj);
        maybe(ResultKind::force, each.start_pull_n);
        maybe(ResultKind::force, each.peak_pull_n);
    }
    hold(ResultKind::stress, check.travel.peak_stress_mpa);
    hold(ResultKind::force, check.travel.peak_force_n);
    hold(ResultKind::stiffness, check.stiffness_n_per_mm);
    maybe(ResultKind::margin, check.travel.yield_margin);
    CHECK((!says_so(check) || check.verdict.empty()));
}

}  // namespace

TEST_CASE("what a result can be follows the design's own sizes", "[bounds]") {
    const Design heron = designs::heron();
    const auto possible = [&](ResultKind kind, double value) {
        return is_possible(heron, kind, value);
    };
    // From the steel behind the rear pin, station -38, to the spring's end at 36.5.
    CHECK(possible(ResultKind::reading, 74.0));
    CHECK_FALSE(possible(ResultKind::reading, -75.0));
    CHECK(possible(ResultKind::station, -38.0));
    CHECK_FALSE(possible(ResultKind::station, 37.0));
    // E b h: 205 000 x 2.3 x 3.8.
    CHECK(possible(ResultKind::force, 1.79e6));
    CHECK_FALSE(possible(ResultKind::force, 1.8e6));
    CHECK_FALSE(possible(ResultKind::force, -1.0));
    CHECK_FALSE(possible(ResultKind::effort, -1.0));
    CHECK(possible(ResultKind::torque, -1.0));
    CHECK_FALSE(possible(ResultKind::stress, 205001.0));
    for (const ResultKind kind :
         {ResultKind::force, ResultKind::torque, ResultKind::effort, ResultKind::energy,
          ResultKind::stress, ResultKind::stiffness, ResultKind::reading, ResultKind::station,
          ResultKind::angle, ResultKind::margin, ResultKind::speed}) {
        CHECK(possible(kind, kind == ResultKind::station ? 1.0 : 0.0));
        CHECK_FALSE(possible(kind, std::nan("")));
        CHECK_FALSE(possible(kind, kInfinite));
        CHECK_FALSE(if_possible(heron, kind, -kInfinite));
    }
}

TEST_CASE("ordinary designs are inside all bounds", "[bounds]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Check result = check(design);
        CHECK_FALSE(says_so(result));
        require_possible(design, result);
    }
}

TEST_CASE("no impossible number leaves a check", "[bounds][abuse]") {
    for (const Design& design : {far_kick(), high_kick(), no_width()}) {
        if (faults(design).empty()) require_possible(design, check(design));
    }
}

TEST_CASE("no impossible number leaves a batch with status ok", "[bounds][abuse]") {
    for (Design design : {far_kick(), high_kick(), no_width()}) {
        const double width = design.spring.width_mm;
        design.spring.width_mm = 3.0;
        const Batch batch =
            check_many(design, {{"spring.width", Eigen::ArrayXd::Constant(1, width)}});
        for (const BatchColumn& column : batch.columns) {
            CAPTURE(column.name, column.values[0]);
            CHECK_FALSE(std::isinf(column.values[0]));
            if (batch.status.front() != RowStatus::ok) continue;
            if (column.name.starts_with("reading")) CHECK(std::abs(column.values[0]) < 100.0);
            if (column.name.starts_with("force")) CHECK(column.values[0] >= 0.0);
        }
    }
}

TEST_CASE("an impossible reading is none in a fit", "[bounds][fit][abuse]") {
    const FitReadings shown = fit_readings(far_kick());
    for (const Readings& each : {shown.loaded, shown.unloaded}) {
        for (const auto& reading : {each.closed_mm, each.half_stop_mm}) {
            if (reading) CHECK(std::abs(*reading) < 100.0);
        }
    }
}
