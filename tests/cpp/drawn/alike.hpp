#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "backspring/action/contact.hpp"
#include "backspring/action/reading.hpp"
#include "backspring/action/stroke.hpp"
#include "drawn_joint.hpp"

// Answers of two joints that must be alike.
namespace drawn {

/// Factors between the answers of two joints.
struct Factors {
    double force = 1.0;
    double length = 1.0;
};

inline bool near(double a, double b, double scale, double share) {
    return std::abs(a - b) <= share * scale;
}

/// Rounding alone: places are found to about 1e-10 of their size where a flat runs along the
/// spring.
inline bool alike(const Contact& a, const Contact& b, const Factors& f) {
    constexpr double share = 1e-9, lever_mm = 10.0;
    const double force = f.force * a.force_n, work = f.force * f.length;
    return near(force, b.force_n, force, share) &&
           near(work * a.energy_nmm, b.energy_nmm, work * a.energy_nmm, 2.0 * share) &&
           near(work * a.torque_nmm, b.torque_nmm,
                work * (lever_mm * a.force_n + std::abs(a.torque_nmm)), share);
}

inline bool alike(const std::optional<double>& a, const std::optional<double>& b, double factor) {
    if (a.has_value() != b.has_value()) return false;
    return !a || near(factor * *a, *b, factor, 1e-8);
}

inline bool alike(const Readings& a, const Readings& b, const Factors& f) {
    return alike(a.closed_mm, b.closed_mm, f.length) &&
           alike(a.half_stop_mm, b.half_stop_mm, f.length);
}

/// Readings of a joint at its own rests.
inline Readings shown(const Joint& joint, bool half_stop) {
    return readings(joint, find_rests(joint, half_stop));
}

/// The first stroke, with friction at the spring.
inline std::optional<Stroke> opening(const Parts& parts) {
    const Action action{.joint = parts.joint(), .probe = {}, .friction = {.spring = 0.12}};
    const Rests rests = find_rests(action.joint, parts.tang.half_stop_mm.has_value());
    if (!rests.closed) return std::nullopt;
    const Contact open = contact_at(action.joint, 180.0);
    return make_stroke(action, *rests.closed, rests.half_stop ? *rests.half_stop : open);
}

/// Whether, closing, the kick's flank runs into the end of the pad: a wall without a height.
inline bool runs_into_pad(const Stroke& stroke) {
    return stroke.closing_peak_torque_nmm > 100.0 * stroke.peak_torque_nmm;
}

inline bool alike(const std::optional<Stroke>& a,
                  const std::optional<Stroke>& b,
                  const Factors& f) {
    if (a.has_value() != b.has_value()) return false;
    if (!a) return true;
    const double work = f.force * f.length, scale = work * a->peak_torque_nmm;
    // A smooth peak is found to 1e-5 of its place, so to 1e-8 of its height.
    const auto same = [&](double Stroke::*figure) {
        return near(work * (*a).*figure, (*b).*figure, scale, 1e-7);
    };
    return same(&Stroke::start_torque_nmm) && same(&Stroke::peak_torque_nmm) &&
           same(&Stroke::energy_up_mj) && same(&Stroke::energy_released_mj) &&
           same(&Stroke::snap_energy_mj) && same(&Stroke::closing_start_torque_nmm) &&
           (runs_into_pad(*a) ? runs_into_pad(*b) : same(&Stroke::closing_peak_torque_nmm)) &&
           near(a->crest_angle_deg, b->crest_angle_deg, 1.0, 1e-8);
}

/// What a joint answers.
struct Answers {
    std::vector<Contact> contacts;
    Readings loaded;
    Readings rear_pin_out;
    std::optional<Stroke> opening;
};

inline Answers answers(const Parts& parts, const std::vector<double>& angles_deg) {
    const Joint joint = parts.joint();
    const bool half_stop = parts.tang.half_stop_mm.has_value();
    Answers all{.contacts = {},
                .loaded = shown(joint, half_stop),
                .rear_pin_out = shown(parts.rear_pin_out(), half_stop),
                .opening = opening(parts)};
    for (const double angle : angles_deg) all.contacts.push_back(contact_at(joint, angle));
    return all;
}

/// How many of them are not alike.
inline int disagreements(const Answers& a, const Answers& b, const Factors& factors) {
    int misses = !alike(a.loaded, b.loaded, factors) + !alike(a.opening, b.opening, factors) +
                 !alike(a.rear_pin_out, b.rear_pin_out, factors);
    for (std::size_t i = 0; i < a.contacts.size(); ++i) {
        misses += !alike(a.contacts[i], b.contacts[i], factors);
    }
    return misses;
}

}  // namespace drawn
