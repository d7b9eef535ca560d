#include <algorithm>
#include <cmath>
#include <numeric>

#include "setting_forces.hpp"

namespace backspring {
namespace {

/// A step towards the force that moves the spring as it is held.
///
/// Near a section's plastic moment the set grows like one over the root of what that moment leaves,
/// so there one over its square tells more than a straight line.
double way_n(const HeldPlace& held, double force_n, double set_mm, double set_per_n) {
    const double wanted_mm = held.movement_mm - held.mm_per_n * force_n;
    const double straight = (wanted_mm - set_mm) / (held.mm_per_n + set_per_n);
    if (!(set_mm > 0.0 && wanted_mm > set_mm)) return straight;
    const auto square = [](double v) { return v * v; };
    const double curved = (1.0 / square(set_mm) - 1.0 / square(wanted_mm)) /
                          (2.0 * (set_per_n / (set_mm * square(set_mm)) +
                                  held.mm_per_n / (wanted_mm * square(wanted_mm))));
    constexpr double far = 2.0;
    return wanted_mm > far * set_mm ? straight : curved;
}

}  // namespace

/// Movement grows ever faster with the force, so from beyond the answer Newton's steps come down to
/// it; a step from short of it that leads beyond what is known to be too much is halved, and one
/// that leads past where a hinge begins ends there.
Setting detail::setting_force(const PlasticSpring& plastic,
                              const HeldPlace& held,
                              const Loads& guess,
                              const Enough& enough) {
    constexpr int most_steps = 60;
    constexpr double there_mm = 1e-11, same_share = 4e-16;
    constexpr double trace = 1.0 + 1e-10;
    const double x = held.x_mm;
    const double settled_mm = plastic.shift().at_mm(x);
    double low = 0.0;
    double high = std::max(held.movement_mm - settled_mm, 0.0) / held.mm_per_n;
    Setting setting;
    setting.loads.push_back({x, high});
    Load& load = *setting.loads.data();
    const bool guessed = guess.size() == 1;
    if (guessed) {
        // From where it would begin to set further: there it answers as one that is bent further.
        const Load& known = *guess.data();
        load.force_n = known.force_n * known.x_mm / x;
        const double beyond = plastic.beyond_elastic(setting.loads);
        if (beyond > 0.0 && beyond < trace) load.force_n *= trace / beyond;
    } else {
        load.force_n *= trace * plastic.share_to_hinge(setting.loads);
    }
    load.force_n = std::min(load.force_n, high);
    double before_mm = 0.0;
    for (int step = 0; step < most_steps; ++step) {
        FaceShift per_n;
        setting.set = plastic.shift_after(setting.loads, {&per_n, 1});
        const double set_mm = setting.set.at_mm(x);
        const double excess_mm = held.mm_per_n * load.force_n + set_mm - held.movement_mm;
        const double miss_mm = std::abs(excess_mm);
        if (miss_mm <= there_mm) break;
        (excess_mm > 0.0 ? high : low) = load.force_n;
        double next = load.force_n + way_n(held, load.force_n, set_mm, per_n.at_mm(x));
        const bool inside = next > low && next < high;
        // Steps leave the square of what they find: of the next one this is left.
        const double grown_mm = std::abs(set_mm - settled_mm);
        const double left_mm = before_mm > 0.0
                                   ? miss_mm * miss_mm * miss_mm / (before_mm * before_mm)
                               : guessed ? miss_mm * miss_mm / grown_mm
                                         : miss_mm;
        if (inside && left_mm <= enough.mm + enough.share * grown_mm) {
            const double way = next - load.force_n;
            load.force_n = next;
            setting.set.height_mm += per_n.height_mm * way;
            setting.set.slope += per_n.slope * way;
            break;
        }
        if (!inside) next = std::midpoint(low, high);
        if (next > load.force_n) {
            // Where a section begins to turn as a hinge all goes on another way.
            const double share = trace * plastic.share_to_hinge(setting.loads);
            if (share > 1.0 && share * load.force_n < next) next = share * load.force_n;
        }
        if (std::abs(next - load.force_n) <= same_share * load.force_n) break;
        load.force_n = next;
        before_mm = inside ? miss_mm : 0.0;
    }
    return setting;
}

}  // namespace backspring
