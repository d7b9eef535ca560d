#include <cmath>
#include <limits>
#include <numbers>

#include "backspring/core/error.hpp"
#include "backspring/strength/contact_pressure.hpp"
#include "catch.hpp"

using namespace backspring;

namespace {

constexpr Elastic kSteel{205000.0, 0.29};
constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Stresses in the middle below a line contact, Hertz's field.
struct StressBelow {
    double along_line_mpa, along_face_mpa, normal_mpa;

    [[nodiscard]] double von_mises_mpa() const {
        return std::hypot(along_line_mpa - along_face_mpa, along_face_mpa - normal_mpa,
                          normal_mpa - along_line_mpa) /
               std::numbers::sqrt2;
    }
};

StressBelow stress_below(const LineContact& contact, double poisson, double depth_mm) {
    const double p0 = contact.peak_mpa, z = depth_mm / contact.half_width_mm;
    const double root = std::sqrt(1.0 + z * z);
    return {.along_line_mpa = -2.0 * poisson * p0 * (root - z),
            .along_face_mpa = -p0 * ((1.0 + 2.0 * z * z) / root - 2.0 * z),
            .normal_mpa = -p0 / root};
}

/// Greatest of a stress in the middle below the contact, from close depths.
template <class Stress>
std::pair<double, double> greatest_below(const LineContact& contact, double nu, Stress stress) {
    std::pair<double, double> top{0.0, 0.0};
    for (int i = 0; i <= 30000; ++i) {
        const double depth = 1e-4 * i * contact.half_width_mm;
        const double here = stress(stress_below(contact, nu, depth));
        if (here > top.first) top = {here, depth};
    }
    return top;
}

}  // namespace

TEST_CASE("a small cam on a flat", "[strength][closed form]") {
    // Hertz, evaluated apart to nine digits: 30 N on 2.5 mm, radius 4 mm.
    const double modulus = contact_modulus_mpa(kSteel, kSteel);
    CHECK_THAT(modulus, WithinRel(111911.78, 1e-7));
    const LineContact contact = line_contact(30.0, 2.5, 4.0, modulus);
    CHECK_THAT(contact.half_width_mm, WithinRel(0.0233688734, 1e-8));
    CHECK_THAT(contact.peak_mpa, WithinRel(326.906529, 1e-8));
    CHECK_THAT(contact.shear_mpa, WithinAbs(98.07, 0.1));
    CHECK_THAT(contact.shear_depth_mm, WithinAbs(0.01837, 5e-6));
}

TEST_CASE("pressure over the strip adds up to the force", "[strength][property]") {
    const LineContact contact = line_contact(180.0, 2.3, 0.7, 111900.0);
    CHECK_THAT(contact.mean_mpa * 2.0 * contact.half_width_mm * 2.3, WithinRel(180.0, 1e-12));
    CHECK_THAT(contact.peak_mpa,
               WithinRel(std::sqrt(180.0 * 111900.0 / (std::numbers::pi * 2.3 * 0.7)), 1e-12));
}

TEST_CASE("the greatest shear is that of the stresses below", "[strength][oracle]") {
    const LineContact contact = line_contact(180.0, 2.3, 0.7, 111900.0);
    const auto shear = [](const StressBelow& s) { return 0.5 * (s.along_face_mpa - s.normal_mpa); };
    const auto [top, depth] = greatest_below(contact, 0.29, shear);
    CHECK_THAT(contact.shear_mpa, WithinRel(top, 1e-7));
    CHECK_THAT(contact.shear_depth_mm, WithinRel(depth, 2e-4));
}

TEST_CASE("yielding begins at 1.79 of the yield stress", "[strength][oracle]") {
    const LineContact contact = line_contact(180.0, 2.3, 0.7, 111900.0);
    const auto equivalent = [](const StressBelow& s) { return s.von_mises_mpa(); };
    const double share = greatest_below(contact, 0.3, equivalent).first / contact.peak_mpa;
    CHECK_THAT(first_yield_pressure_mpa(1000.0), WithinRel(1000.0 / share, 3e-3));
}

TEST_CASE("the least corner radius just keeps the limit", "[strength][property]") {
    const double radius = least_corner_radius_mm(179.0, 2.3, 111900.0, 2000.0);
    CHECK_THAT(line_contact(179.0, 2.3, radius, 111900.0).peak_mpa, WithinRel(2000.0, 1e-12));
    CHECK(least_corner_radius_mm(179.0, 2.3, 111900.0, 1500.0) > radius);
    CHECK(least_corner_radius_mm(0.0, 2.3, 111900.0, 1500.0) == 0.0);
}

TEST_CASE("a sharp edge has no limit to its pressure and a flat has none", "[strength][property]") {
    const LineContact edge = line_contact(100.0, 2.3, 0.0, 111900.0);
    CHECK(edge.half_width_mm == 0.0);
    CHECK(std::isinf(edge.peak_mpa));
    const LineContact flat = line_contact(100.0, 2.3, kInfinity, 111900.0);
    CHECK(flat.peak_mpa == 0.0);
    CHECK(line_contact(0.0, 2.3, 0.0, 111900.0).peak_mpa == 0.0);
}

TEST_CASE("a hardness gap of more than five points is cautioned", "[strength][property]") {
    CHECK_FALSE(galling_caution(60.0, 55.0));
    CHECK(galling_caution(60.5, 55.0));
    CHECK(galling_caution(45.0, 51.0));
}

TEST_CASE("what cannot touch is refused with every broken rule", "[strength][abuse]") {
    try {
        (void)line_contact(-1.0, 0.0, -0.1, std::nan(""));
        FAIL("not refused");
    } catch (const InvalidInput& refused) {
        REQUIRE(refused.faults().size() == 4);
        CHECK(refused.faults()[0].key == "force_n");
        CHECK(refused.faults()[3].key == "radius_mm");
    }
    CHECK_THROWS_AS(least_corner_radius_mm(10.0, 2.3, 1e5, 0.0), InvalidInput);
}
