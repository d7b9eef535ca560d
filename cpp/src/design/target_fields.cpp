#include <algorithm>

#include "field_rows.hpp"

namespace backspring {
namespace {

std::vector<double> pulls(const Design& d) {
    std::vector<double> both;
    for (const auto& pull : {d.targets.pull_low_n, d.targets.pull_high_n}) {
        if (pull) both.push_back(*pull);
    }
    return both;
}

void add_friction(Design& d, double value) {
    d.friction.spring = std::max(0.0, d.friction.spring + value);
    d.friction.pivot = std::max(0.0, d.friction.pivot + value);
}

std::vector<Field> friction_rows() {
    return {
        {.key = "friction.spring",
         .quantity = Quantity::ratio,
         .least = 0.0,
         .greatest = 1.0,
         .dimension = true,
         .left_out = "0",
         .meaning = "Coefficient of friction of the tang on the spring.",
         .example = "0.12",
         BACKSPRING_PLACE(friction.spring)},
        {.key = "friction.pivot",
         .quantity = Quantity::ratio,
         .least = 0.0,
         .greatest = 1.0,
         .dimension = true,
         .left_out = "0",
         .meaning = "Coefficient of friction of the blade on the pivot pin.",
         .example = "0.12",
         BACKSPRING_PLACE(friction.pivot)},
        {.key = "friction.offset",
         .quantity = Quantity::ratio,
         .least = -1.0,
         .greatest = 1.0,
         .dimension = true,
         .in_file = false,
         .derived = true,
         .left_out = "0",
         .meaning = "Added to both coefficients of friction, neither of which falls below 0.",
         .example = "0.04",
         .get = [](const Design&) -> std::optional<double> { return 0.0; },
         .set = add_friction},
        {.key = "friction.pivot_pin",
         .least = 0.0,
         .greatest = kThickestMm,
         .dimension = true,
         .left_out = "0 mm",
         .meaning = "Diameter of the pivot pin.",
         .example = "3.2",
         BACKSPRING_PLACE(friction.pivot_pin_mm)},
        {.key = "friction.bending",
         .form = Form::flag,
         .quantity = Quantity::count,
         .least = 0.0,
         .greatest = 1.0,
         .left_out = "false: its size is told, and it is not in the pull",
         .meaning = "Whether friction on the spring's face also bends the spring: that makes "
                    "opening a little harder and closing a little easier.",
         .example = "true",
         .get = [](const Design& d) -> std::optional<double> {
             return d.friction.bends ? 1.0 : 0.0;
         },
         .set = [](Design& d, double value) { d.friction.bends = value != 0.0; }},
    };
}

}  // namespace

std::vector<Field> detail::target_fields() {
    std::vector<Field> rows = friction_rows();
    const std::vector<Field> targets{
        {.key = "targets.pull",
         .form = Form::pair,
         .quantity = Quantity::force,
         .least = 0.001,
         .greatest = 1000.0,
         .left_out = "not judged",
         .meaning = "Least and greatest peak pull at the nail nick while the blade is opened.",
         .example = "[\"4 lbf\", \"6 lbf\"]",
         .numbers = pulls,
         .set_numbers =
             [](Design& d, std::span<const double> pull) {
                 d.targets.pull_low_n = pull[0];
                 d.targets.pull_high_n = pull[1];
             }},
        {.key = "targets.yield_margin",
         .quantity = Quantity::ratio,
         .least = 0.01,
         .greatest = 100.0,
         .left_out = "1 at the likely strength",
         .meaning = "Least yield stress over the worst stress of the travel.",
         .example = "1.15",
         BACKSPRING_PLACE(targets.yield_margin)},
        {.key = "targets.reading",
         .least = 1e-4,
         .greatest = kThickestMm,
         .left_out = "not judged",
         .meaning = "Greatest distance of the back from flush at the dial, loaded, proud or low.",
         .example = "\"0.001 in\"",
         BACKSPRING_PLACE(targets.reading_mm)},
        {.key = "targets.openings",
         .quantity = Quantity::count,
         .least = 1.0,
         .greatest = 1e9,
         .left_out = "no target; the verdict then tells of 100000",
         .meaning = "Openings that the spring must outlast.",
         .example = "100000",
         BACKSPRING_PLACE(targets.openings)},
        {.key = "targets.edge_gap",
         .least = 1e-4,
         .greatest = kThickestMm,
         .left_out = "not judged: a rap is a note",
         .meaning = "Least gap left between edge and spring as a hand eases the blade shut.",
         .example = "0.2",
         BACKSPRING_PLACE(targets.edge_gap_mm)},
    };
    rows.insert(rows.end(), targets.begin(), targets.end());
    return rows;
}

}  // namespace backspring
