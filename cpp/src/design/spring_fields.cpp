#include "field_rows.hpp"

namespace backspring {
namespace {

std::vector<double> thicknesses(const Design& d) {
    std::vector<double> all;
    for (const Station& station : d.spring.thickness) all.push_back(station.thickness_mm);
    return all;
}

void set_profile(Design& d, std::span<const double> rows) {
    d.spring.thickness.clear();
    for (std::size_t i = 0; i + 1 < rows.size(); i += 2) {
        d.spring.thickness.push_back({.x_mm = rows[i], .thickness_mm = rows[i + 1]});
    }
}

template <class Change>
void change_thickness(Design& d, Change change) {
    for (Station& station : d.spring.thickness) {
        station.thickness_mm = change(station.thickness_mm);
    }
}

}  // namespace

std::vector<Field> detail::spring_fields() {
    return {
        {.key = "spring.width",
         .least = kShortestMm,
         .greatest = kThickestMm,
         .required = true,
         .dimension = true,
         .left_out = "must be given",
         .meaning = "Stock thickness of the spring: from liner to liner.",
         .example = "2.3",
         BACKSPRING_PLACE(spring.width_mm)},
        {.key = "spring.thickness",
         .form = Form::profile,
         .least = kShortestMm,
         .greatest = kThickestMm,
         .required = true,
         .dimension = true,
         .left_out = "must be given",
         .meaning =
             "Thickness of the spring from back to belly: one number is the same all along, rows "
             "of "
             "[station, thickness] a profile, straight between them. Stations count from the "
             "middle pin, positive towards the pivot; two alike make a step. Set to one number, a "
             "profile becomes the same all along; spring.thickness_scale keeps its shape (`size "
             "--vary spring.thickness` is the older spelling of that).",
         .example = "[[-38, 3.2], [0, 3.8], [36.5, 2.5]]",
         .get = [](const Design& d) { return alike(thicknesses(d)); },
         .set = [](Design& d, double value) { change_thickness(d, [&](double) { return value; }); },
         .numbers = thicknesses,
         .set_numbers = set_profile},
        {.key = "spring.thickness_scale",
         .quantity = Quantity::ratio,
         .least = 0.01,
         .greatest = 100.0,
         .dimension = true,
         .in_file = false,
         .derived = true,
         .left_out = "1",
         .meaning = "Factor on the thickness of the whole profile, which keeps its shape.",
         .example = "1.05",
         .get = [](const Design&) -> std::optional<double> { return 1.0; },
         .set = [](Design& d,
                   double value) { change_thickness(d, [&](double t) { return t * value; }); }},
        {.key = "spring.thickness_offset",
         .least = -kThickestMm,
         .greatest = kThickestMm,
         .dimension = true,
         .in_file = false,
         .derived = true,
         .left_out = "0 mm",
         .meaning = "Added to the thickness of the whole profile, the same at every station.",
         .example = "\"0.05 mm\"",
         .get = [](const Design&) -> std::optional<double> { return 0.0; },
         .set = [](Design& d,
                   double value) { change_thickness(d, [&](double t) { return t + value; }); }},
    };
}

}  // namespace backspring
