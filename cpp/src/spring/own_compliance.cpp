#include "backspring/spring/flexibility.hpp"
#include "overhang.hpp"
#include "taper_beam.hpp"

namespace backspring {

OwnCompliance own_compliance(const Flexibility& flexibility, double x_mm) {
    require_overhang(x_mm);
    const Stretch& stretch = stretch_at(flexibility, x_mm);
    if (stretch.hole.diameter_mm > 0.0 || stretch.width_taper != 0.0) {
        const BeamPlace place = beam_place(flexibility, x_mm);
        const BendingIntegrals& i = place.upto;
        const double turn = i.a0 + flexibility.root_rotation_rad_per_nmm;
        const double to_a1 = x_mm * turn - i.a1;
        return {.mm_per_n = x_mm * (to_a1 - i.a1) + i.a2 + i.shear,
                .rad_per_n = to_a1 + 0.5 * place.shear_rad_per_n,
                .rad_per_nmm = turn,
                .from_mm = stretch.start_mm,
                .to_mm = stretch.start_mm};
    }
    // The root and all stretches before as one parabola, and this stretch from its start.
    const BendingIntegrals& root = stretch.upto;
    const double turn = root.a0 + flexibility.root_rotation_rad_per_nmm;
    const double to_a1 = x_mm * turn - root.a1;
    const OwnCompliance own =
        own_of_taper(stretch, x_mm, flexibility.bending_factor, flexibility.shear_factor);
    return {.mm_per_n = x_mm * (to_a1 - root.a1) + root.a2 + root.shear + own.mm_per_n,
            .rad_per_n = to_a1 + own.rad_per_n,
            .rad_per_nmm = turn + own.rad_per_nmm,
            .from_mm = stretch.start_mm,
            .to_mm = stretch.end_mm};
}

bool own_compliances(const Flexibility& flexibility,
                     std::span<const double> x_mm,
                     OwnCompliances& own) {
    const Stretch& stretch = stretch_at(flexibility, x_mm[x_mm.size() / 2]);
    if (stretch.hole.diameter_mm > 0.0 || stretch.width_taper != 0.0) return false;
    if (!owns_of_taper(stretch, x_mm, flexibility.bending_factor, flexibility.shear_factor, own)) {
        return false;
    }
    const BendingIntegrals& root = stretch.upto;
    const double turn = root.a0 + flexibility.root_rotation_rad_per_nmm;
    const double fixed = root.a2 + root.shear;
    for (std::size_t i = 0; i < x_mm.size(); ++i) {
        const double x = x_mm[i], to_a1 = x * turn - root.a1;
        own.mm_per_n[i] += x * (to_a1 - root.a1) + fixed;
        own.rad_per_n[i] += to_a1;
        own.rad_per_nmm[i] += turn;
    }
    return true;
}

}  // namespace backspring
