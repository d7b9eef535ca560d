#include <algorithm>

#include "backspring/check/solution.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/design/cases.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

TEST_CASE("along a travel beside others what is followed is what a search finds",
          "[blades][action][property]") {
    // A blade with a kick among three is pushed off it, lets go and comes to bear again.
    const Design redstart = cases(designs::redstart()).front();
    Solution solution(redstart);
    const double size = solution.rests().open.energy_nmm;
    std::size_t smooth = 0, loose = 0;
    for (const Piece& piece : solution.travel().pieces()) {
        const Contact& followed = piece[piece.size() / 2]->contact;
        const Contact searched = contact_at(solution.joint(), followed.blade_angle_deg);
        CAPTURE(followed.blade_angle_deg);
        CHECK_THAT(followed.energy_nmm, WithinAbs(searched.energy_nmm, 1e-9 * size));
        // A search leaves more of the others' torques than what is followed: the energy tells.
        const double length = angle_of(piece.back()) - angle_of(piece.front());
        constexpr double step_deg = 2e-2;
        if (length > 10.0 * step_deg) {
            const auto energy = [&](double by) {
                return contact_at(solution.joint(), followed.blade_angle_deg + by).energy_nmm;
            };
            const auto rise = [&](double by) { return energy(by) - energy(-by); };
            const double rate =
                (8.0 * rise(step_deg) - rise(2.0 * step_deg)) / (12.0 * radians(step_deg));
            CHECK_THAT(followed.torque_nmm, WithinAbs(rate, 1e-6 * size));
            ++smooth;
        }
        for (std::size_t i = 0; i < searched.others.angles_deg.size(); ++i) {
            CHECK_THAT(followed.others.angles_deg[i],
                       WithinAbs(searched.others.angles_deg[i], 1e-6));
        }
        loose += searched.others.beside.empty();
    }
    CHECK(smooth > 4);
    CHECK(loose > 0);
}
