#include <functional>
#include <limits>
#include <set>
#include <string>
#include <vector>

#include "backspring/design/design.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

struct Number {
    const char* key;
    std::function<void(Design&, double)> set;
};

const std::vector<Number>& numbers() {
    static const std::vector<Number> table{
        {"spring.youngs_modulus",
         [](Design& d, double v) { d.spring.elastic.youngs_modulus_mpa = v; }},
        {"spring.poisson", [](Design& d, double v) { d.spring.elastic.poisson = v; }},
        {"spring.yield", [](Design& d, double v) { d.strength.yield_mpa.value = v; }},
        {"spring.yield", [](Design& d, double v) { d.strength.yield_mpa.low = v; }},
        {"spring.yield", [](Design& d, double v) { d.strength.yield_mpa.high = v; }},
        {"spring.tensile", [](Design& d, double v) { d.strength.tensile_mpa.value = v; }},
        {"spring.width", [](Design& d, double v) { d.spring.width_mm = v; }},
        {"spring.thickness", [](Design& d, double v) { d.spring.thickness[3].x_mm = v; }},
        {"spring.thickness", [](Design& d, double v) { d.spring.thickness[3].thickness_mm = v; }},
        {"spring.rear_pin", [](Design& d, double v) { d.spring.support.rear_pin_mm = v; }},
        {"spring.pin_hole", [](Design& d, double v) { d.spring.holes[1].diameter_mm = v; }},
        {"spring.rear_pin", [](Design& d, double v) { d.spring.holes[1].center_mm = v; }},
        {"spring.pin_hole_offset", [](Design& d, double v) { d.spring.holes[1].offset_mm = v; }},
        {"spring.pad", [](Design& d, double v) { d.own().pad.start_mm = v; }},
        {"spring.pad", [](Design& d, double v) { d.own().pad.end_mm = v; }},
        {"tang.pivot", [](Design& d, double v) { d.own().tang.pivot_mm = v; }},
        {"tang.open", [](Design& d, double v) { d.own().tang.open_mm = v; }},
        {"tang.half_stop", [](Design& d, double v) { d.own().tang.half_stop_mm = v; }},
        {"tang.closed", [](Design& d, double v) { d.own().tang.closed_mm = v; }},
        {"tang.corner_radius", [](Design& d, double v) { d.own().tang.corner_open_mm = v; }},
        {"tang.corner_radius", [](Design& d, double v) { d.own().tang.corner_closed_mm = v; }},
        {"tang.front", [](Design& d, double v) { d.own().tang.front_mm = v; }},
        {"tang.kick.distance",
         [](Design& d, double v) {
             d.own().tang.kick = Kick{v, 0.2, 0.5};
         }},
        {"tang.kick.height",
         [](Design& d, double v) {
             d.own().tang.kick = Kick{8.0, v, 0.5};
         }},
        {"tang.kick.radius",
         [](Design& d, double v) {
             d.own().tang.kick = Kick{8.0, 0.2, v};
         }},
        {"fit.preload", [](Design& d, double v) { d.own().fit.preload_mm = v; }},
        {"fit.dial", [](Design& d, double v) { d.own().fit.dial_mm = v; }},
        {"blade.nail_nick", [](Design& d, double v) { d.own().blade.nail_nick_mm = v; }},
        {"blade.inertia", [](Design& d, double v) { d.own().blade.inertia_kg_mm2 = v; }},
        {"blade.mass", [](Design& d, double v) { d.own().blade.mass_g = v; }},
        {"blade.length", [](Design& d, double v) { d.own().blade.length_mm = v; }},
        {"blade.height", [](Design& d, double v) { d.own().blade.height_mm = v; }},
        {"blade.edge_clearance", [](Design& d, double v) { d.own().blade.edge_clearance_mm = v; }},
        {"friction.spring", [](Design& d, double v) { d.friction.spring = v; }},
        {"friction.pivot", [](Design& d, double v) { d.friction.pivot = v; }},
        {"friction.pivot_pin", [](Design& d, double v) { d.friction.pivot_pin_mm = v; }},
        {"targets.pull", [](Design& d, double v) { d.targets.pull_low_n = v; }},
        {"targets.yield_margin", [](Design& d, double v) { d.targets.yield_margin = v; }},
        {"targets.reading", [](Design& d, double v) { d.targets.reading_mm = v; }},
    };
    return table;
}

}  // namespace

TEST_CASE("a number that is none gives one fault, under its own key", "[design][abuse]") {
    for (const Number& number : numbers()) {
        Design design = designs::heron();
        number.set(design, std::numeric_limits<double>::quiet_NaN());
        const auto found = faults(design);
        CAPTURE(number.key);
        REQUIRE(found.size() == 1);
        CHECK(found[0].key == number.key);
        CHECK_THAT(message(found[0]), ContainsSubstring("must be a finite number, got"));
    }
}

TEST_CASE("an endless number is told under its own key first of all", "[design][abuse]") {
    const double endless = GENERATE(1.0, -1.0) * std::numeric_limits<double>::infinity();
    for (const Number& number : numbers()) {
        Design design = designs::heron();
        number.set(design, endless);
        const auto found = faults(design);
        CAPTURE(number.key);
        REQUIRE_FALSE(found.empty());
        CHECK(found[0].key == number.key);
        CHECK_THAT(message(found[0]), ContainsSubstring("must be a finite number, got"));
    }
}

TEST_CASE("a design without one sound number is refused without a crash", "[design][abuse]") {
    Design design = designs::heron();
    for (const Number& number : numbers()) {
        number.set(design, std::numeric_limits<double>::quiet_NaN());
    }
    std::set<std::string> told, expected;
    for (const Fault& fault : faults(design)) told.insert(fault.key);
    for (const Number& number : numbers()) expected.insert(number.key);
    // The kick was set last by its radius.
    for (const char* unseen : {"tang.kick.distance", "tang.kick.height"}) expected.erase(unseen);
    CHECK(told == expected);
}

TEST_CASE("a design of zeros is refused without a crash", "[design][abuse]") {
    const auto found = faults(Design{});
    CHECK(found.size() > 5);
    CHECK_THROWS_AS(make_action(Design{}), InvalidInput);
}
