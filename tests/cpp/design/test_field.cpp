#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "backspring/design/field.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("each key has one row, a range and words", "[field]") {
    std::set<std::string> keys;
    for (const Field& field : fields()) {
        CAPTURE(field.key);
        CHECK(keys.insert(field.key).second);
        CHECK_FALSE(field.meaning.empty());
        const bool numeric = field.form != Form::text && field.form != Form::choice;
        CHECK((!numeric || field.least < field.greatest));
        CHECK((!field.dimension || (field.get && field.set)));
    }
}

TEST_CASE("numbers that a file holds make the design they were taken from", "[field]") {
    for (auto [name, design] : designs::all()) {
        CAPTURE(name);
        if (design.spring.support.kind != SupportKind::two_pins) {
            std::erase_if(design.spring.holes,
                          [](const Hole& h) { return h.pin != HoleFor::middle_pin; });
        }
        GivenNumbers given;
        for (const Field& field : fields()) {
            const std::vector<double> all = numbers(field, design);
            if (field.derived || all.empty()) continue;
            given[field.key] = all;
        }
        // A file holds stations with their thicknesses, and holes in order of middle and rear pin.
        std::vector<double> rows, diameters(2, 0.0), offsets(2, 0.0);
        for (const Station& s : design.spring.thickness) {
            rows.insert(rows.end(), {s.x_mm, s.thickness_mm});
        }
        for (const Hole& hole : design.spring.holes) {
            diameters.at(hole.center_mm == 0.0 ? 0 : 1) = hole.diameter_mm;
            offsets.at(hole.center_mm == 0.0 ? 0 : 1) = hole.offset_mm;
        }
        given["spring.thickness"] = rows;
        std::vector<double> widths, heights;
        for (const WidthStation& s : design.spring.widths) {
            widths.insert(widths.end(), {s.x_mm, s.width_mm});
        }
        for (const MidLinePoint& p : design.spring.mid_line) {
            heights.insert(heights.end(), {p.x_mm, p.height_mm});
        }
        if (!widths.empty()) given["spring.width"] = widths;
        if (!heights.empty()) given["spring.mid_line"] = heights;
        given["spring.pin_hole"] = diameters;
        given["spring.pin_hole_offset"] = offsets;
        Design blank;
        blank.spring.support = design.spring.support;
        blank.strength = design.strength;
        const Design made = with_numbers(blank, given);
        for (const Field& field : fields()) {
            CAPTURE(field.key);
            auto expected = numbers(field, design), found = numbers(field, made);
            std::sort(expected.begin(), expected.end());
            std::sort(found.begin(), found.end());
            CHECK(found == expected);
        }
        CHECK(faults(made).size() == faults(design).size());
    }
}

TEST_CASE("the ends of a range are allowed and what lies beyond is told", "[field][abuse]") {
    const double endless = std::numeric_limits<double>::infinity();
    for (const Field& field : fields()) {
        CAPTURE(field.key);
        if (field.form == Form::text || field.form == Form::choice) continue;
        CHECK_FALSE(range_fault(field, field.least));
        CHECK_FALSE(range_fault(field, field.greatest));
        const double below = std::nextafter(field.least, -endless);
        const double above = std::nextafter(field.greatest, endless);
        CHECK(range_fault(field, below)->rule == "at_least");
        CHECK(range_fault(field, above)->rule == "at_most");
        CHECK(range_fault(field, endless)->rule == "finite");
        if (field.least > 0.0) CHECK(range_fault(field, 0.0)->rule == "greater_than");
    }
}

TEST_CASE("a dial that is not given stands at the pivot", "[field]") {
    const Design made = with_numbers({}, {{"tang.pivot", {32.0}}, {"fit.preload", {0.9}}});
    CHECK(made.own().fit.dial_mm == 32.0);
    CHECK(std::isnan(made.own().tang.open_mm));
}
