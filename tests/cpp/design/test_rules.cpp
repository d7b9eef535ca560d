#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <set>
#include <string>
#include <vector>

#include "backspring/core/require.hpp"
#include "backspring/design/design.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

struct Broken {
    const char* key;
    const char* message;
    std::function<void(Design&)> breaks;
};

const std::vector<Broken>& broken_designs() {
    static const std::vector<Broken> table{
        {"spring.youngs_modulus", "must be at least 1000 MPa, got 205 MPa",
         [](Design& d) { d.spring.elastic.youngs_modulus_mpa = 205.0; }},
        {"spring.poisson", "must be at most 0.49, got 0.5",
         [](Design& d) { d.spring.elastic.poisson = 0.5; }},
        {"spring.yield", "must be greater than 0 MPa, got 0 MPa",
         [](Design& d) {
             d.strength.yield_mpa = {0.0, 0.0, 0.0};
         }},
        {"spring.yield", "must lie in its own band 1200 MPa to 1400 MPa, got 1500 MPa",
         [](Design& d) { d.strength.yield_mpa.value = 1500.0; }},
        {"spring.width", "must be greater than 0 mm, got -2.3 mm",
         [](Design& d) { d.spring.width_mm = -2.3; }},
        {"spring.width", "must be at most 50 mm, got 58.42 mm",
         [](Design& d) { d.spring.width_mm = 58.42; }},
        {"spring.thickness", "must have at least one station",
         [](Design& d) { d.spring.thickness.clear(); }},
        {"spring.thickness", "must be greater than 0 mm, got 0 mm",
         [](Design& d) { d.spring.thickness[3].thickness_mm = 0.0; }},
        {"spring.thickness", "stations must rise (two alike make a step), got -5 mm after 0 mm",
         [](Design& d) { d.spring.thickness[3].x_mm = -5.0; }},
        {"spring.thickness",
         "must reach back to the rear pin at -34 mm, got a first station at -30 mm",
         [](Design& d) { d.spring.thickness[0].x_mm = -30.0; }},
        {"spring.thickness", "stations must rise (two alike make a step), got 0 mm after 0 mm",
         [](Design& d) { d.spring.thickness[1].x_mm = d.spring.thickness[3].x_mm = 0.0; }},
        {"spring.width", "stations must rise (two alike make a step), got 5 mm after 9 mm",
         [](Design& d) {
             d.spring.widths = {{-38.0, 2.3}, {9.0, 2.2}, {5.0, 2.1}};
         }},
        {"spring.width", "stations must lie on the spring, -38 mm to 36.5 mm, got -39 mm to 30 mm",
         [](Design& d) {
             d.spring.widths = {{-39.0, 2.3}, {30.0, 2.2}};
         }},
        {"spring.mid_line", "stations must rise (two alike make a step), got 2 mm after 9 mm",
         [](Design& d) {
             d.spring.mid_line = {{-34.0, 0.0}, {9.0, 1.0}, {2.0, 0.0}};
         }},
        {"spring.mid_line", "stations must lie on the spring, -38 mm to 36.5 mm, got 0 mm to 37 mm",
         [](Design& d) {
             d.spring.mid_line = {{0.0, 1.0}, {37.0, 0.0}};
         }},
        {"spring.mid_line", "must lean by at most 45 deg against the line of the pad, got 60 deg",
         [](Design& d) {
             d.spring.mid_line = {{0.0, std::sqrt(12.0)}, {2.0, 0.0}};
         }},
        {"spring.pin_hole", "must be 0 for none, or at least 0.01 mm, got 0.001 mm",
         [](Design& d) { d.spring.holes[1].diameter_mm = 1e-3; }},
        {"spring.rear_pin", "must be greater than 0 mm, got 0 mm",
         [](Design& d) { d.spring.support.rear_pin_mm = 0.0; }},
        {"spring.pin_hole", "must be at least 0 mm, got -1 mm",
         [](Design& d) { d.spring.holes[1].diameter_mm = -1.0; }},
        {"spring.pad", "must end ahead of its start, got 37 mm to 36.5 mm",
         [](Design& d) { d.own().pad.start_mm = 37.0, d.own().tang.pivot_mm = 36.7; }},
        {"spring.pad", "must lie on the spring, which ends at 36.5 mm, got 27 mm to 40 mm",
         [](Design& d) { d.own().pad.end_mm = 40.0; }},
        {"tang.pivot", "must lie between the pad's edges at 27 mm and 36.5 mm, got 40 mm",
         [](Design& d) { d.own().tang.pivot_mm = 40.0; }},
        {"tang.open", "must be greater than 0 mm, got -4.5 mm",
         [](Design& d) { d.own().tang.open_mm = -4.5; }},
        {"tang.corner_radius", "must not be larger than the faces it joins (4.5 mm), got 4.55 mm",
         [](Design& d) { d.own().tang.corner_open_mm = 4.55; }},
        {"tang.round_end", "must be left out when there is a half_stop",
         [](Design& d) { d.own().tang.round_end_mm = 5.0; }},
        {"tang.kick.radius", "must be greater than 0 mm, got 0 mm",
         [](Design& d) {
             d.own().tang.kick = Kick{8.0, 0.2, 0.0};
         }},
        {"fit.preload", "must be at least 0 mm, got -0.1 mm",
         [](Design& d) { d.own().fit.preload_mm = -0.1; }},
        {"fit.dial", "must lie on the spring, which ends at 36.5 mm, got 40 mm",
         [](Design& d) { d.own().fit.dial_mm = 40.0; }},
        {"blade.nail_nick", "must be greater than 0 mm, got 0 mm",
         [](Design& d) { d.own().blade.nail_nick_mm = 0.0; }},
        {"friction.spring", "must be at most 1, got 1.2",
         [](Design& d) { d.friction.spring = 1.2; }},
        {"targets.pull", "must rise from least to greatest, got 30 N to 20 N",
         [](Design& d) { d.targets.pull_low_n = 30.0, d.targets.pull_high_n = 20.0; }},
    };
    return table;
}

}  // namespace

