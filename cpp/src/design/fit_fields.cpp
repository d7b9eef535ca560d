#include "field_rows.hpp"

namespace backspring {
namespace {

bool on_two_pins(const Design& d) { return d.spring.support.kind == SupportKind::two_pins; }

std::optional<double> rear_pin_offset(const Design& d) {
    if (!on_two_pins(d)) return {};
    return d.own().fit.preload_mm * d.spring.support.rear_pin_mm / d.own().tang.pivot_mm;
}

/// The spring turns on the middle pin as it is pulled home: similar triangles.
void set_rear_pin_offset(Design& d, double value) {
    d.own().fit.preload_mm = value * (d.own().tang.pivot_mm / d.spring.support.rear_pin_mm);
}

std::optional<double> stop_height(const Design& d) {
    const Stop& stop = d.own().fit.stop;
    return stop.place == StopPlace::height ? std::optional(stop.height_mm) : std::nullopt;
}

void set_stop_height(Design& d, double value) {
    d.own().fit.stop.place = StopPlace::height;
    d.own().fit.stop.height_mm = value;
}

/// What a blade that is not the first has besides the keys marked of_blade.
std::vector<Field> further_blade_rows() {
    return {{.key = "blades.name",
             .form = Form::text,
             .required = true,
             .left_out = "must be given",
             .meaning = "What the blade is called; each blade of a spring has a name of its own.",
             .example = "\"pen\""},
            {.key = "blades.end",
             .form = Form::choice,
             .choices = {"front", "rear"},
             .required = true,
             .left_out = "must be given",
             .meaning = "The end of the spring that it bears on: the first blade's, or the other.",
             .example = "\"rear\""}};
}

std::vector<Field> blade_rows() {
    return {
        {.key = "blade.name",
         .form = Form::text,
         .left_out = "\"main\"",
         .meaning = "What the blade is called where a spring has several.",
         .example = "\"long\""},
        {.key = "blade.nail_nick",
         .least = kShortestMm,
         .greatest = kLongestMm,
         .dimension = true,
         .of_blade = true,
         .left_out = "not given: no pull is worked out, only torque",
         .meaning = "From the centre of the pivot to the nail nick.",
         .example = "35",
         .get = [](const Design& d) { return d.own().blade.nail_nick_mm; },
         .set = [](Design& d, double value) { d.own().blade.nail_nick_mm = value; }},
        {.key = "blade.mass",
         .quantity = Quantity::mass,
         .least = 1e-6,
         .greatest = 2000.0,
         .of_blade = true,
         .left_out = "not given",
         .meaning = "Mass of the blade, tang included. With length and height it stands in for "
                    "inertia.",
         .example = "\"28 g\"",
         BACKSPRING_PLACE(own().blade.mass_g)},
        {.key = "blade.length",
         .least = kShortestMm,
         .greatest = kLongestMm,
         .of_blade = true,
         .left_out = "not given: no tip speed is worked out",
         .meaning = "Length of the blade from the tang's rear end to the tip.",
         .example = "80",
         BACKSPRING_PLACE(own().blade.length_mm)},
        {.key = "blade.height",
         .least = kShortestMm,
         .greatest = 200.0,
         .of_blade = true,
         .left_out = "not given",
         .meaning = "Height of the blade from edge to back.",
         .example = "18",
         BACKSPRING_PLACE(own().blade.height_mm)},
        {.key = "blade.inertia",
         .quantity = Quantity::inertia,
         .least = 1e-9,
         .greatest = 1e5,
         .of_blade = true,
         .left_out = "of a plate of the blade's mass, length and height",
         .meaning = "Moment of inertia of the blade about the pivot.",
         .example = "\"5.2e-5 kg m2\"",
         BACKSPRING_PLACE(own().blade.inertia_kg_mm2)},
        {.key = "blade.edge_clearance",
         .least = kThinnestMm,
         .greatest = kThickestMm,
         .of_blade = true,
         .left_out = "not given: a rap is not judged",
         .meaning = "From the edge to the spring's belly with the blade closed.",
         .example = "0.8",
         BACKSPRING_PLACE(own().blade.edge_clearance_mm)},
        {.key = "blade.hardness",
         .quantity = Quantity::hardness,
         .least = kSoftestHrc,
         .greatest = kHardestHrc,
         .of_blade = true,
         .left_out = "not given: wear is judged by the spring alone",
         .meaning = "Rockwell C of the tang.",
         .example = "\"60 HRC\"",
         BACKSPRING_PLACE(own().hardness_hrc)},
        {.key = "blade.steel",
         .form = Form::choice,
         .choices = {"carbon", "stainless"},
         .of_blade = true,
         .left_out = "not given: galling is not judged",
         .meaning = "What the blade is made of: only stainless on stainless is said to gall.",
         .example = "\"stainless\""},
    };
}

std::vector<Field> pins_rows() {
    return {
        {.key = "pins.middle",
         .least = kShortestMm,
         .greatest = kThickestMm,
         .left_out = "as thick as its hole",
         .meaning = "Diameter of the middle pin.",
         .example = "2.0",
         BACKSPRING_PLACE(pins.middle_mm)},
        {.key = "pins.rear",
         .least = kShortestMm,
         .greatest = kThickestMm,
         .left_out = "as thick as its hole",
         .meaning = "Diameter of the rear pin.",
         .example = "2.0",
         BACKSPRING_PLACE(pins.rear_mm)},
        {.key = "pins.liner",
         .least = kThinnestMm,
         .greatest = kThickestMm,
         .left_out = "frame.liner_thickness; without it what the pins press on is not judged",
         .meaning = "Thickness of one liner where the pins press on it.",
         .example = "0.8",
         BACKSPRING_PLACE(pins.liner_mm)},
        {.key = "pins.yield",
         .quantity = Quantity::stress,
         .least = kWeakestMpa,
         .greatest = kStrongestMpa,
         .left_out = "that of soft brass or nickel silver",
         .meaning = "Yield stress of the pins.",
         .example = "\"200 MPa\"",
         BACKSPRING_PLACE(pins.yield_mpa)},
    };
}

}  // namespace

std::vector<Field> detail::fit_fields() {
    std::vector<Field> rows{
        {.key = "fit.preload",
         .least = 0.0,
         .greatest = 10.0,
         .dimension = true,
         .of_blade = true,
         .left_out = "from rear_pin_offset; one of the two must be given",
         .meaning = "Interference: how far the open face stands into the unbent spring at the "
                    "pivot's station with both pins in.",
         .example = "0.9",
         BACKSPRING_PLACE(own().fit.preload_mm)},
        {.key = "fit.rear_pin_offset",
         .least = 0.0,
         .greatest = 20.0,
         .dimension = true,
         .derived = true,
         .left_out = "preload is given",
         .meaning = "How far the rear hole of the spring, resting on tang and middle pin, stands "
                    "off the rear pin's place. Another way to state preload: they go as rear_pin "
                    "to pivot.",
         .example = "0.956",
         .get = rear_pin_offset,
         .set = set_rear_pin_offset},
        {.key = "fit.dial",
         .least = kShortestMm,
         .greatest = kLongestMm,
         .dimension = true,
         .of_blade = true,
         .left_out = "at the pivot",
         .meaning = "Station that the indicator touches, from the middle pin.",
         .example = "33.5",
         BACKSPRING_PLACE(own().fit.dial_mm)},
        {.key = "fit.stop",
         .form = Form::choice_or_number,
         .least = 0.0,
         .greatest = kThickestMm,
         .choices = {"back", "middle", "belly"},
         .of_blade = true,
         .left_out = "not known: its push on the spring is left out, and every loaded reading "
                     "tells what it may change",
         .meaning = "Where the open blade's stop bears on the spring's end, or how far above the "
                    "belly: blue the end and see.",
         .example = "\"middle\"",
         .get = stop_height,
         .set = set_stop_height},
        {.key = "fit.stop_face",
         .least = kThinnestMm,
         .greatest = kLongestMm,
         .of_blade = true,
         .left_out = "the blade stands at 180 deg under load",
         .meaning = "From the centre of the pivot ahead to the face of the blade's stop, along the "
                    "open face. With fit.stop the blade then stands open where that face meets the "
                    "spring's end, with the rear pin in and out; alone it narrows what the stop "
                    "may do to loaded readings.",
         .example = "4.5",
         BACKSPRING_PLACE(own().fit.stop.face_mm)},
    };
    for (const auto& more : {blade_rows(), edge_fields(), further_blade_rows(), pins_rows()}) {
        rows.insert(rows.end(), more.begin(), more.end());
    }
    return rows;
}

}  // namespace backspring
