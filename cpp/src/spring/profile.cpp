#include "backspring/spring/profile.hpp"

#include <algorithm>

namespace backspring {

double thickness_mm(const Profile& profile, double x_mm) {
    const auto ahead = std::upper_bound(profile.begin(), profile.end(), x_mm,
                                        [](double x, const Station& s) { return x < s.x_mm; });
    if (ahead == profile.begin()) return profile.front().thickness_mm;
    if (ahead == profile.end()) return profile.back().thickness_mm;
    const Station& a = *(ahead - 1);
    const Station& b = *ahead;
    const double share = (x_mm - a.x_mm) / (b.x_mm - a.x_mm);
    return a.thickness_mm + share * (b.thickness_mm - a.thickness_mm);
}

}  // namespace backspring
