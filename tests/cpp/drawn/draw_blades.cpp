#include <algorithm>
#include <array>
#include <cmath>

#include "backspring/action/rest.hpp"
#include "backspring/core/angle.hpp"
#include "drawn/alike.hpp"
#include "drawn/blade_bounds.hpp"
#include "drawn/blade_relations.hpp"
#include "drawn/changed.hpp"
#include "drawn/held.hpp"

namespace drawn {
namespace {

double rest_of(const Design& design, std::size_t blade) {
    const Design seen = seen_from(design, blade);
    const Joint alone = make_joint(seen.spring, seen.own().pad, seen.own().tang, seen.own().fit);
    const auto rest = rest_near(alone, 0.0, kClosedReachDeg);
    return rest ? rest->blade_angle_deg : 0.0;
}

/// Without the answers.
BladesDraw draw_question(Chance& chance, const Arrangement& arrangement, int rows) {
    BladesDraw draw{draw_design(chance, arrangement), {}, {}, {}, {}};
    const std::size_t count = draw.design.blades.size();
    std::vector<double> rests;
    for (std::size_t k = 0; k < count; ++k) rests.push_back(rest_of(draw.design, k));
    for (int row = 0; row < rows; ++row) {
        std::vector<double> angles;
        const bool together = row % 3 == 2;
        const double at = chance.between(-15.0, 185.0);
        for (std::size_t k = 0; k < count; ++k) {
            angles.push_back(together               ? at + chance.between(-0.2, 0.2)
                             : chance.share() < 0.5 ? rests[k] + chance.between(-1.0, 1.0)
                                                    : chance.between(-15.0, 185.0));
        }
        draw.angles_deg.push_back(std::move(angles));
    }
    for (int turn = 0; turn < (rows + 1) / 2; ++turn) {
        draw.turned_deg.push_back(turn == 0 ? rests[0] + chance.between(-1.0, 1.0)
                                            : chance.between(-15.0, 185.0));
    }
    return draw;
}

}  // namespace

BladesDraw draw_blades(Chance& chance, const Arrangement& arrangement, int rows) {
    BladesDraw draw = draw_question(chance, arrangement, rows);
    for (const auto& angles : draw.angles_deg) draw.held.push_back(held(draw.design, angles));
    for (const double angle : draw.turned_deg) draw.seated.push_back(seated(draw.design, angle));
    return draw;
}

void pass_over(Chance& chance, const Arrangement& arrangement, int rows) {
    (void)draw_question(chance, arrangement, rows);
}

}  // namespace drawn
