#include <cmath>
#include <numbers>

#include "backspring/check/check.hpp"
#include "backspring/check/frame_effect.hpp"
#include "backspring/check/solution.hpp"
#include "backspring/design/cases.hpp"
#include "backspring/design/joint_of.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

Design in_liners(Design design, double height_mm = 12.0) {
    design.frame.liner_thickness_mm = 1.0;
    design.frame.liner_height_mm = height_mm;
    return design;
}

Design on_seat(double mm_per_n) {
    Design design = designs::heron();
    design.frame.seat_mm_per_n = mm_per_n;
    return design;
}

/// Difference of the energy of fourth order, and how far it is off the torque.
double torque_off_nmm(const Joint& joint, double deg) {
    const double h = 2e-3;
    const auto energy = [&](int i) { return contact_at(joint, deg + i * h).energy_nmm; };
    const double rate = (8.0 * (energy(1) - energy(-1)) - (energy(2) - energy(-2))) /
                        (12.0 * h * std::numbers::pi / 180.0);
    return std::abs(contact_at(joint, deg).torque_nmm - rate);
}

}  // namespace

TEST_CASE("a seat that gives costs pull and raises readings as in a nonlinear model",
          "[frame][oracle]") {
    // Pull -2.4 and -6.8 %, readings +0.13 and +0.36 thou; a tenth of each, and their last digit.
    const FrameEffect little = frame_effect(designs::heron(), on_seat(1e-4));
    const FrameEffect much = frame_effect(designs::heron(), on_seat(3e-4));
    CHECK_THAT(little.pull_share, WithinAbs(-0.024, 0.0029));
    CHECK_THAT(much.pull_share, WithinAbs(-0.068, 0.0073));
    CHECK_THAT(*little.half_stop_mm / 0.0254, WithinAbs(0.13, 0.018));
    CHECK_THAT(*much.half_stop_mm / 0.0254, WithinAbs(0.36, 0.041));
}

TEST_CASE("without a frame nothing is read against liners", "[frame][property]") {
    const Joint joint = make_joint(designs::heron());
    CHECK_FALSE(joint.frame);
    const Contact contact = contact_at(joint, 180.0);
    CHECK(back_mm(joint, contact, 33.5) == deflection_mm(joint, contact, 33.5));
}

TEST_CASE("liners that hardly give are a fixture", "[frame][property]") {
    Design stiff = in_liners(designs::heron());
    stiff.frame.liner_modulus_mpa = 1e6;
    stiff.frame.liner_thickness_mm = 50.0;
    stiff.frame.liner_height_mm = 500.0;
    const FrameEffect effect = frame_effect(designs::heron(), stiff);
    CHECK(std::abs(effect.pull_share) < 1e-5);
    CHECK(std::abs(*effect.half_stop_mm) < 1e-6);
}

TEST_CASE("torque is the rate of energy in liners that give", "[frame][property]") {
    Design kick = in_liners(designs::plover());
    kick.spring.pin_clearance = {0.02, 0.03};
    for (const Design& design : {in_liners(designs::heron()), kick, on_seat(3e-4)}) {
        const Joint joint = make_joint(design);
        for (const double deg : {10.0, 20.0, 45.0, 75.0, 105.0, 135.0, 165.0}) {
            CAPTURE(deg);
            CHECK(torque_off_nmm(joint, deg) < 1e-6 * 300.0);
        }
    }
}

TEST_CASE("torque is the rate of energy with blades at both ends in one frame",
          "[frame][blades][property]") {
    // The other blade is held, so that all that moves is the own one's angle.
    for (Design design :
         {in_liners(designs::bunting(SupportKind::two_pins)), in_liners(designs::redstart())}) {
        for (Blade& blade : design.blades) blade.stands = Stand::open;
        const Joint joint = make_joint(design);
        REQUIRE(joint.far_end->through_frame);
        for (const double deg : {10.0, 20.0, 45.0, 75.0, 105.0, 165.0}) {
            CAPTURE(deg);
            CHECK(torque_off_nmm(joint, deg) < 2e-6 * 300.0);
        }
    }
}

