#include "backspring/strength/plastic_set.hpp"

namespace backspring {

PeakTorques peak_torques(const Turns& travel, const PlasticSet& set) {
    const auto opening = [](const Turn& turn) { return turn.opening_nmm(); };
    const double before = opening(largest(travel, opening));
    if (!set.yielded) return {before, before};
    Action after = travel.action();
    after.joint = with_shift(after.joint, set.shift);
    const auto turns = travel.all();
    const Turns moved(after, {angle_of(turns.front()), angle_of(turns.back())});
    return {before, opening(largest(moved, opening))};
}

}  // namespace backspring
