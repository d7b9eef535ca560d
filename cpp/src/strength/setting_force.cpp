#include <algorithm>
#include <cmath>
#include <numeric>

#include "setting_forces.hpp"

namespace backspring {

/// Movement grows ever faster with the force, so from beyond the answer Newton's steps come down to
/// it; a step from short of it that leads beyond what is known to be too much is halved.
Setting detail::setting_force(const PlasticSpring& plastic,
                              const Held& held,
                              const Loads& guess,
                              double enough_mm) {
    constexpr int most_steps = 60;
    constexpr double there_mm = 1e-11, same_share = 4e-16;
    const double x = held.x_mm;
    const double settled_mm = plastic.shift_after({}).at_mm(x);
    double low = 0.0;
    double high = std::max(held.movement_mm - settled_mm, 0.0) / held.mm_per_n;
    Setting setting;
    setting.loads.push_back({x, high});
    Load& load = *setting.loads.data();
    const bool guessed = guess.size() == 1;
    if (guessed) load.force_n = std::min(guess.data()->force_n, high);
    double before_mm = 0.0;
    for (int step = 0; step < most_steps; ++step) {
        FaceShift per_n;
        setting.set = plastic.shift_after(setting.loads, {&per_n, 1});
        const double excess_mm =
            held.mm_per_n * load.force_n + setting.set.at_mm(x) - held.movement_mm;
        const double miss_mm = std::abs(excess_mm);
        if (miss_mm <= there_mm) break;
        (excess_mm > 0.0 ? high : low) = load.force_n;
        double next = load.force_n - excess_mm / (held.mm_per_n + per_n.at_mm(x));
        const bool inside = next > low && next < high;
        // Steps leave the square of what they find: of the next one this is left.
        const double grown_mm = std::abs(setting.set.at_mm(x) - settled_mm);
        const double left_mm = before_mm > 0.0
                                   ? miss_mm * miss_mm * miss_mm / (before_mm * before_mm)
                               : guessed ? miss_mm * miss_mm / grown_mm
                                         : miss_mm;
        if (inside && left_mm <= enough_mm) {
            const double way = next - load.force_n;
            load.force_n = next;
            setting.set.height_mm += per_n.height_mm * way;
            setting.set.slope += per_n.slope * way;
            break;
        }
        if (!inside) next = std::midpoint(low, high);
        if (std::abs(next - load.force_n) <= same_share * load.force_n) break;
        load.force_n = next;
        before_mm = inside ? miss_mm : 0.0;
    }
    return setting;
}

}  // namespace backspring
