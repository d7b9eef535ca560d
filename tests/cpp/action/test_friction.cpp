#include <cmath>

#include "backspring/action/friction.hpp"
#include "backspring/core/angle.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

Contact one_touch(double x_from_pivot_mm, double height_mm, double slope, double force_n) {
    Contact contact;
    contact.count = 1;
    contact.touches[0] = {32.0 + x_from_pivot_mm, height_mm, slope, force_n};
    contact.force_n = force_n;
    contact.torque_nmm = force_n * (x_from_pivot_mm + slope * height_mm);
    return contact;
}

}  // namespace

TEST_CASE("an eccentric cam under a flat face takes N mu (e sin t + R)", "[action][closed form]") {
    // e 3, R 5, mu 0.15, N 20: torque up and down, evaluated apart to ten digits.
    struct Row {
        double t_deg, up_nmm, down_nmm;
    };
    const Row row = GENERATE(Row{0.0, 75.0, 45.0}, Row{30.0, 71.46152423, 32.46152423},
                             Row{60.0, 52.79422863, 7.20577137},
                             Row{75.0, 39.22247514, -8.16418973}, Row{90.0, 24.0, -24.0});
    const double t = radians(row.t_deg);
    const Contact contact = one_touch(3.0 * std::cos(t), 3.0 * std::sin(t) + 5.0, 0.0, 20.0);
    const Friction friction{.spring = 0.15, .pivot = 0.0, .pivot_pin_mm = 3.0};
    const double taken = friction_torque_nmm(contact, friction, 32.0);
    CHECK_THAT(contact.torque_nmm + taken, WithinAbs(row.up_nmm, 1e-8));
    CHECK_THAT(contact.torque_nmm - taken, WithinAbs(row.down_nmm, 1e-8));
}

TEST_CASE("a pin takes mu N d/2 of the resultant", "[action][closed form]") {
    // The force stands square to a 3-4-5 slope: 40 N across is a resultant of 50 N.
    const Contact contact = one_touch(1.0, 4.0, 0.75, 40.0);
    const Friction friction{.spring = 0.0, .pivot = 0.15, .pivot_pin_mm = 3.0};
    CHECK_THAT(friction_torque_nmm(contact, friction, 32.0), WithinRel(11.25, 1e-14));
}

TEST_CASE("on a slope the lever of sliding is w - s X", "[action][closed form]") {
    const Contact contact = one_touch(-2.0, 4.0, 0.5, 10.0);
    const Friction friction{.spring = 0.2, .pivot = 0.0, .pivot_pin_mm = 0.0};
    CHECK_THAT(friction_torque_nmm(contact, friction, 32.0), WithinRel(0.2 * 10.0 * 5.0, 1e-14));
}

TEST_CASE("two touches both rub", "[action][property]") {
    Contact both = one_touch(-8.0, 4.8, 0.01, 30.0);
    const Friction friction{.spring = 0.12, .pivot = 0.0, .pivot_pin_mm = 3.2};
    const double nose = friction_torque_nmm(both, friction, 32.0);
    const Contact heel = one_touch(2.0, 4.5, -0.02, 20.0);
    both.touches[1] = heel.touches[0];
    both.count = 2;
    CHECK_THAT(friction_torque_nmm(both, friction, 32.0),
               WithinRel(nose + friction_torque_nmm(heel, friction, 32.0), 1e-14));
}

TEST_CASE("nothing rubs without friction or without contact", "[action][property]") {
    CHECK(friction_torque_nmm(one_touch(1.0, 4.0, 0.1, 40.0), {}, 32.0) == 0.0);
    CHECK(friction_torque_nmm(Contact{}, designs::heron().friction, 32.0) == 0.0);
}
