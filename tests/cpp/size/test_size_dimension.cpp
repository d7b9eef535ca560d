#include "backspring/size/size_dimension.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("a measure put in is the measure read back", "[shop][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        for (const char* key :
             {"spring.thickness", "fit.preload", "spring.width", "tang.pivot", "spring.length"}) {
            CAPTURE(key);
            SizeDimension dimension;
            dimension.key = key;
            const double size = 1.1 * size_of(design, dimension);
            CHECK_THAT(size_of(with_size(design, dimension, size), dimension),
                       WithinRel(size, 1e-14));
        }
    }
}

TEST_CASE("the pivot takes pad and dial with it", "[shop][property]") {
    SizeDimension pivot;
    pivot.key = "tang.pivot";
    const Design moved = with_size(designs::heron(), pivot, 34.0);
    CHECK(moved.own().pad.start_mm == 29.0);
    CHECK(moved.own().pad.end_mm == 38.5);
    CHECK(moved.own().fit.dial_mm == 35.5);
    CHECK(moved.spring.thickness.back().x_mm == 38.5);
    CHECK(moved.spring.thickness[3].x_mm == 7.0);
    CHECK(faults(moved).empty());
    CHECK(faults(with_size(designs::heron(), pivot, 30.0)).empty());
}

TEST_CASE("the length stretches the steel between middle pin and pad", "[shop][property]") {
    SizeDimension length;
    length.key = "spring.length";
    const Design longer = with_size(designs::heron(), length, 34.7);  // by a tenth of the pad's 27
    CHECK(longer.spring.thickness[1].x_mm == -4.0);
    CHECK_THAT(longer.spring.thickness[3].x_mm, WithinRel(7.7, 1e-14));
    CHECK_THAT(longer.spring.thickness[5].x_mm, WithinRel(39.2, 1e-14));
    CHECK(longer.spring.thickness[3].thickness_mm == 3.1);
    CHECK(faults(longer).empty());
}

TEST_CASE("bounds follow the measure unless they are given", "[shop][property]") {
    SizeDimension width;
    width.key = "spring.width";
    CHECK_THAT(size_bounds(designs::heron(), width).low_mm, WithinRel(0.92, 1e-14));
    CHECK_THAT(size_bounds(designs::heron(), width).high_mm, WithinRel(5.75, 1e-14));
    width.high_mm = 3.0;
    CHECK(size_bounds(designs::heron(), width).high_mm == 3.0);
}
