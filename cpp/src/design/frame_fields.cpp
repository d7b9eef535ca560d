#include "field_rows.hpp"

namespace backspring {
namespace {

std::vector<Field> liner_rows() {
    return {
        {.key = "frame.liner_metal",
         .form = Form::choice,
         .choices = {"brass", "nickel-silver", "stainless", "steel", "titanium"},
         .left_out = "brass",
         .meaning = "Metal of both liners, which says how stiff they are.",
         .example = "\"nickel-silver\""},
        {.key = "frame.liner_thickness",
         .least = kShortestMm,
         .greatest = kThickestMm,
         .dimension = true,
         .left_out = "not given: pins are taken to stand still",
         .meaning = "Thickness of one liner. With a height the liners give under the pins, and "
                    "readings are those against the liners' edge.",
         .example = "1.0",
         BACKSPRING_PLACE(frame.liner_thickness_mm)},
        {.key = "frame.liner_height",
         .least = kShortestMm,
         .greatest = kLongestMm,
         .dimension = true,
         .left_out = "not given: pins are taken to stand still",
         .meaning = "Height of the liners between rear pin and pivot, from their back edge, which "
                    "is flush with the spring's back, to their belly edge. Where it varies, that "
                    "at the middle pin.",
         .example = "12",
         BACKSPRING_PLACE(frame.liner_height_mm)},
        {.key = "frame.liner_modulus",
         .quantity = Quantity::stress,
         .least = kSoftestMpa,
         .greatest = kStiffestMpa,
         .dimension = true,
         .left_out = "that of the metal",
         .meaning = "Young's modulus of the liners.",
         .example = "\"110 GPa\"",
         BACKSPRING_PLACE(frame.liner_modulus_mpa)},
    };
}

}  // namespace

std::vector<Field> detail::frame_fields() {
    std::vector<Field> rows = liner_rows();
    const std::vector<Field> more{
        {.key = "frame.scale_thickness",
         .least = kShortestMm,
         .greatest = kThickestMm,
         .dimension = true,
         .left_out = "the scales carry nothing",
         .meaning = "Thickness of one scale that is fastened all along its liner, as high as the "
                    "liner.",
         .example = "3",
         BACKSPRING_PLACE(frame.scale_thickness_mm)},
        {.key = "frame.scale_modulus",
         .quantity = Quantity::stress,
         .least = kSoftestMpa,
         .greatest = kStiffestMpa,
         .dimension = true,
         .left_out = "the scales carry nothing",
         .meaning = "Young's modulus of the scales, along the handle.",
         .example = "\"12 GPa\"",
         BACKSPRING_PLACE(frame.scale_modulus_mpa)},
        {.key = "frame.seat",
         .quantity = Quantity::compliance,
         .least = 1e-9,
         .greatest = 0.1,
         .dimension = true,
         .left_out = "from the liners, where they are given",
         .meaning = "How far the middle pin moves from the line through rear pin and pivot, for a "
                    "force on it: a measured number in place of the liners.",
         .example = "\"2e-4 mm/N\"",
         BACKSPRING_PLACE(frame.seat_mm_per_n)},
    };
    rows.insert(rows.end(), more.begin(), more.end());
    return rows;
}

}  // namespace backspring
