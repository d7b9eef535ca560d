#include "field_rows.hpp"

namespace backspring {
namespace {

bool pinned(const Design& d) { return d.spring.support.kind == SupportKind::two_pins; }

std::optional<double> rear_pin(const Design& d) {
    return pinned(d) ? std::optional(d.spring.support.rear_pin_mm) : std::nullopt;
}

void set_rear_pin(Design& d, double value) {
    double& rear_pin = d.spring.support.rear_pin_mm;
    for (Hole& hole : d.spring.holes) {
        if (hole.pin == HoleFor::rear_pin) hole.center_mm = -value;
    }
    rear_pin = value;
}

std::optional<double> root_stiffness(const Design& d) {
    const Support& support = d.spring.support;
    if (support.kind != SupportKind::root_stiffness) return {};
    return support.root_stiffness_nmm_per_rad;
}

std::vector<double> diameters(const Design& d) {
    std::vector<double> all;
    for (const Hole& hole : d.spring.holes) all.push_back(hole.diameter_mm);
    return all;
}

std::vector<double> offsets(const Design& d) {
    std::vector<double> all;
    for (const Hole& hole : d.spring.holes) all.push_back(hole.offset_mm);
    return all;
}

std::vector<double> clearances(const Design& d) {
    return {d.spring.pin_clearance.middle_mm, d.spring.pin_clearance.rear_mm};
}

/// Holes at the middle pin and, where the spring turns on two, at the rear pin.
void set_holes(Design& d, std::span<const double> diameters) {
    d.spring.holes.clear();
    const auto add = [&](HoleFor pin, double center, double diameter) {
        if (diameter != 0.0) {
            d.spring.holes.push_back(
                {.center_mm = center, .diameter_mm = diameter, .offset_mm = 0.0, .pin = pin});
        }
    };
    add(HoleFor::middle_pin, 0.0, diameters[0]);
    if (pinned(d)) add(HoleFor::rear_pin, -d.spring.support.rear_pin_mm, diameters[1]);
}

void set_offsets(Design& d, std::span<const double> offsets) {
    for (Hole& hole : d.spring.holes)
        hole.offset_mm = offsets[hole.pin == HoleFor::middle_pin ? 0 : 1];
}

}  // namespace

std::vector<Field> detail::pin_fields() {
    return {
        {.key = "spring.support",
         .form = Form::choice_or_number,
         .quantity = Quantity::root_stiffness,
         .least = 1.0,
         .greatest = 1e12,
         .choices = {"two-pins", "clamped", "middle-pin"},
         .left_out = "two-pins",
         .meaning =
             "How the spring is held: it turns on two pins, is clamped at the middle pin, or "
             "turns at the middle pin against a stiffness. \"middle-pin\": two blades "
             "balance each other on one pin.",
         .example = "\"two-pins\"",
         .get = root_stiffness},
        {.key = "spring.rear_pin",
         .least = 0.5,
         .greatest = kLongestMm,
         .dimension = true,
         .left_out = "must be given with two pins",
         .meaning = "From the centre of the middle pin to the centre of the rear pin. Its hole "
                    "goes with it.",
         .example = "34",
         .get = rear_pin,
         .set = set_rear_pin},
        {.key = "spring.pin_hole",
         .form = Form::one_or_two,
         .least = 0.0,
         .greatest = kThickestMm,
         .dimension = true,
         .left_out = "none",
         .meaning = "Diameter of the pin holes in the spring: one number for both, or "
                    "[middle, rear]; 0 is no hole.",
         .example = "2.0",
         .get = [](const Design& d) { return alike(diameters(d)); },
         .set =
             [](Design& d, double value) {
                 for (Hole& hole : d.spring.holes) hole.diameter_mm = value;
             },
         .numbers = diameters,
         .set_numbers = set_holes},
        {.key = "spring.pin_hole_offset",
         .form = Form::one_or_two,
         .least = -kThickestMm,
         .greatest = kThickestMm,
         .left_out = "0 mm, on the mid-line",
         .meaning = "From the spring's mid-line to the centre of the pin holes, positive towards "
                    "the back: one number for both, or [middle, rear].",
         .example = "0.2",
         .numbers = offsets,
         .set_numbers = set_offsets},
        {.key = "spring.pin_clearance",
         .form = Form::one_or_two,
         .least = 0.0,
         .greatest = kMostClearanceMm,
         .left_out = "0 mm",
         .meaning = "How much wider the spring's holes are than their pins, across: one number for "
                    "both, or [middle, rear]. Load takes it up and preload with it; peened pins "
                    "close it.",
         .example = "0.02",
         .get = [](const Design& d) { return alike(clearances(d)); },
         .set =
             [](Design& d, double value) {
                 d.spring.pin_clearance = {value, value};
             },
         .numbers = clearances,
         .set_numbers =
             [](Design& d, std::span<const double> pins) {
                 d.spring.pin_clearance = {.middle_mm = pins[0], .rear_mm = pins[1]};
             }},
        {.key = "spring.pad",
         .form = Form::pair,
         .least = kShortestMm,
         .greatest = kLongestMm,
         .required = true,
         .of_blade = true,
         .left_out = "must be given",
         .meaning = "Face of the belly that can touch the tang: stations of its rear and front "
                    "edge, from the middle pin.",
         .example = "[27, 36.5]",
         .numbers = [](const Design& d) -> std::vector<double> {
             return {d.own().pad.start_mm, d.own().pad.end_mm};
         },
         .set_numbers =
             [](Design& d, std::span<const double> ends) {
                 d.own().pad = {.start_mm = ends[0], .end_mm = ends[1]};
             }},
    };
}

}  // namespace backspring
