#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "backspring/design/field.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "drawn_shapes.hpp"
#include "told.hpp"

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

TEST_CASE("faces of an outline that are not given are as drawn", "[field][outline]") {
    const Tang usual = designs::heron().own().tang;
    std::vector<double> rows;
    for (const OutlinePoint& p : shapes::rows_of(usual)) {
        rows.insert(rows.end(), {p.u_mm, p.w_mm, p.bulge});
    }
    const Tang drawn = with_numbers({}, {{"tang.outline", rows}}).own().tang;
    CHECK_THAT(drawn.open_mm, WithinAbs(usual.open_mm, 1e-14));
    CHECK_THAT(*drawn.half_stop_mm, WithinAbs(*usual.half_stop_mm, 1e-14));
    CHECK_THAT(drawn.closed_mm, WithinAbs(usual.closed_mm, 1e-14));
    CHECK(drawn.front_mm == 0.0);
    const Tang ground = with_numbers({}, {{"tang.outline", rows},
                                          {"tang.open", {4.4}},
                                          {"tang.half_stop", {4.5}},
                                          {"tang.closed", {4.3}}})
                            .own()
                            .tang;
    CHECK(ground.open_mm == 4.4);
    CHECK(ground.half_stop_mm == 4.5);
    CHECK(ground.closed_mm == 4.3);
    CHECK_THROWS_WITH(with_numbers({}, {{"tang.outline", {1.0, 2.0, 0.0, 3.0}}}),
                      "tang.outline: cannot hold 4 numbers");
}

TEST_CASE("an outline that is none is told by what it lacks", "[field][outline][abuse]") {
    const auto drawn = [](std::vector<double> rows, double open_mm = 4.5) {
        Design design = with_numbers(designs::heron(), {{"tang.outline", std::move(rows)}});
        design.own().tang.open_mm = open_mm;
        return told(design);
    };
    const std::vector<double> square{5.0,  4.5,  0.0, -4.6, 4.5,  0.0,
                                     -4.6, -4.6, 0.0, 9.0,  -4.6, 0.0};
    CHECK(drawn(square).find("tang.outline") == std::string::npos);
    CHECK_THAT(drawn({5.0, 4.5, 0.0, -4.6, 4.5, 0.0}),
               ContainsSubstring("tang.outline: must have at least three corners"));
    CHECK_THAT(drawn({5.0, 4.5, 0.0, 9.0, -4.6, 0.0, -4.6, -4.6, 0.0}),
               ContainsSubstring("tang.outline: must be convex and go round once"));
    CHECK_THAT(drawn({15.0, 4.5, 0.0, 5.0, 4.5, 0.0, 5.0, -4.6, 0.0, 15.0, -4.6, 0.0}),
               ContainsSubstring("tang.outline: must go round the pivot at [0, 0]"));
    CHECK_THAT(drawn(square, 7.6),
               ContainsSubstring("tang.open: must stand at most 3 mm out of the drawn outline"));
}

TEST_CASE("a dial that is not given stands at the pivot", "[field]") {
    const Design made = with_numbers({}, {{"tang.pivot", {32.0}}, {"fit.preload", {0.9}}});
    CHECK(made.own().fit.dial_mm == 32.0);
    CHECK(std::isnan(made.own().tang.open_mm));
}
