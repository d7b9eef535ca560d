#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "backspring/core/error.hpp"
#include "backspring/strength/elastic_plastic.hpp"
#include "catch.hpp"

using namespace backspring;

namespace {

constexpr double kModulus = 200000.0, kYield = 1500.0, kWidth = 2.4;

PlasticSection section(double thickness, double chord = 0.0, double offset = 0.0) {
    return make_plastic_section(kWidth, thickness, kModulus, kYield, chord, offset);
}

/// Force and moment of a section cut into fibres, bent about an axis by a curvature.
struct Fibres {
    double force_n = 0.0;
    double moment_nmm = 0.0;
};

Fibres fibres(const PlasticSection& s, const SectionBend& bent) {
    constexpr int count = 100000;
    const double half = 0.5 * s.thickness_mm, gap = 0.5 * s.chord_mm;
    Fibres sum;
    const auto add = [&](double low, double high) {
        const double slice = (high - low) / count;
        for (int i = 0; i < count; ++i) {
            const double y = low + (i + 0.5) * slice;
            const double strain = bent.curvature_per_mm * (y - bent.neutral_mm);
            const double force = std::clamp(kModulus * strain, -kYield, kYield) * kWidth * slice;
            sum.force_n += force;
            sum.moment_nmm += force * y;
        }
    };
    add(-half, s.offset_mm - gap);
    add(s.offset_mm + gap, half);
    return sum;
}

}  // namespace

TEST_CASE("a rectangle bears half as much again before all of it yields",
          "[strength][closed form]") {
    const PlasticSection s = section(3.0);
    CHECK_THAT(s.yield_moment_nmm, WithinRel(kYield * kWidth * 9.0 / 6.0, 1e-14));
    CHECK_THAT(s.plastic_moment_nmm, WithinRel(1.5 * s.yield_moment_nmm, 1e-14));
}

TEST_CASE("below the yield moment a section answers elastically", "[strength][property]") {
    const PlasticSection s = section(3.0, 1.8, 0.2);
    const double moment = GENERATE(0.0, 100.0, 2000.0);
    REQUIRE(moment < s.yield_moment_nmm);
    CHECK_THAT(bend_section(s, moment).curvature_per_mm,
               WithinRel(moment / (kModulus * s.inertia_mm4), 1e-14));
    CHECK(residual_curvature_per_mm(s, moment) == 0.0);
    CHECK(residual_stress(s, moment).surface_mpa == 0.0);
    CHECK(yielded_depth_mm(s, moment) == 0.0);
}

TEST_CASE("the fibres of a bent section carry its moment and no force", "[strength][oracle]") {
    // Chord and offset: whole, on the mid-line, off it both ways, close to an outer face.
    const auto [chord, offset] =
        GENERATE(std::pair{0.0, 0.0}, std::pair{2.0, 0.0}, std::pair{0.6, 0.0}, std::pair{2.0, 0.4},
                 std::pair{1.0, -0.9}, std::pair{0.3, 1.6}, std::pair{2.97, 0.25},
                 std::pair{3.5, 3e-7}, std::pair{3.6, 0.05});
    const PlasticSection s = section(3.8, chord, offset);
    for (const double share : {0.002, 0.02, 0.3, 0.7, 0.95, 0.999}) {
        const double moment = std::lerp(s.yield_moment_nmm, s.plastic_moment_nmm, share);
        CAPTURE(chord, offset, share);
        const Fibres sum = fibres(s, bend_section(s, moment));
        CHECK_THAT(sum.moment_nmm, WithinRel(moment, 1e-8));
        CHECK_THAT(sum.force_n, WithinAbs(0.0, 1e-8 * kYield * kWidth * s.thickness_mm));
    }
}

TEST_CASE("a slot off the mid-line turns into one on it without a jump", "[strength][property]") {
    const PlasticSection on = section(3.8, 2.0), nearly = section(3.8, 2.0, 1e-7);
    for (const double share : {0.1, 0.5, 0.9}) {
        const double moment = std::lerp(on.yield_moment_nmm, nearly.plastic_moment_nmm, share);
        CAPTURE(share);
        CHECK_THAT(bend_section(nearly, moment).curvature_per_mm,
                   WithinRel(bend_section(on, moment).curvature_per_mm, 1e-5));
    }
}

TEST_CASE("beside the thickness a rounding of the hole's place changes nothing",
          "[strength][property]") {
    // An axis and a core that change with the square of the offset, as long as both ligaments
    // still bend; also in ligaments so thin that nothing but their outer fibres stays elastic.
    const double chord = GENERATE(0.4, 2.0, 3.0, 3.5);
    const double offset = GENERATE(1e-12, 1e-9, 3e-7, -3e-7);
    const PlasticSection on = section(3.8, chord), nearly = section(3.8, chord, offset);
    for (const double share : {0.01, 0.1, 0.3, 0.5, 0.7, 0.9}) {
        const double moment = std::lerp(on.yield_moment_nmm, on.plastic_moment_nmm, share);
        CAPTURE(chord, offset, share);
        const SectionBend expected = bend_section(on, moment), got = bend_section(nearly, moment);
        CHECK_THAT(got.curvature_per_mm, WithinRel(expected.curvature_per_mm, 1e-9));
        CHECK_THAT(got.core_mm, WithinRel(expected.core_mm, 1e-9));
        CHECK_THAT(got.neutral_mm, WithinAbs(0.0, 1e3 * std::abs(offset)));
    }
}

