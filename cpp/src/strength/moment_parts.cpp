#include <algorithm>
#include <vector>

#include "backspring/strength/plastic_taper.hpp"

namespace backspring {

void keep_greatest(std::vector<MomentPart>& parts) {
    // The steepest first: each one later takes over farther ahead.
    std::ranges::sort(parts, [](const MomentPart& a, const MomentPart& b) {
        return a.moment.fall_n > b.moment.fall_n;
    });
    std::size_t kept = 0;
    for (const MomentPart& each : parts) {
        MomentPart part = each;
        part.from_mm = 0.0;
        bool never = false;
        while (kept > 0) {
            const MomentPart& last = parts[kept - 1];
            const double lower = last.moment.root_nmm - part.moment.root_nmm;
            const double flatter = last.moment.fall_n - part.moment.fall_n;
            never = lower >= 0.0 && flatter <= 0.0;
            part.from_mm = lower > 0.0 ? lower / flatter : 0.0;
            if (never || part.from_mm > last.from_mm) break;
            --kept;
            part.from_mm = 0.0;
        }
        if (!never) parts[kept++] = part;
    }
    parts.resize(kept);
}

void add_moments(std::span<const Load> loads, std::vector<MomentPart>& parts) {
    std::vector<Load> sorted;
    if (loads.size() > 1) {
        sorted.assign(loads.begin(), loads.end());
        std::ranges::sort(sorted, [](const Load& a, const Load& b) { return a.x_mm > b.x_mm; });
        loads = sorted;
    }
    StraightMoment sum;
    for (const Load& load : loads) {
        sum.root_nmm += load.force_n * load.x_mm;
        sum.fall_n += load.force_n;
        parts.push_back({.moment = sum, .nearest_mm = load.x_mm});
    }
}

}  // namespace backspring
