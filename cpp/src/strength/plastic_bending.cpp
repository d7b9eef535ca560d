#include "backspring/strength/plastic_bending.hpp"

#include <algorithm>
#include <utility>

#include "backspring/core/require.hpp"

namespace backspring {
namespace {

/// Station of the foremost of what bends the spring.
template <class Places>
double foremost_mm(const Places& places) {
    double foremost = 0.0;
    for (const auto& place : places) foremost = std::max(foremost, place.x_mm);
    return foremost;
}

}  // namespace

BentSpring bend_by_force(const Spring& spring, std::span<const Load> loads, double yield_mpa) {
    Requirements rules;
    for (const Load& load : loads) rules.in_range("force_n", load.force_n, 0.0, 1e9, "N");
    rules.throw_if_any();
    PlasticSpring plastic(spring, foremost_mm(loads), yield_mpa);
    if (!plastic.bears(loads)) {
        throw OutOfRange(
            "loads: must be less than what the spring can bear when all of a section "
            "yields");
    }
    plastic.bend(loads);
    return {{loads.begin(), loads.end()}, plastic.shift(), plastic.zones()};
}

BentSpring bend_by_hold(const Spring& spring, std::span<const Hold> holds, double yield_mpa) {
    Requirements rules;
    rules.require(holds.size() == 1 || holds.size() == 2, "holds",
                  [&] { return "must be one or two, got " + std::to_string(holds.size()); });
    rules.throw_if_any();
    PlasticSpring plastic(spring, foremost_mm(holds), yield_mpa);
    std::vector<Load> loads = plastic.forces(holds);
    plastic.bend(loads);
    return {std::move(loads), plastic.shift(), plastic.zones()};
}

}  // namespace backspring