TEST_CASE("the side on which the hole lies changes nothing but the axis's sign",
          "[strength][property]") {
    const PlasticSection back = section(3.8, 1.4, 0.5), belly = section(3.8, 1.4, -0.5);
    const double moment = 1.2 * back.yield_moment_nmm;
    CHECK_THAT(bend_section(belly, moment).curvature_per_mm,
               WithinRel(bend_section(back, moment).curvature_per_mm, 1e-12));
    CHECK_THAT(bend_section(belly, moment).neutral_mm,
               WithinRel(-bend_section(back, moment).neutral_mm, 1e-10));
    CHECK_THAT(yielded_depth_mm(belly, moment), WithinRel(yielded_depth_mm(back, moment), 1e-10));
    CHECK_THAT(residual_stress(belly, moment).core_edge_mpa,
               WithinRel(residual_stress(back, moment).core_edge_mpa, 1e-10));
}

TEST_CASE("what stays begins at nothing and grows with the moment", "[strength][property]") {
    const auto [chord, offset] =
        GENERATE(std::pair{0.0, 0.0}, std::pair{2.0, 0.0}, std::pair{2.0, 0.4});
    const PlasticSection s = section(3.8, chord, offset);
    CAPTURE(chord, offset);
    const double just = residual_curvature_per_mm(s, s.yield_moment_nmm * (1.0 + 1e-6));
    CHECK(just >= -1e-15);
    CHECK(just <= 1e-9 * s.yield_curvature_per_mm);
    double last = 0.0;
    for (int i = 1; i < 200; ++i) {
        const double moment = std::lerp(s.yield_moment_nmm, s.plastic_moment_nmm, i / 200.0);
        const double next = residual_curvature_per_mm(s, moment);
        CHECK(next > last);
        last = next;
    }
}

TEST_CASE("a moment the section cannot bear is out of range", "[strength][abuse]") {
    const PlasticSection s = section(3.0);
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    for (const double moment : {s.plastic_moment_nmm, 1e9, -1.0, nan}) {
        CAPTURE(moment);
        CHECK_THROWS_AS(bend_section(s, moment), OutOfRange);
        CHECK_THROWS_AS(residual_curvature_per_mm(s, moment), OutOfRange);
    }
}

TEST_CASE("a section that cannot be is refused with every broken rule", "[strength][abuse]") {
    try {
        (void)make_plastic_section(-1.0, 3.0, 0.0, kYield, 2.0, 0.6);
        FAIL("not refused");
    } catch (const InvalidInput& refused) {
        REQUIRE(refused.faults().size() == 3);
        CHECK(refused.faults()[0].key == "width_mm");
        CHECK(refused.faults()[1].key == "youngs_modulus_mpa");
        CHECK(refused.faults()[2].key == "chord_mm");
    }
}

TEST_CASE("each number of a section is judged by itself", "[strength][abuse]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const std::array<double, 6> good{kWidth, 3.0, kModulus, kYield, 1.0, 0.2};
    const std::array<const char*, 6> keys{"width_mm",  "thickness_mm", "youngs_modulus_mpa",
                                          "yield_mpa", "chord_mm",     "chord_mm"};
    for (std::size_t i = 0; i < good.size(); ++i) {
        for (const double bad : {nan, i < 4 ? 0.0 : 3.0, 1e13}) {
            CAPTURE(keys[i], bad);
            std::array<double, 6> n = good;
            n[i] = bad;
            try {
                (void)make_plastic_section(n[0], n[1], n[2], n[3], n[4], n[5]);
                FAIL("not refused");
            } catch (const InvalidInput& refused) {
                REQUIRE_FALSE(refused.faults().empty());
                CHECK(refused.faults()[0].key == keys[i]);
            }
        }
    }
    CHECK_NOTHROW(make_plastic_section(good[0], good[1], good[2], good[3], good[4], good[5]));
}

TEST_CASE("a rectangle springs back by its elastic stress", "[strength][closed form]") {
    // At 5/4 of the yield moment a quarter of the yield stress is left in the surface, pressed
    // where it was pulled; the core, m = sqrt(3 - 5/2) of the half, keeps 1 - 5/4 m of it.
    const PlasticSection s = section(3.0);
    const ResidualStress left = residual_stress(s, 1.25 * s.yield_moment_nmm);
    CHECK_THAT(left.surface_mpa, WithinRel(-0.25 * kYield, 1e-12));
    CHECK_THAT(left.core_edge_mpa, WithinRel((1.0 - 1.25 * std::sqrt(0.5)) * kYield, 1e-12));
    CHECK(residual_stress(s, s.yield_moment_nmm).surface_mpa == 0.0);
}

TEST_CASE("curvature grows with the moment as what is still elastic lets it",
          "[strength][property]") {
    for (const double offset : {0.0, 0.3, -0.2}) {
        const PlasticSection section =
            make_plastic_section(2.3, 3.8, 205000.0, 1300.0, 1.2, offset);
        for (const double share : {0.5, 1.05, 1.15, 1.3}) {
            CAPTURE(offset, share);
            const double moment = share * section.yield_moment_nmm, step = 1e-5 * moment;
            const double difference = bend_section(section, moment + step).curvature_per_mm -
                                      bend_section(section, moment - step).curvature_per_mm;
            const double rate = curvature_per_nmm2(section, bend_section(section, moment));
            // The difference is off by the square of its step, and some rounding.
            CHECK_THAT(rate, WithinRel(difference / (2.0 * step), 1e-5));
        }
    }
}
