#include "backspring/strength/elastic_plastic.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/require.hpp"
#include "backspring/spring/section.hpp"
#include "slotted_section.hpp"

namespace backspring {
namespace {

Slot slot_of(const PlasticSection& s) { return {s.thickness_mm, s.chord_mm, s.offset_mm}; }

[[noreturn]] void refuse(const PlasticSection& section, double moment) {
    throw OutOfRange("moment: must be at least 0 N mm and less than the plastic moment, " +
                     with_unit(section.plastic_moment_nmm, "N mm") + ", got " +
                     with_unit(moment, "N mm"));
}

void require_bearable(const PlasticSection& section, double moment) {
    if (!(moment >= 0.0 && moment < section.plastic_moment_nmm)) refuse(section, moment);
}

bool sound(double width, double thickness, double modulus, double yield, double chord, double off) {
    return width > 0.0 && width <= 1e6 && thickness > 0.0 && thickness <= 1e6 && modulus > 0.0 &&
           modulus <= 1e12 && yield > 0.0 && yield <= 1e9 && chord >= 0.0 &&
           std::abs(off) + 0.5 * chord < 0.5 * thickness;
}

void require_section(
    double width, double thickness, double modulus, double yield, double chord, double offset) {
    // A spring has hundreds of sections: the texts are made only where something is wrong.
    if (sound(width, thickness, modulus, yield, chord, offset)) return;
    Requirements rules;
    rules.positive("width_mm", width, 1e6, "mm");
    const bool thick = rules.positive("thickness_mm", thickness, 1e6, "mm");
    rules.positive("youngs_modulus_mpa", modulus, 1e12, "MPa");
    rules.positive("yield_mpa", yield, 1e9, "MPa");
    rules.require(chord >= 0.0 && (!thick || std::abs(offset) + 0.5 * chord < 0.5 * thickness),
                  "chord_mm", [&] {
                      return "must be a hole inside the thickness, " + with_unit(thickness, "mm") +
                             ", got " + with_unit(chord, "mm") + " at " + with_unit(offset, "mm") +
                             " from the mid-line";
                  });
    rules.throw_if_any();
}

double centroid_mm(const PlasticSection& s) {
    return -s.chord_mm * s.offset_mm / (s.thickness_mm - s.chord_mm);
}

/// Which way from the centroid the farther outer fibre lies.
double outer_side(const PlasticSection& s) { return centroid_mm(s) > 0.0 ? -1.0 : 1.0; }

}  // namespace

PlasticSection make_plastic_section(double width_mm,
                                    double thickness_mm,
                                    double youngs_modulus_mpa,
                                    double yield_mpa,
                                    double chord_mm,
                                    double offset_mm) {
    require_section(width_mm, thickness_mm, youngs_modulus_mpa, yield_mpa, chord_mm, offset_mm);
    const Section net = make_section(width_mm, thickness_mm, chord_mm, offset_mm);
    PlasticSection s;
    s.width_mm = width_mm;
    s.thickness_mm = thickness_mm;
    s.chord_mm = chord_mm;
    s.offset_mm = chord_mm > 0.0 ? offset_mm : 0.0;
    s.youngs_modulus_mpa = youngs_modulus_mpa;
    s.yield_mpa = yield_mpa;
    s.inertia_mm4 = net.inertia_mm4;
    s.outer_mm = std::max(net.back_mm, net.belly_mm);
    s.yield_moment_nmm = yield_mpa * s.inertia_mm4 / s.outer_mm;
    s.plastic_moment_nmm = yield_mpa * width_mm * plastic_core(slot_of(s), 0.0).moment_mm2;
    s.yield_curvature_per_mm = yield_mpa / (youngs_modulus_mpa * s.outer_mm);
    return s;
}

SectionBend bend_section(const PlasticSection& section, double moment_nmm) {
    require_bearable(section, moment_nmm);
    if (moment_nmm <= section.yield_moment_nmm) {
        const double curvature = moment_nmm / (section.youngs_modulus_mpa * section.inertia_mm4);
        const double core = section.yield_mpa / (section.youngs_modulus_mpa * curvature);
        return {curvature, core, centroid_mm(section)};
    }
    const double moment_mm2 = moment_nmm / (section.yield_mpa * section.width_mm);
    const PlasticCore core = core_under(slot_of(section), moment_mm2, section.outer_mm);
    return {.curvature_per_mm = section.yield_mpa / (section.youngs_modulus_mpa * core.core_mm),
            .core_mm = core.core_mm,
            .neutral_mm = core.neutral_mm};
}

double curvature_per_nmm2(const PlasticSection& section, const SectionBend& bend) {
    const double half = 0.5 * section.thickness_mm, gap = 0.5 * section.chord_mm;
    const double low = bend.neutral_mm - bend.core_mm, high = bend.neutral_mm + bend.core_mm;
    double depth = 0.0, first = 0.0, second = 0.0;
    const auto add = [&](double from, double to) {
        from = std::max(from, low), to = std::min(to, high);
        if (to <= from) return;
        depth += to - from;
        first += 0.5 * (to * to - from * from);
        second += (to * to * to - from * from * from) / 3.0;
    };
    add(-half, section.offset_mm - gap);
    add(section.offset_mm + gap, half);
    const double about_own = second - first * first / depth;
    return 1.0 / (section.youngs_modulus_mpa * section.width_mm * about_own);
}

double residual_curvature_per_mm(const PlasticSection& section, double moment_nmm) {
    const double stiffness = section.youngs_modulus_mpa * section.inertia_mm4;
    if (moment_nmm <= section.yield_moment_nmm) {
        require_bearable(section, moment_nmm);
        return 0.0;
    }
    return bend_section(section, moment_nmm).curvature_per_mm - moment_nmm / stiffness;
}

ResidualStress residual_stress(const PlasticSection& section, double moment_nmm) {
    const SectionBend bent = bend_section(section, moment_nmm);
    if (moment_nmm <= section.yield_moment_nmm) return {};
    const double per_mm = moment_nmm / section.inertia_mm4, side = outer_side(section);
    const double edge = bent.core_mm + side * (bent.neutral_mm - centroid_mm(section));
    return {.surface_mpa = section.yield_mpa - per_mm * section.outer_mm,
            .core_edge_mpa = section.yield_mpa - per_mm * edge};
}

double yielded_depth_mm(const PlasticSection& section, double moment_nmm) {
    const SectionBend bent = bend_section(section, moment_nmm);
    if (moment_nmm <= section.yield_moment_nmm) return 0.0;
    return 0.5 * section.thickness_mm - outer_side(section) * bent.neutral_mm - bent.core_mm;
}

}  // namespace backspring
