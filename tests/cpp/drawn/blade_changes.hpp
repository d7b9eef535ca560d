#pragma once

#include "blade_relations.hpp"

// Relations between the answers of a design and of one that is changed.
namespace drawn {

inline constexpr double kLeverMm = 10.0;

inline double total_force_n(const std::vector<Contact>& blades) {
    double sum = 0.0;
    for (const Contact& blade : blades) sum += blade.force_n;
    return sum;
}

int width(const BladesDraw& draw);
int youngs_modulus(const BladesDraw& draw);
int sizes_twice(const BladesDraw& draw);
int stations(const BladesDraw& draw);
int another_order(const BladesDraw& draw);
int seen_from_others(const BladesDraw& draw);

}  // namespace drawn
