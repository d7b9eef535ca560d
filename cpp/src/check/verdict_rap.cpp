#include "backspring/action/rap.hpp"
#include "verdict_parts.hpp"

namespace backspring {

void judge_rap(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    const Blade& blade = design.blade;
    const bool known = blade.edge_clearance_mm && blade.length_mm &&
                       inertia_kg_mm2(blade, design.tang).has_value();
    if (!known || worked.strokes.empty() || !worked.rests.closed) return;
    const double edge_radius = *blade.length_mm - rear_reach_mm(design.tang);
    if (edge_radius <= 0.0) return;
    const double energy = closing_energy_mj(worked.action, worked.steps, worked.strokes.front());
    const Rap found =
        rap(worked.action, *worked.rests.closed, energy, edge_radius, blade.edge_clearance_mm);
    if (!found.edge_dip_mm) return;
    Margin margin = make_margin("rap", *found.edge_dip_mm, *blade.edge_clearance_mm, "mm");
    margin.blade_angle_deg = worked.rests.closed->blade_angle_deg - found.past->angle_deg;
    margin.sentence =
        "let go at the crest, with nothing but the spring to stop it, the blade runs " +
        digits(found.past->angle_deg) + " deg past closed and its edge dips " +
        digits(*found.edge_dip_mm) + " mm towards the spring";
    margin.sentence +=
        margin.margin < 1.0
            ? ": it strikes, so ease it shut or give it a stop; this is an upper limit"
            : ": it stays clear";
    margins.push_back(std::move(margin));
}

}  // namespace backspring
