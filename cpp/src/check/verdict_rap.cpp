#include "backspring/action/rap.hpp"
#include "verdict_parts.hpp"

namespace backspring {

void detail::judge_rap(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    const BladeBody& blade = design.own().blade;
    const bool known = blade.edge_clearance_mm && blade.length_mm &&
                       inertia_kg_mm2(blade, design.own().tang).has_value();
    if (!known || worked.strokes.empty() || !worked.rests.closed) return;
    const double edge_radius = *blade.length_mm - rear_reach_mm(design.own().tang);
    if (edge_radius <= 0.0) return;
    const double energy = closing_energy_mj(worked.action, worked.steps, worked.strokes.front());
    const Rap found =
        rap(worked.action, *worked.rests.closed, energy, edge_radius, blade.edge_clearance_mm);
    if (!found.edge_dip_mm) return;
    Margin margin = make_margin(MarginKind::rap, *found.edge_dip_mm, *blade.edge_clearance_mm,
                                Quantity::length);
    margin.blade_angle_deg = worked.rests.closed->blade_angle_deg - found.past->angle_deg;
    margin.parameters = {{"past_closed", found.past->angle_deg, Quantity::angle}};
    margins.push_back(std::move(margin));
}

}  // namespace backspring
