#include "slotted_section.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/core/root.hpp"

namespace backspring {
namespace {

/// Force and moment about the neutral axis, and how they grow with axis (z) and core (y).
struct Sums {
    double force = 0.0, moment = 0.0;
    double force_by_z = 0.0, force_by_y = 0.0;
    double moment_by_z = 0.0, moment_by_y = 0.0;
};

// Stress over yield stress is u/y, cut off at 1, with u measured from the neutral axis. These are
// its integrals from the axis to an edge of a ligament.
void add_edge(Sums& sums, double u, double y, double sign) {
    const double a = std::abs(u), side = u < 0.0 ? -1.0 : 1.0;
    const bool elastic = a < y;
    const double q = elastic ? a / y : 1.0;
    sums.force += sign * (elastic ? 0.5 * a * q : a - 0.5 * y);
    sums.moment += sign * side * (elastic ? a * a * q / 3.0 : 0.5 * a * a - y * y / 6.0);
    sums.force_by_z -= sign * side * q;
    sums.force_by_y -= sign * 0.5 * q * q;
    sums.moment_by_z -= sign * a * q;
    sums.moment_by_y -= sign * side * (elastic ? a * q * q : y) / 3.0;
}

Sums sums_at(const Slot& slot, double neutral, double core) {
    const double half = 0.5 * slot.thickness_mm, gap = 0.5 * slot.chord_mm;
    Sums sums;
    add_edge(sums, half - neutral, core, 1.0);
    add_edge(sums, slot.offset_mm + gap - neutral, core, -1.0);
    add_edge(sums, slot.offset_mm - gap - neutral, core, 1.0);
    add_edge(sums, -half - neutral, core, -1.0);
    return sums;
}

/// Newton steps from an axis and a core; nothing where they lead nowhere.
std::optional<PlasticCore> newton(const Slot& slot, double moment, double z, double y) {
    constexpr double tolerance = 1e-12;
    const double scale = slot.thickness_mm;
    for (int round = 0; round < 25; ++round) {
        const Sums s = sums_at(slot, z, y);
        const double miss = s.moment - moment;
        const double det = s.force_by_z * s.moment_by_y - s.force_by_y * s.moment_by_z;
        const double dz = (miss * s.force_by_y - s.force * s.moment_by_y) / det;
        const double dy = (s.force * s.moment_by_z - miss * s.force_by_z) / det;
        if (!std::isfinite(dz) || !std::isfinite(dy) || std::abs(z + dz) >= 0.5 * scale) break;
        z += dz;
        y = y + dy > 0.0 ? y + dy : 0.5 * y;
        if (std::abs(dz) + std::abs(dy) <= tolerance * scale) return PlasticCore{y, z, moment};
    }
    return std::nullopt;
}

/// The axis that halves the area: in the broader ligament, or anywhere in a slot on the mid-line.
double halving_axis(const Slot& slot) {
    const double from_face = 0.5 * (slot.thickness_mm - slot.chord_mm);
    const double from_mid_line = 0.5 * slot.thickness_mm - from_face;
    return slot.offset_mm == 0.0 ? 0.0 : std::copysign(from_mid_line, -slot.offset_mm);
}

/// By Newton steps for core and axis together; nothing where they lead nowhere.
std::optional<PlasticCore> by_newton(const Slot& slot, double moment_mm2) {
    // From a slot on the mid-line; where the axis has left the slot from near the plastic moment,
    // below which the moment falls by a third of the core's square.
    const double centroid = -slot.chord_mm * slot.offset_mm / (slot.thickness_mm - slot.chord_mm);
    const double on_mid_line = core_on_mid_line(slot, moment_mm2);
    if (const auto found = newton(slot, moment_mm2, centroid, on_mid_line)) return found;
    const double plastic = plastic_core(slot, 0.0).moment_mm2;
    const double core = std::sqrt(3.0 * std::max(plastic - moment_mm2, 0.0));
    return newton(slot, moment_mm2, halving_axis(slot), core);
}

}  // namespace

double detail::core_on_mid_line(const Slot& slot, double moment_mm2) {
    const double h = 0.5 * slot.thickness_mm, m = std::sqrt(1.0 - moment_mm2 / (h * h));
    if (slot.chord_mm == 0.0) return h * m * std::numbers::sqrt3;
    const double q = slot.chord_mm / slot.thickness_mm / m, cube = q * q * q;
    // Newton's steps for u^3 - 3 u + 2 q^3 = 0, core u h m, come down to the root; not near a
    // double one.
    constexpr double apart = 0.98, same = 1e-16;
    double u = std::numbers::sqrt3;
    if (cube < apart) {
        constexpr int most_steps = 12;
        for (int step = 0; step < most_steps; ++step) {
            const double miss = (u * u - 3.0) * u + 2.0 * cube;
            u -= miss / (3.0 * (u * u - 1.0));
            if (miss * miss <= same) return h * m * u;
        }
    }
    return 2.0 * h * m * std::cos(std::acos(std::max(-cube, -1.0)) / 3.0);
}

PlasticCore detail::plastic_core(const Slot& slot, double core_mm) {
    double neutral = halving_axis(slot);
    if (core_mm > 0.0 && slot.offset_mm != 0.0) {
        const auto force = [&](double z) { return sums_at(slot, z, core_mm).force; };
        const double half = 0.5 * slot.thickness_mm;
        neutral = find_root(force, -half, half, force(-half), force(half));
    }
    return {core_mm, neutral, sums_at(slot, neutral, core_mm).moment};
}

PlasticCore detail::core_under(const Slot& slot, double moment_mm2, double outer_mm) {
    if (slot.offset_mm == 0.0) return {core_on_mid_line(slot, moment_mm2), 0.0, moment_mm2};
    if (const auto found = by_newton(slot, moment_mm2)) return *found;
    const auto miss = [&](double y) { return plastic_core(slot, y).moment_mm2 - moment_mm2; };
    return plastic_core(slot, find_root(miss, 0.0, outer_mm, miss(0.0), miss(outer_mm)));
}

}  // namespace backspring
