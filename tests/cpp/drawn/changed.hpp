#pragma once

#include "drawn_joint.hpp"

// The same joint made otherwise.
namespace drawn {

inline Parts wider(Parts parts, double k) {
    parts.spring.width_mm *= k;
    parts.spring.support.root_stiffness_nmm_per_rad *= k;
    return parts;
}

inline Parts stiffer(Parts parts, double k) {
    parts.spring.elastic.youngs_modulus_mpa *= k;
    parts.spring.support.root_stiffness_nmm_per_rad *= k;
    return parts;
}

inline Spring larger(Spring spring, double k) {
    for (Station& station : spring.thickness)
        station = {k * station.x_mm, k * station.thickness_mm};
    for (Hole& hole : spring.holes)
        hole = {k * hole.center_mm, k * hole.diameter_mm, 0.0, hole.pin};
    spring.width_mm *= k;
    spring.support.rear_pin_mm *= k;
    spring.support.root_stiffness_nmm_per_rad *= k * k * k;
    return spring;
}

inline Tang larger(Tang tang, double k) {
    for (double* size : {&tang.pivot_mm, &tang.open_mm, &tang.closed_mm, &tang.corner_open_mm,
                         &tang.corner_closed_mm, &tang.front_mm}) {
        *size *= k;
    }
    if (tang.half_stop_mm) *tang.half_stop_mm *= k;
    if (tang.kick) {
        const Kick& kick = *tang.kick;
        tang.kick = Kick{k * kick.distance_mm, k * kick.height_mm, k * kick.radius_mm};
    }
    return tang;
}

inline Parts larger(const Parts& parts, double k) {
    return {larger(parts.spring, k),
            {k * parts.pad.start_mm, k * parts.pad.end_mm},
            larger(parts.tang, k),
            Fit{.preload_mm = k * parts.fit.preload_mm, .dial_mm = k * parts.fit.dial_mm}};
}

/// With stations added halfway along each straight.
inline Parts with_more_stations(Parts parts) {
    Profile more;
    for (const Station& station : parts.spring.thickness) {
        if (!more.empty()) {
            const Station& last = more.back();
            more.push_back({.x_mm = 0.5 * (last.x_mm + station.x_mm),
                            .thickness_mm = 0.5 * (last.thickness_mm + station.thickness_mm)});
        }
        more.push_back(station);
    }
    parts.spring.thickness = more;
    return parts;
}

/// With a square tang, its faces and corners alike, so that a quarter turn is no change.
inline Parts with_square_tang(Parts parts) {
    Tang& tang = parts.tang;
    tang.half_stop_mm = tang.closed_mm = tang.open_mm;
    tang.corner_closed_mm = tang.corner_open_mm;
    tang.front_mm = 2.0 * tang.open_mm;
    tang.kick.reset();
    return parts;
}

}  // namespace drawn
