#include "field_rows.hpp"

namespace backspring {

std::vector<Field> detail::surface_fields() {
    constexpr double deepest_skin_mm = 1.0;
    return {
        {.key = "spring.finish",
         .form = Form::choice,
         .choices = {"polished", "ground", "machined", "hot-rolled", "as-forged"},
         .left_out = "ground",
         .meaning = "Finish of the outer fibre, which says how soon a crack starts.",
         .example = "\"polished\""},
        {.key = "spring.hole_finish",
         .form = Form::choice,
         .choices = {"drilled", "reamed", "polished"},
         .left_out = "drilled",
         .meaning = "Finish of the pin holes' walls, which says how soon a crack starts there: as "
                    "the drill left them, reamed, or polished (lapped, burnished).",
         .example = "\"reamed\""},
        {.key = "spring.kink_radius",
         .least = kThinnestMm,
         .greatest = kLongestMm,
         .left_out = "not given: local stress at kinks is not judged",
         .meaning = "Root radius of the belly's kinks and steps.",
         .example = "3",
         BACKSPRING_PLACE(surface.kink_radius_mm)},
        {.key = "spring.curve_radius",
         .least = kShortestMm,
         .greatest = kLongestMm,
         .left_out = "the belly is straight",
         .meaning = "Radius of a hollow belly, before it is loaded.",
         .example = "60",
         BACKSPRING_PLACE(surface.curve_radius_mm)},
        {.key = "spring.residual_stress",
         .quantity = Quantity::stress,
         .least = -kStrongestMpa,
         .greatest = kStrongestMpa,
         .left_out = "0 MPa",
         .meaning = "Stress that stays in the skin of back and belly with no load on, along the "
                    "spring; negative is compression, as shot peening or burnishing leaves it. It "
                    "adds to the mean stress in fatigue. It does not reach into the pin holes.",
         .example = "\"-400 MPa\"",
         BACKSPRING_PLACE(surface.residual_mpa)},
        {.key = "spring.hole_residual_stress",
         .quantity = Quantity::stress,
         .least = -kStrongestMpa,
         .greatest = kStrongestMpa,
         .left_out = "0 MPa",
         .meaning = "The same in the walls of the pin holes, as a ball or a burnishing pin pressed "
                    "through leaves it.",
         .example = "\"-300 MPa\"",
         BACKSPRING_PLACE(surface.hole_residual_mpa)},
        {.key = "spring.soft_skin",
         .least = 0.0,
         .greatest = deepest_skin_mm,
         .left_out = "0 mm: no skin has lost carbon",
         .meaning = "Depth of the skin that the heat treatment has robbed of carbon and that was "
                    "not ground off (0.05 to 0.1 mm is often said). Cracks start in it early, on "
                    "the faces and in drilled holes; reamed and polished holes are taken as "
                    "finished after hardening.",
         .example = "0.05",
         BACKSPRING_PLACE(surface.soft_skin_mm)},
    };
}

}  // namespace backspring
