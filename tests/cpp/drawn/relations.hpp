#pragma once

#include <optional>
#include <span>
#include <vector>

#include "alike.hpp"

// What must hold between the answers of two joints, or of one, whatever its numbers are.
namespace drawn {

/// A joint, the angles it is looked at, and what it answers.
struct Draw {
    Parts parts;
    std::vector<double> angles_deg;
    Answers answers;
};

/// Angles all over the travel, and half of them within a degree of where the closed blade rests:
/// there kick and body bear together.
Draw draw_with_angles(Chance& chance, int angles);

/// Something that must hold.
struct Relation {
    const char* claim;
    int (*misses)(const Draw& draw);  ///< how often it does not hold
};

/// All of them.
std::span<const Relation> relations();

/// How many of the angles have two touches.
int two_touches(const Draw& draw);

}  // namespace drawn
