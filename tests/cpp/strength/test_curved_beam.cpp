#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/strength/curved_beam.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("bending of a curved section leaves no force", "[strength][property]") {
    // Simpson over M (r_n - r)/(A shift r): force 0, moment M.
    const CurvedSection section = make_curved_section(2.3, 3.0, 6.0);
    const int parts = 400;
    double force = 0.0, moment = 0.0;
    for (int i = 0; i <= parts; ++i) {
        const double r = section.inner_radius_mm + section.thickness_mm * i / parts;
        const double weight = (i == 0 || i == parts ? 1.0 : (i % 2 ? 4.0 : 2.0)) / 3.0;
        const double stress = 1000.0 * (section.neutral_radius_mm - r) /
                              (section.width_mm * section.thickness_mm * section.shift_mm * r);
        const double strip = weight * section.width_mm * section.thickness_mm / parts;
        force += strip * stress;
        moment += strip * stress * (section.centroid_radius_mm - r);
    }
    CHECK_THAT(force, WithinAbs(0.0, 1e-7));
    CHECK_THAT(moment, WithinRel(1000.0, 1e-9));
    const CurvedStress stress = curved_stress(section, 1000.0);
    const double area_shift = section.width_mm * section.thickness_mm * section.shift_mm;
    CHECK_THAT(stress.inner_mpa,
               WithinRel(1000.0 * (section.neutral_radius_mm - 6.0) / (area_shift * 6.0), 1e-12));
    CHECK_THAT(stress.outer_mpa,
               WithinRel(1000.0 * (section.neutral_radius_mm - 9.0) / (area_shift * 9.0), 1e-12));
}

TEST_CASE("a slight curvature ends in the straight beam", "[strength][closed form]") {
    // To first order 1 +- t/(3 r), derived; no digits may be lost on the way.
    for (const double radius : {1e3, 1e5, 1e7}) {
        const CurvatureFactors factors = curvature_factors(3.0, radius);
        CAPTURE(radius);
        CHECK_THAT((factors.inner - 1.0) * radius, WithinRel(1.0, 3.0 / radius + 1e-8));
        CHECK_THAT((1.0 - factors.outer) * radius, WithinRel(1.0, 3.0 / radius + 1e-8));
    }
}

TEST_CASE("the two forms of the shift meet", "[strength][property]") {
    // The change is at a thickness of 0.02 of the centroid's radius.
    const double below = make_curved_section(1.0, 0.02 * (1.0 - 1e-9), 1.0 - 0.01).shift_mm;
    const double above = make_curved_section(1.0, 0.02 * (1.0 + 1e-9), 1.0 - 0.01).shift_mm;
    CHECK_THAT(below, WithinRel(above, 1e-8));
}

TEST_CASE("the hollow face carries more the tighter the bend", "[strength][property]") {
    double inner = 1.0, outer = 1.0;
    for (const double radius : {100.0, 30.0, 10.0, 5.0, 2.0, 1.0}) {
        const CurvatureFactors factors = curvature_factors(3.0, radius);
        CAPTURE(radius);
        CHECK(factors.inner > inner);
        CHECK(factors.outer < outer);
        CHECK(factors.outer > 0.0);
        inner = factors.inner;
        outer = factors.outer;
    }
}

TEST_CASE("a pull adds evenly", "[strength][property]") {
    const CurvedSection section = make_curved_section(2.0, 3.0, 10.0);
    const CurvedStress bent = curved_stress(section, 500.0);
    const CurvedStress pulled = curved_stress(section, 500.0, 60.0);
    CHECK_THAT(pulled.inner_mpa - bent.inner_mpa, WithinRel(10.0, 1e-12));
    CHECK_THAT(pulled.outer_mpa - bent.outer_mpa, WithinRel(10.0, 1e-12));
}

TEST_CASE("every broken rule of a curved section is told at once", "[strength][rules]") {
    try {
        (void)make_curved_section(0.0, -1.0, std::numeric_limits<double>::quiet_NaN());
        FAIL("accepted");
    } catch (const InvalidInput& error) {
        CHECK(error.faults().size() == 3);
    }
}
