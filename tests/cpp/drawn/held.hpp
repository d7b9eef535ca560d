#pragma once

#include <algorithm>
#include <vector>

#include "backspring/action/contact.hpp"
#include "backspring/design/joint_of.hpp"

// Blades of a design held at angles.
namespace drawn {

using namespace backspring;

/// The own blade's joint with every other blade held.
inline Joint held_joint(const Design& design, const std::vector<double>& angles_deg) {
    Joint joint = make_joint(design);
    const std::vector<std::size_t> places = blades_in_joint(design);
    std::size_t i = 1;
    const auto hold = [&](Neighbour& other) { other.standing = {angles_deg[places[i++]], 0.0}; };
    for (Neighbour& other : joint.beside) hold(other);
    if (joint.far_end) {
        for (Neighbour& other : joint.far_end->blades) hold(other);
    }
    return joint;
}

/// Every blade of the joint as it bears, in the design's order.
inline std::vector<Contact> in_order(const Design& design,
                                     const Joint& joint,
                                     const Contact& contact) {
    const std::vector<std::size_t> places = blades_in_joint(design);
    const std::vector<Contact> blades = blades_of(joint, contact);
    std::vector<Contact> ordered(blades.size());
    for (std::size_t i = 0; i < blades.size(); ++i) ordered[places[i]] = blades[i];
    return ordered;
}

inline std::vector<Contact> held(const Design& design, const std::vector<double>& angles_deg) {
    const Joint joint = held_joint(design, angles_deg);
    return in_order(design, joint, contact_at(joint, angles_deg[0]));
}

/// The own blade held, the others free to seat closed.
inline std::vector<Contact> seated(const Design& design, double angle_deg) {
    const Joint joint = make_joint(design);
    return in_order(design, joint, contact_at(joint, angle_deg));
}

/// Angles in the order in which seen_from() lists the blades.
inline std::vector<double> angles_from(std::vector<double> angles_deg, std::size_t blade) {
    const auto first = angles_deg.begin(), chosen = first + static_cast<std::ptrdiff_t>(blade);
    std::rotate(first, chosen, chosen + 1);
    return angles_deg;
}

}  // namespace drawn
