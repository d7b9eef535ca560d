#include <limits>

#include "backspring/check/look.hpp"
#include "backspring/strength/pins.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

PinInput pin() {
    PinInput input;
    input.force_n = 342.5;
    input.pin_mm = 2.0;
    input.spring_width_mm = 2.3;
    input.liner_mm = 0.8;
    input.spring_yield_mpa = 1250.0;
    return input;
}

}  // namespace

TEST_CASE("a pin shears in two planes and presses on its projected area",
          "[strength][closed form]") {
    // Evaluated apart: 342.5/(2 x 3.14159265) = 54.510568, /4.6 = 74.456522, /3.2 = 107.03125.
    const PinStress found = pin_stress(pin());
    CHECK_THAT(found.shear.stress_mpa, WithinRel(54.510568, 1e-7));
    CHECK_THAT(found.shear.limit_mpa, WithinRel(138.564065, 1e-8));
    CHECK_THAT(found.shear.margin.value(), WithinRel(138.564065 / 54.510568, 1e-7));
    CHECK_THAT(found.spring_bearing.stress_mpa, WithinRel(74.456522, 1e-7));
    CHECK_THAT(found.liner_bearing.value().stress_mpa, WithinRel(107.03125, 1e-12));
}

TEST_CASE("the softer of the two sets the limit of bearing", "[strength][property]") {
    PinInput input = pin();
    CHECK(pin_stress(input).spring_bearing.limit_mpa == kSoftMetalYieldMpa);
    input.pin_yield_mpa = 1500.0;
    CHECK(pin_stress(input).spring_bearing.limit_mpa == 1250.0);
    CHECK(pin_stress(input).liner_bearing->limit_mpa == kSoftMetalYieldMpa);
    input.liner_yield_mpa = 900.0;
    CHECK(pin_stress(input).liner_bearing->limit_mpa == 900.0);
}

TEST_CASE("without a liner's thickness no pressure on it is made up", "[strength][property]") {
    PinInput input = pin();
    input.liner_mm.reset();
    CHECK_FALSE(pin_stress(input).liner_bearing);
}

TEST_CASE("a pin without force has no margin", "[strength][property]") {
    PinInput input = pin();
    input.force_n = 0.0;
    CHECK(pin_stress(input).shear.stress_mpa == 0.0);
    CHECK_FALSE(pin_stress(input).shear.margin);
}

TEST_CASE("twice the pin: a quarter of the shear, half of the pressure", "[strength][property]") {
    PinInput thick = pin();
    thick.pin_mm = 4.0;
    const PinStress a = pin_stress(pin()), b = pin_stress(thick);
    CHECK_THAT(b.shear.stress_mpa, WithinRel(a.shear.stress_mpa / 4.0, 1e-14));
    CHECK_THAT(b.spring_bearing.stress_mpa, WithinRel(a.spring_bearing.stress_mpa / 2.0, 1e-14));
    CHECK_THAT(b.liner_bearing->stress_mpa, WithinRel(a.liner_bearing->stress_mpa / 2.0, 1e-14));
}

TEST_CASE("no angle of a travel presses harder on a pin than the worst", "[strength][property]") {
    const Design design = designs::heron();
    const Action action = make_action(design);
    const auto worst = worst_pin_forces(design.spring, Turns(action, {0.0, 180.0}));
    REQUIRE(worst);
    const auto at = [&](double angle) {
        return pin_forces(design.spring, loads(contact_at(action.joint, angle)));
    };
    for (double angle = 0.0; angle <= 180.0; angle += 0.05) {
        CHECK(at(angle).middle_n <= worst->forces.middle_n * (1.0 + 1e-9));
        CHECK(at(angle).rear_n <= worst->forces.rear_n * (1.0 + 1e-9));
    }
    // A contact that is found from others near by is the same to rounding.
    CHECK_THAT(at(worst->middle_angle_deg).middle_n, WithinRel(worst->forces.middle_n, 1e-12));
    CHECK_THAT(at(worst->rear_angle_deg).rear_n, WithinRel(worst->forces.rear_n, 1e-12));
}

TEST_CASE("a spring that is not held by two pins has no pin forces", "[strength][property]") {
    const Design design = designs::dunlin();
    const Action action = make_action(design);
    CHECK_FALSE(worst_pin_forces(design.spring, Turns(action, {0.0, 180.0})));
}

TEST_CASE("every broken rule of a pin is told at once", "[strength][rules]") {
    PinInput input;
    input.force_n = -1.0;
    input.liner_mm = 0.0;
    input.pin_yield_mpa = std::numeric_limits<double>::quiet_NaN();
    try {
        (void)pin_stress(input);
        FAIL("accepted");
    } catch (const InvalidInput& error) {
        std::vector<std::string> keys;
        for (const Fault& fault : error.faults()) keys.push_back(fault.key);
        CHECK(keys == std::vector<std::string>{"force_n", "pin_mm", "spring_width_mm", "liner_mm",
                                               "pin_yield_mpa", "spring_yield_mpa"});
    }
}