TEST_CASE("both ends feel each other's force through the frame alike",
          "[frame][blades][property]") {
    // Maxwell: seen from either end, the same two blades store the same energy.
    Design design = in_liners(designs::bunting(SupportKind::two_pins));
    for (Blade& blade : design.blades) blade.stands = Stand::open;
    const Contact front = contact_at(make_joint(design), 180.0);
    const Contact rear = contact_at(make_joint(seen_from(design, 1)), 180.0);
    CHECK_THAT(front.energy_nmm, WithinRel(rear.energy_nmm, 1e-11));
    const Contact alone = contact_at(make_joint(designs::bunting(SupportKind::two_pins)), 180.0);
    CHECK(front.energy_nmm < alone.energy_nmm);
}

TEST_CASE("a dial beyond the pivot sees the liners' edge dip", "[frame][closed-form]") {
    // Of a measured seat: a straight beam beyond its support, which turns by the slope there.
    const Joint joint = make_joint(on_seat(3e-4));
    const Contact contact = contact_at(joint, 180.0);
    const double middle = contact.force_n * (1.0 + contact.touches[0].x_mm / 34.0);
    const double bending = 34.0 * 34.0 * 32.0 * 32.0 / (3.0 * 66.0 * 3e-4);
    const double turn = -34.0 * 32.0 * (66.0 + 34.0) / (6.0 * bending * 66.0);
    CHECK_THAT(deflection_mm(joint, contact, 33.5) - back_mm(joint, contact, 33.5),
               WithinRel(1.5 * turn * middle, 1e-9));
}

TEST_CASE("the back is flush with the liners' edge at the middle pin", "[frame][property]") {
    for (const Design& design : {in_liners(designs::heron()), on_seat(3e-4)}) {
        const Joint joint = make_joint(design);
        for (const double deg : {60.0, 180.0}) {
            const Contact contact = contact_at(joint, deg);
            CHECK(std::abs(back_mm(joint, contact, 0.0)) < 1e-12 * contact.force_n);
            const double by_one =
                contact.force_n * back_per_force(joint, 20.0, contact.touches[0].x_mm);
            CHECK_THAT(back_mm(joint, contact, 20.0), WithinRel(by_one, 1e-10));
            const double rate =
                (back_mm(joint, contact, 20.0 + 1e-3) - back_mm(joint, contact, 20.0 - 1e-3)) /
                2e-3;
            CHECK_THAT(back_slope(joint, contact, 20.0), WithinRel(rate, 1e-6));
        }
    }
}

TEST_CASE("usual effects are of what is not stated", "[frame][property]") {
    const auto all = usual_effects(designs::heron());
    REQUIRE(all.size() == 3);
    CHECK(all[0].what == HeldBy::liners);
    CHECK(all[0].most.pull_share < all[0].least.pull_share);
    CHECK(all[0].least.pull_share < 0.0);
    // The nonlinear model of this joint: 0.05 mm at both pins -3.8 %, 0.03 mm at the pivot -0.8 %.
    CHECK_THAT(all[1].most.pull_share, WithinAbs(-0.038, 0.004));
    CHECK_THAT(all[2].most.pull_share, WithinAbs(-0.008, 0.002));
    CHECK_THAT(*all[1].most.half_stop_mm / 0.0254, WithinAbs(0.28, 0.03));
    CHECK_THAT(*all[2].most.half_stop_mm / 0.0254, WithinAbs(0.12, 0.02));
    Design stated = in_liners(designs::heron());
    stated.spring.pin_clearance = {0.0, 0.01};
    stated.own().tang.pivot_clearance_mm = 0.01;
    CHECK(usual_effects(stated).empty());
}

TEST_CASE("usual liners hold the pins of any sound design", "[frame][abuse]") {
    Design thick_pin = designs::heron();
    thick_pin.friction.pivot_pin_mm = 50.0;
    REQUIRE(faults(thick_pin).empty());
    CHECK_NOTHROW(usual_effects(thick_pin));
    for (const Frame& frame : {stiff_liners(thick_pin), slender_liners(thick_pin)}) {
        CHECK(*frame.liner_height_mm > least_liner_height_mm(thick_pin));
    }
}
