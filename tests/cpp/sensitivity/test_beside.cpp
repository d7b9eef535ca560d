#include <cmath>

#include "backspring/check/case_solutions.hpp"
#include "backspring/design/dimension.hpp"
#include "backspring/sensitivity/gradient.hpp"
#include "backspring/sensitivity/influence.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

/// The second blade bears on nothing while the first one is turned: the first is as if alone.
Design loose_pen() {
    Design design = designs::bunting(SupportKind::two_pins);
    design.blades[1].fit.preload_mm = 0.0;
    design.blades[1].tang.closed_mm = design.blades[1].tang.open_mm - 0.1;
    return design;
}

Design alone(Design design) {
    design.blades.resize(1);
    return design;
}

double torque_nmm(const Design& design) {
    CaseSolutions solved(design);
    return peak_torque_nmm(solved).value();
}

/// A change per pass and mm of length, over the whole length.
double whole(const Influence& along, const std::string& name) {
    const Eigen::ArrayXd row = along.of(name);
    double sum = 0.0;
    for (Eigen::Index i = 0; i < row.size(); ++i) {
        const double from = along.station_mm[std::max(i - 1, Eigen::Index{0})];
        const double to = along.station_mm[std::min(i + 1, row.size() - 1)];
        sum += 0.5 * (to - from) * row[i];
    }
    return sum;
}

}  // namespace

TEST_CASE("beside a blade out of touch the gradient is the exact one", "[gradient][blades]") {
    const Design design = loose_pen();
    const Gradient beside = gradient(design), exact = gradient(alone(design));
    for (std::size_t i = 0; i < exact.figures.size(); ++i) {
        // Stiffness takes the other tang to bear where it does not.
        if (exact.figures[i] == "stiffness_n_per_mm") continue;
        const auto row = static_cast<Eigen::Index>(i);
        for (std::size_t j = 0; j < exact.dimensions.size(); ++j) {
            const double wanted = exact.derivative(row, static_cast<Eigen::Index>(j));
            CAPTURE(exact.figures[i], exact.dimensions[j]);
            const double scale = 1e-5 * std::abs(exact.value[row]);
            CHECK_THAT(beside.of(exact.figures[i], exact.dimensions[j]),
                       WithinRel(wanted, 1e-5) || WithinAbs(wanted, scale));
        }
        for (const char* key : {"blades.pen.tang.closed", "blades.pen.fit.dial"}) {
            CHECK_THAT(beside.of(exact.figures[i], key), WithinAbs(0.0, 1e-7));
        }
    }
}

TEST_CASE("beside other blades a derivative is that of either side", "[gradient][blades]") {
    const Design design = designs::bunting(SupportKind::clamped);
    const Gradient slopes = gradient(design);
    const double here = torque_nmm(design);
    for (const char* key : {"fit.preload", "tang.closed", "spring.width", "blades.pen.tang.closed",
                            "blades.pen.fit.preload", "spring.thickness_scale"}) {
        const double value = dimension_value(design, key).value();
        for (const double h : {-1e-4, 1e-4}) {
            const double there = torque_nmm(with_dimension(design, key, value + h));
            CAPTURE(key, h);
            CHECK_THAT((there - here) / h,
                       WithinRel(slopes.of("peak_torque_nmm", key), 5e-3) || WithinAbs(0.0, 1e-6));
        }
    }
    CHECK(slopes.of("peak_torque_nmm", "blades.pen.fit.preload") != 0.0);
}

TEST_CASE("beside a blade out of touch the influence is the exact one", "[influence][blades]") {
    const Design design = loose_pen();
    for (const GrindFace face : {GrindFace::back, GrindFace::belly}) {
        const Influence exact = influence(alone(design), face, 1.0);
        // Stations of both from the far pad on: those behind the rear pin count for nothing.
        const Influence beside = influence(design, face, 1.0);
        for (const std::string& name : exact.figures) {
            const Eigen::ArrayXd a = exact.of(name), b = beside.of(name);
            // The worst place's own share is a step; stiffness takes the other tang to bear.
            if (name.find("stress") != std::string::npos || name == "yield_margin") continue;
            if (name == "stiffness_n_per_mm") continue;
            CAPTURE(static_cast<int>(face), name);
            CHECK_THAT(whole(beside, name),
                       WithinRel(whole(exact, name), 2e-3) || WithinAbs(0.0, 1e-9));
            CHECK(std::abs(b[0]) <= 1e-6 * a.abs().maxCoeff() + 1e-9);
        }
    }
}

TEST_CASE("a pass over both ends is the sum of its stations", "[influence][blades]") {
    for (const SupportKind kind : {SupportKind::two_pins, SupportKind::clamped}) {
        const Design design = designs::bunting(kind);
        const Influence along = influence(design, GrindFace::back, 1.0);
        CHECK(along.station_mm[0] == whole_face(design, GrindFace::back).from_mm);
        const double pass = 1e-3;
        const Design ground = grind(design, {GrindFace::back, pass, {}});
        const double change = torque_nmm(ground) - torque_nmm(design);
        const Eigen::ArrayXd row = along.of("peak_torque_nmm");
        CHECK_THAT(whole(along, "peak_torque_nmm") * pass / 0.1, WithinRel(change, 2e-3));
        CHECK((row.head(15) != 0.0).any());
    }
}
