#include <algorithm>
#include <cmath>

#include "backspring/action/rap.hpp"
#include "backspring/check/closed_blade.hpp"
#include "backspring/core/angle.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

// The tip's speed as a hand eases a blade shut: a quarter turn of a hand-size blade in about half
// a second. Common practice, no source.
constexpr double kEasedTipMPerS = 0.2;

/// A closed blade that can rap: how far its edge reaches, and the room it has at rest.
struct Edge {
    double reach_mm;
    double room_mm;
    bool drawn;  ///< its corners are known, not only its clearance
};

std::optional<double> drawn_gap_mm(const Design& design,
                                   const Worked& worked,
                                   const Contact& contact) {
    return closed_blade(design, worked.action.joint, contact).edge_gap_mm;
}

std::optional<Edge> edge_of(const Design& design, const Worked& worked) {
    const BladeBody& blade = design.own().blade;
    const bool turns = inertia_kg_mm2(blade, design.own().tang).has_value();
    const auto tip = blade_tip(design);
    if (!turns || !tip || worked.strokes.empty() || !worked.rests.closed) return std::nullopt;
    const double reach = std::hypot(tip->u_mm, tip->w_mm);
    if (!(reach > 0.0)) return std::nullopt;
    if (const auto gap = drawn_gap_mm(design, worked, *worked.rests.closed)) {
        return Edge{reach, *gap, true};
    }
    if (!blade.edge_clearance_mm) return std::nullopt;
    return Edge{reach, *blade.edge_clearance_mm, false};
}

/// How far the edge dips towards the spring with the blade so far past its rest; where its corners
/// are known, against the spring as it is bent then.
double dip_mm(const Design& design, const Worked& worked, const Edge& edge, double past_deg) {
    if (edge.drawn) {
        const double angle = worked.rests.closed->blade_angle_deg - past_deg;
        const Contact past = contact_at(worked.action.joint, angle);
        if (const auto gap = drawn_gap_mm(design, worked, past)) return edge.room_mm - *gap;
    }
    return radians(past_deg) * edge.reach_mm;
}

/// What the blade turns with as a hand brings it home at the tip's usual speed [mJ].
double eased_energy_mj(const Design& design, const Edge& edge) {
    const double inertia = *inertia_kg_mm2(design.own().blade, design.own().tang);
    const double rad_per_s = 1e3 * kEasedTipMPerS / edge.reach_mm;
    return 0.5e-3 * inertia * rad_per_s * rad_per_s;
}

/// The edge on its way past closed with an energy.
struct Dip {
    double past_deg;
    double dip_mm;
};

/// Of several energies; nothing where the spring does not stop the blade.
std::vector<std::optional<Dip>> dips_with(const Design& design,
                                          const Worked& worked,
                                          const Edge& edge,
                                          const std::vector<double>& energies_mj) {
    std::vector<std::optional<Dip>> dips;
    for (const auto& past : overtravels(worked.action, *worked.rests.closed, energies_mj)) {
        dips.emplace_back();
        if (!past) continue;
        dips.back() = Dip{past->angle_deg, dip_mm(design, worked, edge, past->angle_deg)};
    }
    return dips;
}

/// The way that the blade comes home on: the first with a crest, as of the strokes.
LazyStroke& first_way(const Worked& worked) {
    return *std::ranges::find_if(worked.ways, &LazyStroke::has_crest);
}

Margin rap_margin(const Design& design, const Edge& edge, const Dip& eased) {
    const double wanted = design.targets.edge_gap_mm.value_or(0.0);
    Margin margin =
        make_margin(MarginKind::rap, eased.dip_mm, edge.room_mm - wanted, Quantity::length);
    margin.names["edge"] = edge.drawn ? "drawn" : "clearance";
    margin.sources = {"common-practice"};
    margin.parameters = {{"tip_speed", kEasedTipMPerS, Quantity::speed},
                         {"gap", edge.room_mm, Quantity::length},
                         {"gap_eased", edge.room_mm - eased.dip_mm, Quantity::length},
                         {"past_eased", eased.past_deg, Quantity::angle}};
    return margin;
}

}  // namespace

std::optional<double> detail::eased_gap_mm(const Design& design, const Worked& worked) {
    const auto edge = edge_of(design, worked);
    if (!edge) return std::nullopt;
    const auto eased = dips_with(design, worked, *edge, {eased_energy_mj(design, *edge)}).front();
    return eased ? std::optional(edge->room_mm - eased->dip_mm) : std::nullopt;
}

void detail::judge_rap(std::vector<Margin>& margins, const Design& design, const Worked& worked) {
    const auto edge = edge_of(design, worked);
    if (!edge) return;
    const double energy = first_way(worked).closing_energy_mj();
    const auto dips = dips_with(design, worked, *edge, {eased_energy_mj(design, *edge), energy});
    const auto &eased = dips[0], &let_go = dips[1];
    if (!eased) return;
    Margin margin = rap_margin(design, *edge, *eased);
    margin.blade_angle_deg = worked.rests.closed->blade_angle_deg - eased->past_deg;
    if (let_go) {
        margin.parameters.push_back({"past_let_go", let_go->past_deg, Quantity::angle});
        margin.parameters.push_back({"dip_let_go", let_go->dip_mm, Quantity::length});
        const double worst = std::max(eased->dip_mm, let_go->dip_mm);
        if (worst > 0.0) margin.margin_low = margin.limit / worst;
    } else {
        margin.margin_low = 0.0;
    }
    margins.push_back(std::move(margin));
}

}  // namespace backspring
