#include "backspring/design/dimension.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

TEST_CASE("a dimension that is set is the value that is read", "[dimension]") {
    for (const auto& [name, design] : designs::all()) {
        for (const Field& dimension : dimensions()) {
            INFO(name << ", " << dimension.key);
            if (!has_dimension(design, dimension.key)) {
                CHECK_FALSE(dimension_value(design, dimension.key));
                CHECK_THROWS_AS(with_dimension(design, dimension.key, 1.0), InvalidInput);
                continue;
            }
            const Design changed = with_dimension(design, dimension.key, 1.25);
            const bool relative = dimension.key == "spring.thickness_scale" ||
                                  dimension.key == "spring.thickness_offset" ||
                                  dimension.key == "spring.width_offset" ||
                                  dimension.key == "friction.offset";
            if (relative) continue;
            CHECK_THAT(dimension_value(changed, dimension.key).value(), WithinRel(1.25, 1e-14));
        }
    }
}

TEST_CASE("a profile keeps its shape under scale and offset", "[dimension]") {
    const Design heron = designs::heron();
    const Design thicker = with_dimension(heron, "spring.thickness_offset", 0.1);
    const Design scaled = with_dimension(heron, "spring.thickness_scale", 1.1);
    for (std::size_t i = 0; i < heron.spring.thickness.size(); ++i) {
        const double t = heron.spring.thickness[i].thickness_mm;
        CHECK(thicker.spring.thickness[i].thickness_mm == t + 0.1);
        CHECK(scaled.spring.thickness[i].thickness_mm == t * 1.1);
    }
    CHECK_FALSE(dimension_value(heron, "spring.thickness"));
    CHECK(dimension_value(designs::dunlin(), "spring.thickness") == 2.6);
}

TEST_CASE("friction's offset moves both coefficients, neither below 0", "[dimension]") {
    Design design = designs::heron();
    design.friction = {.spring = 0.12, .pivot = 0.05, .pivot_pin_mm = 3.2};
    const Design more = with_dimension(design, "friction.offset", 0.04);
    CHECK_THAT(more.friction.spring, WithinRel(0.16, 1e-12));
    CHECK_THAT(more.friction.pivot, WithinRel(0.09, 1e-12));
    const Design less = with_dimension(design, "friction.offset", -0.1);
    CHECK_THAT(less.friction.spring, WithinRel(0.02, 1e-12));
    CHECK(less.friction.pivot == 0.0);
    CHECK(dimension_value(design, "friction.offset") == 0.0);
}

TEST_CASE("what belongs to a number moves along", "[dimension]") {
    const Design moved = with_dimension(designs::heron(), "spring.rear_pin", 36.0);
    CHECK(moved.spring.holes[0].center_mm == -36.0);
    CHECK(moved.spring.holes[1].center_mm == 0.0);
    const Design harder = with_dimension(designs::heron(), "spring.yield", 1430.0);
    CHECK_THAT(harder.strength.yield_mpa.low, WithinRel(1320.0, 1e-14));
    CHECK_THAT(harder.strength.yield_mpa.high, WithinRel(1540.0, 1e-14));
    // An offset of the rear hole turns the spring: preload = offset x 32 / 34.
    const Design offset = with_dimension(designs::heron(), "fit.rear_pin_offset", 0.85);
    CHECK_THAT(offset.own().fit.preload_mm, WithinRel(0.8, 1e-14));
}

TEST_CASE("an unknown dimension is refused", "[dimension]") {
    CHECK_THROWS_WITH(dimension_value(designs::heron(), "tang.width"),
                      "tang.width: is no dimension of a design");
    CHECK_THROWS_WITH(with_dimension(designs::wren(), "tang.half_stop", 4.0),
                      "tang.half_stop: the design has none to change");
}

TEST_CASE("another blade's number goes by its name", "[dimension][blades]") {
    const Design design = designs::bunting(backspring::SupportKind::two_pins);
    const Design changed = with_dimension(design, "blades.pen.tang.closed", 4.7);
    CHECK(changed.blades[1].tang.closed_mm == 4.7);
    CHECK(changed.own().tang.closed_mm == design.own().tang.closed_mm);
    CHECK(changed.blades[1].name == "pen");
    CHECK(dimension_value(changed, "blades.pen.tang.closed") == 4.7);
    CHECK(dimension_value(changed, "blades.main.tang.closed") == design.own().tang.closed_mm);
    CHECK(has_dimension(design, "tang.half_stop"));
    CHECK_FALSE(has_dimension(design, "blades.pen.tang.half_stop"));
    for (const char* key : {"blades.file.tang.closed", "blades.pen.spring.width", "blades.pen",
                            "blades.pen.pad", "blades..tang.closed", "blades."}) {
        CAPTURE(key);
        CHECK_THROWS_AS(dimension_value(design, key), InvalidInput);
    }
    for (const Dimension& each : dimensions_of(design)) {
        const auto found = find_dimension(design, key_of(each, design));
        REQUIRE(found);
        CHECK((found->field == each.field && found->blade == each.blade));
    }
}

TEST_CASE("blades on one pin keep it when its place changes", "[dimension][blades]") {
    for (const char* key : {"tang.pivot", "blades.sheep.tang.pivot"}) {
        const Design moved = with_dimension(designs::whinchat(), key, 31.5);
        CHECK(moved.blades[0].tang.pivot_mm == 31.5);
        CHECK(moved.blades[1].tang.pivot_mm == 31.5);
        CHECK(faults(moved).empty());
    }
    const Design apart = designs::bunting(backspring::SupportKind::clamped);
    CHECK(with_dimension(apart, "tang.pivot", 31.5).blades[1].tang.pivot_mm == 28.0);
}
