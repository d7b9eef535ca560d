#pragma once

#include <span>
#include <vector>

#include "backspring/action/contact.hpp"
#include "drawn_blades.hpp"

// What must hold between the answers of two designs with several blades, or of one.
namespace drawn {

/// A design, the angles its blades are looked at, and what it answers.
struct BladesDraw {
    Design design;
    std::vector<std::vector<double>> angles_deg;  ///< all blades held
    std::vector<double> turned_deg;               ///< the first held, the others free to seat
    std::vector<std::vector<Contact>> held;       ///< of each row of angles
    std::vector<std::vector<Contact>> seated;     ///< of each angle turned to
};

/// Angles all over the travel, near the rests, and of all blades together.
BladesDraw draw_blades(Chance& chance, const Arrangement& arrangement, int rows);

/// Goes on to the next draw, and answers nothing.
void pass_over(Chance& chance, const Arrangement& arrangement, int rows);

/// Angles turned to at which every other blade has a rest; the others say nothing of resting.
int count_rests(const BladesDraw& draw);

/// Something that must hold.
struct BladesRelation {
    const char* claim;
    int (*misses)(const BladesDraw& draw);  ///< how often it does not hold
};

/// All of them.
std::span<const BladesRelation> blade_relations();

}  // namespace drawn
