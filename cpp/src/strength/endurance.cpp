#include "backspring/strength/endurance.hpp"

#include <algorithm>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <numbers>

#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"

namespace backspring {
namespace {

/// Refuses what lies outside the source's range; not-a-number too.
void within(const char* name, double value, double low, double high, const char* unit) {
    if (value >= low && value <= high) return;
    throw OutOfRange(std::string(name) + ": must be from " + with_unit(low, unit) + " to " +
                     with_unit(high, unit) + ", got " + with_unit(value, unit));
}

struct SurfaceFit {
    double a;  // MPa
    double b;
};

SurfaceFit surface_fit(Finish finish) {
    switch (finish) {
        case Finish::ground:
            return {1.58, -0.085};
        case Finish::machined:
            return {4.51, -0.265};
        case Finish::hot_rolled:
            return {57.7, -0.718};
        case Finish::as_forged:
            return {272.0, -0.995};
        case Finish::polished:
            break;
    }
    return {1.0, 0.0};
}

}  // namespace

Finish wall_finish(HoleFinish finish) {
    switch (finish) {
        case HoleFinish::reamed:
            return Finish::ground;
        case HoleFinish::polished:
            return Finish::polished;
        case HoleFinish::drilled:
            break;
    }
    return Finish::machined;
}

double surface_factor(Finish finish, double tensile_mpa) {
    const SurfaceFit fit = surface_fit(finish);
    return std::min(1.0, fit.a * std::pow(tensile_mpa, fit.b));
}

double equivalent_diameter_mm(double width_mm, double thickness_mm) {
    return 0.808 * std::sqrt(width_mm * thickness_mm);
}

double size_factor(double diameter_mm) {
    constexpr double least_mm = 2.79, middle_mm = 51.0, greatest_mm = 254.0;
    within("diameter_mm", diameter_mm, 0.0, greatest_mm, "mm");
    if (diameter_mm < least_mm) return 1.0;
    if (diameter_mm > middle_mm) return 1.51 * std::pow(diameter_mm, -0.157);
    // The formula passes 1 below 7.62 mm, the size its own tests were made with.
    return std::min(1.0, 1.24 * std::pow(diameter_mm, -0.107));
}

double loading_factor(Loading loading) {
    switch (loading) {
        case Loading::axial:
            return 0.85;
        case Loading::torsion:
            return 0.59;
        case Loading::bending:
            break;
    }
    return 1.0;
}

double temperature_factor(double temperature_c) {
    within("temperature_c", temperature_c, 20.0, 538.0, "C");
    const double t = temperature_c * 1.8 + 32.0;
    if (t < 70.0) return 1.0;
    return 0.975 + t * (0.432e-3 + t * (-0.115e-5 + t * (0.104e-8 - t * 0.595e-12)));
}

double reliability_factor(double reliability) {
    within("reliability", reliability, 0.5, 0.999999, "");
    const double z = std::numbers::sqrt2 * boost::math::erf_inv(2.0 * reliability - 1.0);
    return 1.0 - 0.08 * z;
}

double design_endurance_mpa(double tensile_mpa) {
    return tensile_mpa <= 1400.0 ? 0.5 * tensile_mpa : 700.0;
}

Band mean_endurance_mpa(double tensile_mpa) {
    const bool level = tensile_mpa > 1460.0;
    const double mean = level ? 740.0 : 0.506 * tensile_mpa;
    const double deviation = mean * (level ? 0.139 : 0.138);
    return {.value = mean, .low = mean - deviation, .high = mean + deviation};
}

}  // namespace backspring
