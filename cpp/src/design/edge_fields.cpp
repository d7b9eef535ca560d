#include <cstddef>

#include "field_rows.hpp"

namespace backspring {
namespace {

std::vector<double> edge_numbers(const Design& d) {
    std::vector<double> all;
    for (const BladePoint& point : d.own().blade.edge) {
        all.push_back(point.u_mm);
        all.push_back(point.w_mm);
    }
    return all;
}

void set_edge(Design& d, std::span<const double> values) {
    d.own().blade.edge.clear();
    for (std::size_t i = 0; i + 1 < values.size(); i += 2) {
        d.own().blade.edge.push_back({values[i], values[i + 1]});
    }
}

std::vector<double> tip_numbers(const Design& d) {
    if (!d.own().blade.tip) return {};
    return {d.own().blade.tip->u_mm, d.own().blade.tip->w_mm};
}

void set_tip(Design& d, std::span<const double> values) {
    d.own().blade.tip = BladePoint{values[0], values[1]};
}

}  // namespace

std::vector<Field> detail::edge_fields() {
    return {
        {.key = "blade.edge",
         .form = Form::points,
         .least = -kLongestMm,
         .greatest = kLongestMm,
         .of_blade = true,
         .left_out = "not given: no gap between edge and spring is worked out",
         .meaning = "The edge as corners of a line, each [u, w] from the pivot with the blade "
                    "open: u ahead along the spring, w outward, so that the edge has w below 0.",
         .example = "[[9, -4.0], [60, -4.2], [75, 2.0]]",
         .numbers = edge_numbers,
         .set_numbers = set_edge},
        {.key = "blade.tip",
         .form = Form::pair,
         .least = -kLongestMm,
         .greatest = kLongestMm,
         .of_blade = true,
         .left_out = "the corner of the edge that is farthest ahead, or else at the blade's length "
                     "on a line through the pivot",
         .meaning = "The tip as [u, w], like the corners of the edge.",
         .example = "[75, 2.0]",
         .numbers = tip_numbers,
         .set_numbers = set_tip},
        {.key = "blade.well",
         .least = kShortestMm,
         .greatest = 200.0,
         .of_blade = true,
         .left_out = "not given: the tip's height is told against where it stands now",
         .meaning = "Depth of the handle at the tip of the closed blade: from the rim down to the "
                    "line of the spring's belly, unbent and carried on straight.",
         .example = "9.5",
         BACKSPRING_PLACE(own().blade.well_mm)},
    };
}

}  // namespace backspring
