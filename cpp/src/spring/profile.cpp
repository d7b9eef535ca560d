#include "backspring/spring/profile.hpp"

#include "along.hpp"

namespace backspring {

double thickness_mm(const Profile& profile, double x_mm) {
    return along(std::span(profile), &Station::thickness_mm, x_mm);
}

double width_mm(const WidthProfile& profile, double x_mm) {
    return along(std::span(profile), &WidthStation::width_mm, x_mm);
}

}  // namespace backspring
