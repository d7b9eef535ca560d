#include "drawn/blade_changes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "backspring/action/rest.hpp"
#include "backspring/core/angle.hpp"
#include "drawn/alike.hpp"
#include "drawn/blade_bounds.hpp"
#include "drawn/changed.hpp"
#include "drawn/held.hpp"

namespace drawn {
namespace {

/// Rounding alone, as a share of all forces together.
bool alike(const Contact& a, const Contact& b, const Factors& f, double force, double share) {
    const double work = f.force * f.length;
    return near(f.force * a.force_n, b.force_n, f.force * force, share) &&
           near(work * a.energy_nmm, b.energy_nmm, work * a.energy_nmm + 1e-12, 2.0 * share) &&
           near(work * a.torque_nmm, b.torque_nmm,
                work * (kLeverMm * force + std::abs(a.torque_nmm)), share);
}

/// All touches on the spring, along it.
std::vector<Touch> touches_of(const std::vector<Contact>& blades) {
    std::vector<Touch> touches;
    for (const Contact& blade : blades)
        touches.insert(touches.end(), blade.all().begin(), blade.all().end());
    std::ranges::sort(touches, {}, &Touch::x_mm);
    return touches;
}

/// Whether the spring is touched alike, whichever bears of blades that are alike there.
bool touched_alike(const std::vector<Contact>& a, const std::vector<Contact>& b, const Factors& f) {
    const double force = f.force * (total_force_n(a) + 1e-6);
    const auto same = [&](const Touch& s, const Touch& t) {
        return near(f.force * s.force_n, t.force_n, force, 1e-8) &&
               near(f.length * s.x_mm, t.x_mm, f.length * kLeverMm, 1e-8);
    };
    return std::ranges::equal(touches_of(a), touches_of(b), same) &&
           near(f.force * f.length * a[0].energy_nmm, b[0].energy_nmm, b[0].energy_nmm, 1e-11);
}

bool all_alike(const std::vector<Contact>& a, const std::vector<Contact>& b, const Factors& f) {
    const double force = total_force_n(a) + 1e-6;
    bool each = true;
    for (std::size_t i = 0; i < a.size(); ++i) each = each && alike(a[i], b[i], f, force, 1e-8);
    return each || touched_alike(a, b, f);
}

/// Of blades that seat, those alike may bear one for the other: compared together.
bool seated_alike(const std::vector<Contact>& a, const std::vector<Contact>& b, const Factors& f) {
    const double force = total_force_n(a) + 1e-6;
    return alike(a[0], b[0], f, force, 1e-7) &&
           near(f.force * total_force_n(a), total_force_n(b), f.force * force, 1e-7);
}

int disagreements(const BladesDraw& draw, const Design& other, const Factors& f) {
    int misses = 0;
    for (std::size_t i = 0; i < draw.angles_deg.size(); ++i) {
        misses += !all_alike(draw.held[i], held(other, draw.angles_deg[i]), f);
    }
    for (std::size_t i = 0; i < draw.turned_deg.size(); ++i) {
        misses += !seated_alike(draw.seated[i], seated(other, draw.turned_deg[i]), f);
    }
    return misses;
}

}  // namespace

int width(const BladesDraw& draw) {
    Design other = draw.design;
    other.spring.width_mm *= 1.25;
    other.spring.support.root_stiffness_nmm_per_rad *= 1.25;
    return disagreements(draw, other, {.force = 1.25, .length = 1.0});
}

int youngs_modulus(const BladesDraw& draw) {
    Design other = draw.design;
    other.spring.elastic.youngs_modulus_mpa *= 1.25;
    other.spring.support.root_stiffness_nmm_per_rad *= 1.25;
    return disagreements(draw, other, {.force = 1.25, .length = 1.0});
}

int sizes_twice(const BladesDraw& draw) {
    Design other = draw.design;
    other.spring = larger(other.spring, 2.0);
    for (Blade& blade : other.blades) {
        blade.pad = {2.0 * blade.pad.start_mm, 2.0 * blade.pad.end_mm};
        blade.tang = larger(blade.tang, 2.0);
        blade.fit.preload_mm *= 2.0;
        blade.fit.dial_mm *= 2.0;
    }
    return disagreements(draw, other, {.force = 4.0, .length = 2.0});
}

int stations(const BladesDraw& draw) {
    Design other = draw.design;
    other.spring = with_more_stations(Parts{other.spring, {}, {}, {}}).spring;
    return disagreements(draw, other, {});
}

int another_order(const BladesDraw& draw) {
    Design other = draw.design;
    std::reverse(other.blades.begin() + 1, other.blades.end());
    int misses = 0;
    for (std::size_t i = 0; i < draw.angles_deg.size(); ++i) {
        std::vector<double> angles = draw.angles_deg[i];
        std::reverse(angles.begin() + 1, angles.end());
        std::vector<Contact> found = held(other, angles);
        std::reverse(found.begin() + 1, found.end());
        misses += !all_alike(draw.held[i], found, {});
    }
    for (std::size_t i = 0; i < draw.turned_deg.size(); ++i) {
        misses += !seated_alike(draw.seated[i], seated(other, draw.turned_deg[i]), {});
    }
    return misses;
}

int seen_from_others(const BladesDraw& draw) {
    int misses = 0;
    for (std::size_t k = 1; k < draw.design.blades.size(); ++k) {
        const Design other = seen_from(draw.design, k);
        for (std::size_t i = 0; i < draw.angles_deg.size(); ++i) {
            std::vector<Contact> found = held(other, angles_from(draw.angles_deg[i], k));
            std::rotate(found.begin(), found.begin() + 1,
                        found.begin() + static_cast<std::ptrdiff_t>(k) + 1);
            misses += !all_alike(draw.held[i], found, {});
        }
    }
    return misses;
}

}  // namespace drawn
