#include "field_rows.hpp"

namespace backspring {
namespace {

constexpr double kFarthestHrc = 20.0;
constexpr double kFarthestMpa = 1e5;

/// What is expected of one knife and its standard deviation; the core's design has no place for it.
Field prior(const char* name,
            Quantity quantity,
            double least,
            double greatest,
            const char* left_out,
            const char* meaning,
            const char* example) {
    return {.key = std::string("priors.") + name,
            .form = Form::pair,
            .quantity = quantity,
            .least = least,
            .greatest = greatest,
            .left_out = left_out,
            .meaning = std::string(meaning) + ": what is expected, and its standard deviation.",
            .example = example};
}

Field against_drawing(const char* name,
                      double farthest_mm,
                      const char* left_out,
                      const char* meaning,
                      const char* example) {
    return prior(name, Quantity::length, -farthest_mm, farthest_mm, left_out, meaning, example);
}

}  // namespace

std::vector<Field> detail::prior_fields() {
    return {
        against_drawing("half_stop_face", 3.0, "0 mm +- 1 mm",
                        "Half-stop face before anything was ground off it, against the drawing",
                        "[0.3, 0.1]"),
        against_drawing("closed_face", 3.0, "0 mm +- 1 mm",
                        "Closed face before anything was ground off it, against the drawing",
                        "[0.3, 0.1]"),
        against_drawing("kick", 3.0, "0 mm +- 0.5 mm", "Height of the kick, against the drawing",
                        "[0, 0.2]"),
        prior("pad_tilt", Quantity::angle, -5.0, 5.0, "0 deg +- 0.115 deg",
              "Tilt of the pad on the open face, + gapes towards the rear", "[0, 0.1]"),
        prior("pivot_play", Quantity::length, 0.0, 1.0, "0 mm +- 0.02 mm, the half above 0",
              "Diametral clearance of pivot and bushing", "[0, 0.02]"),
        prior("extra_root", Quantity::ratio, -0.9, 10.0, "0 +- 0.1",
              "Rotation at the root beyond the model's, as a share of the overhang's own",
              "[0, 0.1]"),
        prior("friction", Quantity::ratio, 0.0, 0.6, "as drawn +- 0.04",
              "Coefficient of friction of spring and pivot alike", "[0.12, 0.04]"),
        prior("youngs_modulus", Quantity::stress, -kFarthestMpa, kFarthestMpa,
              "0 +- a quarter of the steel's band", "Young's modulus, against the drawing",
              "[0, \"4 GPa\"]"),
        against_drawing("thickness", 3.0, "0 mm +- 0.02 mm",
                        "Thickness of the spring all along, against the drawing", "[0, 0.02]"),
        against_drawing("width", 3.0, "0 mm +- 0.01 mm", "Width of the spring, against the drawing",
                        "[0, 0.01]"),
        against_drawing("preload", 3.0, "0 mm +- 0.05 mm", "Preload, against the drawing",
                        "[0, 0.05]"),
        against_drawing("corner_radius", 3.0, "0 mm +- 0.1 mm",
                        "Radius of the rear corners, against the drawing", "[0, 0.1]"),
        prior("hardness", Quantity::hardness, -kFarthestHrc, kFarthestHrc,
              "0 HRC +- what its readings or the temper leave, 1 HRC for one reading",
              "Hardness of the spring, against the drawing", "[0, \"1 HRC\"]"),
        against_drawing("loaded_offset", 1.0, "0 mm +- 0.02 mm",
                        "Readings with both pins in off the model, by stop and liners",
                        "[0, 0.02]"),
    };
}

}  // namespace backspring
