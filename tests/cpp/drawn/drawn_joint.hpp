#pragma once

#include <cmath>
#include <cstdint>
#include <optional>

#include "backspring/action/joint.hpp"
#include "backspring/spring/spring.hpp"

// Joints drawn by chance, the same ones each time. None is a knife that exists.
namespace drawn {

using namespace backspring;

/// Chance with a fixed start: the same numbers with every compiler.
class Chance {
  public:
    explicit Chance(std::uint64_t seed) : state_(seed) {}

    /// Even between 0 and 1 (splitmix64).
    double share() {
        std::uint64_t z = (state_ += 0x9e3779b97f4a7c15U);
        z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
        z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
        return static_cast<double>((z ^ (z >> 31U)) >> 11U) * 0x1p-53;
    }

    double between(double low, double high) { return low + (high - low) * share(); }

    /// Every size between two alike: as many from 0.01 to 0.1 as from 0.1 to 1.
    double of_any_size(double low, double high) { return low * std::pow(high / low, share()); }

  private:
    std::uint64_t state_;
};

/// What a joint is made of.
struct Parts {
    Spring spring;
    Pad pad;
    Tang tang;
    Fit fit;

    [[nodiscard]] Joint joint() const { return make_joint(spring, pad, tang, fit); }
    [[nodiscard]] Joint rear_pin_out() const { return make_unloaded_joint(pad, tang, fit); }
};

inline Spring draw_spring(Chance& chance) {
    Spring spring;
    const double root = chance.between(2.8, 4.2), tip = chance.between(1.8, 2.8);
    const double end = chance.between(33.0, 42.0), rear = chance.between(25.0, 45.0);
    const double knee = chance.between(5.0, 25.0);
    spring.thickness = {{-rear - 4.0, chance.between(2.5, 3.8)},
                        {0.0, root},
                        {knee, chance.between(tip, root)},
                        {end, tip}};
    spring.width_mm = chance.between(1.5, 4.0);
    const double kind = chance.share();
    spring.support.kind = kind < 0.6   ? SupportKind::two_pins
                          : kind < 0.8 ? SupportKind::clamped
                                       : SupportKind::root_stiffness;
    if (kind < 0.6) spring.support.rear_pin_mm = rear;
    if (kind >= 0.8) spring.support.root_stiffness_nmm_per_rad = chance.of_any_size(3e4, 3e6);
    if (chance.share() < 0.5)
        spring.holes = {{0.0, chance.between(1.0, 2.2), 0.0, HoleFor::middle_pin}};
    return spring;
}

inline Pad draw_pad(Chance& chance, double end_mm) {
    return {end_mm - chance.between(7.0, 20.0), end_mm};
}

inline Elastic draw_elastic(Chance& chance) {
    return {.youngs_modulus_mpa = chance.between(190e3, 215e3), .poisson = 0.29};
}

/// A kick of any size, from one that never touches to one that keeps the tang off the spring; its
/// nose is no thicker than the tang.
inline Kick draw_kick(Chance& chance, const Tang& tang, double pad_behind_pivot) {
    const double height = chance.of_any_size(1e-7, 3.0);
    return {.distance_mm = chance.between(0.5, 1.2 * pad_behind_pivot),
            .height_mm = height,
            .radius_mm = chance.of_any_size(0.005, 0.5 * (tang.open_mm + tang.closed_mm + height))};
}

inline double draw_corner(Chance& chance) {
    return chance.share() < 0.1 ? 0.0 : chance.of_any_size(0.01, 3.5);
}

inline Parts draw(Chance& chance) {
    Parts parts;
    parts.spring = draw_spring(chance);
    const Pad& pad = parts.pad = draw_pad(chance, parts.spring.thickness.back().x_mm);
    parts.spring.elastic = draw_elastic(chance);
    Tang& tang = parts.tang;
    tang.pivot_mm = chance.between(pad.end_mm - 6.0, pad.end_mm - 2.5);
    tang.open_mm = chance.between(3.8, 5.5);
    if (chance.share() < 0.75) tang.half_stop_mm = tang.open_mm + chance.between(-0.1, 0.25);
    tang.closed_mm = tang.open_mm + chance.between(-0.1, 0.25);
    tang.corner_open_mm = draw_corner(chance);
    tang.corner_closed_mm = draw_corner(chance);
    tang.front_mm = chance.between(3.0, 8.0);
    if (chance.share() < 0.85) tang.kick = draw_kick(chance, tang, tang.pivot_mm - pad.start_mm);
    parts.fit = {.preload_mm = chance.of_any_size(0.1, 1.6),
                 .dial_mm = tang.pivot_mm + chance.between(-2.0, 2.5)};
    return parts;
}

}  // namespace drawn
