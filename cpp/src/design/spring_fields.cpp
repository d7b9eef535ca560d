#include "field_rows.hpp"

namespace backspring {
namespace {

std::vector<double> thicknesses(const Design& d) {
    std::vector<double> all;
    all.reserve(d.spring.thickness.size());
    for (const Station& station : d.spring.thickness) all.push_back(station.thickness_mm);
    return all;
}

void set_profile(Design& d, std::span<const double> rows) {
    d.spring.thickness.clear();
    for (std::size_t i = 0; i + 1 < rows.size(); i += 2) {
        d.spring.thickness.push_back({.x_mm = rows[i], .thickness_mm = rows[i + 1]});
    }
}

std::vector<double> widths(const Design& d) {
    if (d.spring.widths.empty()) return {d.spring.width_mm};
    std::vector<double> all;
    for (const WidthStation& station : d.spring.widths) all.push_back(station.width_mm);
    return all;
}

void set_width(Design& d, double value) {
    d.spring.width_mm = value;
    d.spring.widths.clear();
}

void set_widths(Design& d, std::span<const double> rows) {
    if (rows.size() <= 2) return set_width(d, rows.back());
    d.spring.widths.clear();
    for (std::size_t i = 0; i + 1 < rows.size(); i += 2) {
        d.spring.widths.push_back({.x_mm = rows[i], .width_mm = rows[i + 1]});
    }
    d.spring.width_mm = width_at_mm(d.spring, 0.0);
}

void add_to_width(Design& d, double mm) {
    d.spring.width_mm += mm;
    for (WidthStation& station : d.spring.widths) station.width_mm += mm;
}

std::vector<double> heights(const Design& d) {
    std::vector<double> all;
    for (const MidLinePoint& point : d.spring.mid_line) all.push_back(point.height_mm);
    return all;
}

void set_mid_line(Design& d, std::span<const double> rows) {
    d.spring.mid_line.clear();
    for (std::size_t i = 0; i + 1 < rows.size(); i += 2) {
        d.spring.mid_line.push_back({.x_mm = rows[i], .height_mm = rows[i + 1]});
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
         .form = Form::profile,
         .least = kShortestMm,
         .greatest = kThickestMm,
         .required = true,
         .dimension = true,
         .left_out = "must be given",
         .meaning =
             "Stock thickness of the spring, from liner to liner: one number, or rows of [station, "
             "width] for a spring that tapers or whose sides are relieved, straight between them, "
             "even beyond them; two alike make a step. Set to one number, rows become the same all "
             "along; `size --vary spring.width` keeps their shape.",
         .example = "2.3",
         .get = [](const Design& d) { return alike(widths(d)); },
         .set = set_width,
         .numbers = widths,
         .set_numbers = set_widths},
        {.key = "spring.width_offset",
         .least = -kThickestMm,
         .greatest = kThickestMm,
         .dimension = true,
         .in_file = false,
         .derived = true,
         .left_out = "0 mm",
         .meaning = "Added to the width at every station.",
         .example = "\"0.02 mm\"",
         .get = [](const Design&) -> std::optional<double> { return 0.0; },
         .set = add_to_width},
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
        {.key = "spring.mid_line",
         .form = Form::profile,
         .least = -kThickestMm,
         .greatest = kThickestMm,
         .left_out = "straight along the pad",
         .meaning =
             "Mid-line of a curved spring: rows of [station, height], height from any line along "
             "the pad, positive towards the back; straight between them, level beyond them. "
             "Thickness is then measured square to the stations' line, half to each side of the "
             "mid-line. Grinding a face moves it by half of what comes off. Left out: the thrust "
             "that "
             "two snug pins take where it is bowed between them, and the lever of a leaning force.",
         .example = "[[-34, 0], [0, 2.4], [14, 2.6], [27, 0]]",
         .numbers = heights,
         .set_numbers = set_mid_line},
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
