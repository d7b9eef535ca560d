#include <string>
#include <vector>

#include "backspring/design/design.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

Blade blade(std::string name, End end) {
    Blade made = designs::wren().own();
    made.name = std::move(name);
    made.end = end;
    return made;
}

/// Main and pen at the front, file at the rear.
Design three_blades(SupportKind kind) {
    Design design = designs::heron();
    design.spring.support.kind = kind;
    design.spring.pin_clearance = {.middle_mm = 0.01, .rear_mm = 0.03};
    design.pins.middle_mm = 1.9;
    design.pins.rear_mm = 1.8;
    design.blades = {blade("main", End::front), blade("pen", End::front), blade("file", End::rear)};
    return design;
}

std::string names(const Design& design) {
    std::string all;
    for (const Blade& each : design.blades) {
        all += each.name + (each.end == End::front ? "+ " : "- ");
    }
    return all;
}

}  // namespace

TEST_CASE("a blade a question is about comes first, seen at the front", "[design][property]") {
    const Design design = three_blades(SupportKind::two_pins);
    CHECK(names(seen_from(design, 0)) == "main+ pen+ file- ");
    CHECK(names(seen_from(design, 1)) == "pen+ main+ file- ");
    CHECK(names(seen_from(design, 2)) == "file+ main- pen- ");
}

TEST_CASE("from the same end the spring stays as it is", "[design][property]") {
    const Design design = three_blades(SupportKind::two_pins);
    const Design seen = seen_from(design, 1);
    CHECK(seen.spring.thickness.front().x_mm == design.spring.thickness.front().x_mm);
    CHECK(seen.pins.middle_mm == design.pins.middle_mm);
}

TEST_CASE("from the rear the rear pin is the middle one", "[design][property]") {
    const Design design = three_blades(SupportKind::two_pins);
    const Design seen = seen_from(design, 2);
    CHECK(seen.spring.thickness.front().x_mm == -34.0 - 36.5);
    CHECK(seen.pins.middle_mm == design.pins.rear_mm);
    CHECK(seen.pins.rear_mm == design.pins.middle_mm);
    CHECK(seen.spring.pin_clearance.middle_mm == design.spring.pin_clearance.rear_mm);
    CHECK(seen.spring.pin_clearance.rear_mm == design.spring.pin_clearance.middle_mm);
    CHECK(hole_for(HoleFor::middle_pin, seen.spring.holes)->center_mm == 0.0);
}

TEST_CASE("on a middle pin alone the pin stays the middle one", "[design][property]") {
    const Design design = three_blades(SupportKind::clamped);
    const Design seen = seen_from(design, 2);
    CHECK(seen.spring.thickness.front().x_mm == -36.5);
    CHECK(seen.pins.middle_mm == design.pins.middle_mm);
    CHECK(seen.spring.pin_clearance.middle_mm == design.spring.pin_clearance.middle_mm);
}

TEST_CASE("seen from a blade and back a design is the same", "[design][property]") {
    const Design design = three_blades(SupportKind::two_pins);
    const Design back = seen_from(seen_from(design, 2), 1);
    CHECK(names(back) == "main+ file- pen+ ");
    for (std::size_t i = 0; i < design.spring.thickness.size(); ++i) {
        CHECK(back.spring.thickness[i].x_mm == design.spring.thickness[i].x_mm);
    }
    CHECK(back.pins.rear_mm == design.pins.rear_mm);
}
