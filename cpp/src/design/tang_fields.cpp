#include <cmath>
#include <limits>

#include "backspring/tang/tang.hpp"
#include "field_rows.hpp"

// A number of the kick, which is made when the first of its numbers is set.
#define BACKSPRING_KICK(name)                                            \
    .get = [](const Design& d) { return of_kick(d, &Kick::name##_mm); }, \
    .set = [](Design& d, double value) { kick_of(d).name##_mm = value; }

namespace backspring {
namespace {

constexpr double kNotYet = std::numeric_limits<double>::quiet_NaN();

std::optional<double> of_kick(const Design& d, double Kick::*member) {
    return d.own().tang.kick ? std::optional((*d.own().tang.kick).*member) : std::nullopt;
}

Kick& kick_of(Design& d) {
    if (!d.own().tang.kick) d.own().tang.kick = Kick{kNotYet, kNotYet, kNotYet};
    return *d.own().tang.kick;
}

std::vector<double> corners(const Design& d) {
    if (!d.own().tang.outline.empty()) return {};
    return {d.own().tang.corner_open_mm, d.own().tang.corner_closed_mm};
}

std::optional<double> front(const Design& d) {
    return d.own().tang.outline.empty() ? std::optional(d.own().tang.front_mm) : std::nullopt;
}

std::vector<double> outline_rows(const Design& d) {
    std::vector<double> rows;
    for (const OutlinePoint& point : d.own().tang.outline) {
        rows.insert(rows.end(), {point.u_mm, point.w_mm, point.bulge});
    }
    return rows;
}

void set_outline_rows(Design& d, std::span<const double> rows) {
    d.own().tang.outline.clear();
    for (std::size_t i = 0; i + 2 < rows.size(); i += 3) {
        d.own().tang.outline.push_back({rows[i], rows[i + 1], rows[i + 2]});
    }
}

std::optional<double> round_end(const Design& d) {
    if (d.own().tang.half_stop_mm || !d.own().tang.outline.empty()) return {};
    const double radius = round_end_radius_mm(d.own().tang);
    return d.own().tang.round_end_mm || std::isfinite(radius) ? std::optional(radius)
                                                              : std::nullopt;
}

std::vector<Field> kick_rows() {
    return {
        {.key = "tang.kick.distance",
         .least = kShortestMm,
         .greatest = 100.0,
         .required = true,
         .dimension = true,
         .of_blade = true,
         .left_out = "must be given with a kick",
         .meaning = "From the pivot ahead to the middle of the kick's nose, blade open, along the "
                    "spring.",
         .example = "8.0",
         BACKSPRING_KICK(distance)},
        {.key = "tang.kick.height",
         .least = 0.001,
         .greatest = kThickestMm,
         .required = true,
         .dimension = true,
         .of_blade = true,
         .left_out = "must be given with a kick",
         .meaning = "From the closed face out to the top of the kick's nose.",
         .example = "0.2",
         BACKSPRING_KICK(height)},
        {.key = "tang.kick.radius",
         .least = kThinnestMm,
         .greatest = kThickestMm,
         .required = true,
         .dimension = true,
         .of_blade = true,
         .left_out = "must be given with a kick",
         .meaning = "Radius of the kick's nose.",
         .example = "0.5",
         BACKSPRING_KICK(radius)},
    };
}

}  // namespace

std::vector<Field> detail::tang_fields() {
    std::vector<Field> rows{
        {.key = "tang.pivot",
         .least = 0.5,
         .greatest = kLongestMm,
         .required = true,
         .dimension = true,
         .of_blade = true,
         .left_out = "must be given",
         .meaning = "From the centre of the middle pin to the centre of the pivot, along the "
                    "spring.",
         .example = "32",
         BACKSPRING_PLACE(own().tang.pivot_mm)},
        {.key = "tang.open",
         .least = kShortestMm,
         .greatest = 100.0,
         .required = true,
         .dimension = true,
         .of_blade = true,
         .left_out = "must be given; with an outline as drawn",
         .meaning = "From the centre of the pivot square to the face that bears on the spring with "
                    "the blade open.",
         .example = "4.5",
         BACKSPRING_PLACE(own().tang.open_mm)},
        {.key = "tang.half_stop",
         .least = kShortestMm,
         .greatest = 100.0,
         .dimension = true,
         .of_blade = true,
         .left_out = "no half-stop: the tang's end is round; with an outline as drawn",
         .meaning = "From the centre of the pivot square to the face that bears at the half-stop.",
         .example = "4.62",
         BACKSPRING_PLACE(own().tang.half_stop_mm)},
        {.key = "tang.closed",
         .least = kShortestMm,
         .greatest = 100.0,
         .required = true,
         .dimension = true,
         .of_blade = true,
         .left_out = "must be given; with an outline as drawn",
         .meaning = "From the centre of the pivot square to the face that bears with the blade "
                    "closed.",
         .example = "4.60",
         BACKSPRING_PLACE(own().tang.closed_mm)},
        {.key = "tang.corner_radius",
         .form = Form::one_or_two,
         .least = 0.0,
         .greatest = 100.0,
         .required = true,
         .dimension = true,
         .of_blade = true,
         .left_out = "must be given; not with an outline",
         .meaning = "Radius of the tang's rear corners: one number for both, or [between open face "
                    "and half-stop, between half-stop and closed face].",
         .example = "0.7",
         .get = [](const Design& d) { return alike(corners(d)); },
         .set =
             [](Design& d, double value) {
                 d.own().tang.corner_open_mm = d.own().tang.corner_closed_mm = value;
             },
         .numbers = corners,
         .set_numbers =
             [](Design& d, std::span<const double> radii) {
                 d.own().tang.corner_open_mm = radii[0];
                 d.own().tang.corner_closed_mm = radii[1];
             }},
        {.key = "tang.front",
         .least = kShortestMm,
         .greatest = 100.0,
         .required = true,
         .dimension = true,
         .of_blade = true,
         .left_out = "must be given; not with an outline",
         .meaning = "From the centre of the pivot ahead to the end of the open face, along it.",
         .example = "5.0",
         .get = front,
         .set = [](Design& d, double value) { d.own().tang.front_mm = value; }},
        {.key = "tang.round_end",
         .least = kShortestMm,
         .greatest = 200.0,
         .dimension = true,
         .of_blade = true,
         .left_out = "the circle about the corners of a square end",
         .meaning = "Radius of the round end of a tang with no half-stop, from the centre of the "
                    "pivot.",
         .example = "6.2",
         .get = round_end,
         .set = [](Design& d, double value) { d.own().tang.round_end_mm = value; }},
        {.key = "tang.outline",
         .form = Form::outline,
         .least = -kLongestMm,
         .greatest = kLongestMm,
         .of_blade = true,
         .left_out = "from faces and corners",
         .meaning = "The tang's outline where it is of no usual kind, blade open and the pivot at "
                    "[0, 0]: corners [x, y], x ahead along the spring and y outward, or [x, y, "
                    "bulge] where an arc goes on from it (tangent of a quarter of its angle); all "
                    "round counterclockwise, without a kick. Instead of corner_radius, front and "
                    "round_end. Its flats are its faces: open, half_stop and closed are then how "
                    "much of each is left, as drawn where they are left out.",
         .example = "[[6, 4.5], [-2, 4.5, 0.25], [-4.4, 0], [-3, -4.6], [9, -4.6]]",
         .numbers = outline_rows,
         .set_numbers = set_outline_rows},
        {.key = "tang.pivot_clearance",
         .least = 0.0,
         .greatest = kMostClearanceMm,
         .of_blade = true,
         .left_out = "0 mm",
         .meaning = "How much wider the tang's hole or bushing is than the pivot pin, across. Load "
                    "takes it up and half of it off the preload.",
         .example = "0.02",
         BACKSPRING_PLACE(own().tang.pivot_clearance_mm)},
    };
    const std::vector<Field> kick = kick_rows();
    rows.insert(rows.end(), kick.begin(), kick.end());
    return rows;
}

}  // namespace backspring

#undef BACKSPRING_KICK
