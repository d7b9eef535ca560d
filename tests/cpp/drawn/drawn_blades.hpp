#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "backspring/design/design.hpp"
#include "drawn_joint.hpp"

// Designs with several blades drawn by chance. None is a knife that exists.
namespace drawn {

/// How the blades stand on their spring.
struct Arrangement {
    const char* words;
    int beside;  ///< on the first blade's pin, with it
    bool far;    ///< one at the other end
    bool turns;  ///< one pin between the ends, on which the spring turns
};

inline constexpr std::array kArrangements{
    Arrangement{"one at each end, two pins", 1, true, false},
    Arrangement{"one at each end, one pin", 1, true, true},
    Arrangement{"two on one pin", 2, false, false},
    Arrangement{"three on one pin", 3, false, false},
    Arrangement{"two on one pin and one at the other end", 2, true, false},
};

/// Two overhangs as one spring, the second turned round behind the pins.
inline Spring joined(const Spring& front, const Spring& rear, double span_mm) {
    const auto ahead = [](const Station& station) { return station.x_mm >= 0.0; };
    Spring spring = front;
    spring.thickness.clear();
    for (const Station& station : rear.thickness) {
        if (ahead(station))
            spring.thickness.insert(spring.thickness.begin(),
                                    {-span_mm - station.x_mm, station.thickness_mm});
    }
    for (const Station& station : front.thickness) {
        if (!ahead(station)) continue;
        if (station.x_mm > spring.thickness.back().x_mm) spring.thickness.push_back(station);
    }
    spring.support = {.kind = span_mm > 0.0 ? SupportKind::two_pins : SupportKind::clamped,
                      .rear_pin_mm = span_mm,
                      .root_stiffness_nmm_per_rad = 0.0};
    return spring;
}

/// Exactly alike, or different by any size up to 0.1 mm.
inline double draw_difference(Chance& chance) {
    if (chance.share() < 0.4) return 0.0;
    const double size = chance.of_any_size(1e-6, 0.1);
    return chance.share() < 0.5 ? size : -size;
}

/// A blade nearly like another, or with a tang of its own, on the same pin.
inline Blade draw_beside(Chance& chance, const Blade& first) {
    Blade blade = first;
    Tang& tang = blade.tang;
    tang.open_mm += draw_difference(chance);
    tang.closed_mm += draw_difference(chance);
    if (tang.half_stop_mm) *tang.half_stop_mm += draw_difference(chance);
    if (chance.share() < 0.4) tang.corner_open_mm = draw_corner(chance);
    if (chance.share() < 0.4) tang.corner_closed_mm = draw_corner(chance);
    if (tang.kick && chance.share() < 0.3) tang.kick.reset();
    if (tang.kick) tang.kick->height_mm = std::abs(tang.kick->height_mm + draw_difference(chance));
    if (chance.share() < 0.3) {
        tang = draw(chance).tang;
        tang.pivot_mm = first.tang.pivot_mm;
    }
    return blade;
}

inline Blade blade_of(const Parts& parts, End end) {
    Blade blade;
    blade.end = end;
    blade.pad = parts.pad;
    blade.tang = parts.tang;
    blade.fit = parts.fit;
    return blade;
}

inline Design draw_design(Chance& chance, const Arrangement& arrangement) {
    const Parts parts = draw(chance), other = draw(chance);
    Design design;
    design.spring = parts.spring;
    if (arrangement.far) {
        const double span = arrangement.turns ? 0.0 : chance.between(12.0, 40.0);
        design.spring = joined(parts.spring, other.spring, span);
    }
    design.blades = {blade_of(parts, End::front)};
    for (int i = 1; i < arrangement.beside; ++i) {
        design.blades.push_back(draw_beside(chance, design.own()));
    }
    if (arrangement.far) design.blades.push_back(blade_of(other, End::rear));
    for (std::size_t i = 0; i < design.blades.size(); ++i) {
        design.blades[i].name = "blade-" + std::to_string(i);
    }
    return design;
}

}  // namespace drawn