TEST_CASE("the designs of these tests break no rule", "[design][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        CHECK(faults(design).empty());
    }
}

TEST_CASE("each broken rule is told by its key, rule and value", "[design][abuse]") {
    for (const Broken& row : broken_designs()) {
        Design design = designs::heron();
        row.breaks(design);
        const auto found = faults(design);
        CAPTURE(row.key, row.message);
        const auto told = [&](const Fault& f) {
            return f.key == row.key && message(f) == row.message;
        };
        for (const Fault& fault : found) UNSCOPED_INFO(fault.key << ": " << message(fault));
        CHECK(std::any_of(found.begin(), found.end(), told));
    }
}

TEST_CASE("a hole must leave steel on both sides", "[design][abuse]") {
    Design design = designs::heron();
    design.spring.holes[1] = {0.0, 3.0, 0.5, HoleFor::middle_pin};
    const auto found = faults(design);
    REQUIRE(found.size() == 1);
    CHECK(found[0].key == "spring.pin_hole");
    CHECK_THAT(message(found[0]), ContainsSubstring("got 3 mm set off by 0.5 mm"));
}

TEST_CASE("a tang that turns through the middle pin is refused", "[design][abuse]") {
    Design design = designs::plover();
    design.own().pad.start_mm = 1.5;
    design.own().tang.kick = Kick{.distance_mm = 31.0, .height_mm = 2.0, .radius_mm = 0.5};
    const auto found = faults(design);
    REQUIRE(found.size() == 1);
    CHECK(found[0].key == "tang.pivot");
    CHECK_THAT(message(found[0]), ContainsSubstring("turns through the middle pin"));
    CHECK_THROWS_AS(contact_at(design, 0.0), InvalidInput);

    Hole& middle = design.spring.holes.at(1);
    REQUIRE(middle.center_mm == 0.0);
    middle.offset_mm = 0.4;
    const double height =
        design.own().tang.open_mm + 0.5 * thickness_mm(design.spring.thickness, 0.0) + 0.4;
    const double room = std::hypot(design.own().tang.pivot_mm, height) - 0.5 * middle.diameter_mm;
    CHECK_THAT(message(faults(design).at(0)),
               ContainsSubstring("the pin is " + with_unit(room, "mm") + " away"));
}

TEST_CASE("several faults are all told at once", "[design][abuse]") {
    Design design = designs::heron();
    design.spring.width_mm = 0.0;
    design.own().tang.open_mm = -1.0;
    design.own().fit.preload_mm = -1.0;
    design.friction.pivot = 2.0;
    std::vector<std::string> keys;
    for (const Fault& fault : faults(design)) keys.push_back(fault.key);
    CHECK(keys ==
          std::vector<std::string>{"spring.width", "tang.open", "fit.preload", "friction.pivot"});
    CHECK_THROWS_AS(make_action(design), InvalidInput);
}

TEST_CASE("a corner as large as its face is allowed", "[design][property]") {
    Design design = designs::heron();
    design.own().tang.corner_open_mm = 4.5;
    design.own().tang.corner_closed_mm = 0.0;
    CHECK(faults(design).empty());
}
