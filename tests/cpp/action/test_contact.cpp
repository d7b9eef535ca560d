#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "backspring/action/contact.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/core/error.hpp"
#include "backspring/tang/envelope.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

double free_face_mm(const Joint& joint, double x) { return joint.face_mm + joint.face_slope * x; }

/// Rate of shear deflection per force just behind a force: the kink it makes in the spring.
double kink_per_n(const Joint& joint, double x) {
    return slope_per_force(joint.flexibility, x - 1e-9, x) -
           slope_per_force(joint.flexibility, x + 1e-9, x);
}

/// Depth to which an outline goes into the deflected face, less what the kinks explain.
///
/// A point force kinks a spring that shears; the contact's slope is the mean of both sides, so
/// beside the force the tang seems to go in by half the kink times the distance.
double unexplained_depth_mm(const Joint& joint, const Contact& contact, const TurnedOutline& tang) {
    double deepest = -1.0;
    for (double x = joint.pad.start_mm; x <= joint.pad.end_mm; x += 0.005) {
        const auto top = tang.top_at(x - joint.pivot_mm);
        if (!top) continue;
        double depth = top->y_mm - free_face_mm(joint, x) - deflection_mm(joint, contact, x);
        for (const Touch& touch : contact.all()) {
            depth -= 0.5 * touch.force_n * kink_per_n(joint, touch.x_mm) * std::abs(x - touch.x_mm);
        }
        deepest = std::max(deepest, depth);
    }
    return deepest;
}

}  // namespace

TEST_CASE("on a flat a clamped strip touches where its cubic says", "[action][closed form]") {
    // Face g0 + m x above the free spring. Equal slopes: P (x^2/2EI + c/2) = m, with
    // P = (g0 + m x)/(x^3/3EI + c x), c = 1/(kappa G A), give x^3 + 3 x^2 g0/m - 3EI c (x - g0/m) =
    // 0.
    const Design design = designs::dunlin();
    const Joint joint = designs::joint_of(design);
    const double turn_deg = GENERATE(0.7, 0.78, 0.806, 0.85);
    const double t = std::tan(radians(turn_deg)), a = 32.0, ei_c = 2.6 * 2.6 * 2.58 / 10.0;
    const double g0 = 4.5 / std::cos(radians(turn_deg)) - a * t - 4.5, m = t + 0.9 / a;
    const Contact contact = contact_at(joint, 180.0 + turn_deg);
    REQUIRE(contact.count == 1);
    const double x = contact.touches[0].x_mm, g = g0 / m;
    CHECK(std::abs(x - a) < 4.0);  // on the flat, ahead of the rear corner
    CHECK_THAT(x * x * x + 3.0 * g * x * x, WithinRel(3.0 * ei_c * (x - g), 1e-9));
    const double inertia = 2.3 * 2.6 * 2.6 * 2.6 / 12.0;
    const double own = (x * x * x / 3.0 + ei_c * x) / (205000.0 * inertia);
    CHECK_THAT(contact.force_n, WithinRel((g0 + m * x) / own, 1e-11));
}

TEST_CASE("a slender strip on a flat nears the beam without shear", "[action][convergence]") {
    // Without shear x = -3 g0/m; shear moves it by about EI c/x, which falls as t^2.
    const double t = std::tan(radians(0.806)), a = 32.0;
    const double limit = -3.0 * (4.5 / std::cos(radians(0.806)) - a * t - 4.5) / (t + 0.9 / a);
    double last = std::numeric_limits<double>::infinity();
    for (const double thickness : {2.0, 1.0, 0.5, 0.25}) {
        Design design = designs::dunlin();
        design.spring.thickness = {{0.0, thickness}};
        const double off =
            std::abs(contact_at(designs::joint_of(design), 180.806).touches[0].x_mm - limit);
        CHECK(off < last / 3.8);
        last = off;
    }
}

TEST_CASE("on a corner the loaded face is tangent to the arc", "[action][property]") {
    const Joint joint = designs::joint_of(designs::heron());
    const double angle = GENERATE(20.0, 45.0, 70.0, 110.0, 135.0, 160.0);
    const Contact contact = contact_at(joint, angle);
    REQUIRE(contact.count == 1);
    const Touch& touch = contact.touches[0];
    const double slope = joint.face_slope +
                         touch.force_n * slope_per_force(joint.flexibility, touch.x_mm, touch.x_mm);
    CHECK_THAT(touch.slope, WithinAbs(slope, 1e-12));
    const Arc& corner = joint.outline.body[angle < 90.0 ? 2 : 1];
    const double turn = radians(angle) - std::numbers::pi;
    const double x = std::cos(turn) * corner.u_mm - std::sin(turn) * corner.w_mm;
    const double y = std::sin(turn) * corner.u_mm + std::cos(turn) * corner.w_mm;
    CHECK_THAT(std::hypot(touch.x_mm - 32.0 - x, touch.height_mm - y), WithinRel(0.7, 1e-12));
}

TEST_CASE("the spring moves to where it is touched", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        const Joint joint = designs::joint_of(design);
        for (double angle = -6.0; angle <= 186.0; angle += 0.7) {
            const Contact contact = contact_at(joint, angle);
            for (const Touch& touch : contact.all()) {
                CAPTURE(name, angle);
                CHECK(touch.force_n > 0.0);
                CHECK(touch.x_mm >= joint.pad.start_mm);
                CHECK(touch.x_mm <= joint.pad.end_mm);
                const double face =
                    free_face_mm(joint, touch.x_mm) + deflection_mm(joint, contact, touch.x_mm);
                CHECK_THAT(touch.height_mm, WithinAbs(face, 1e-11));
            }
        }
    }
}

TEST_CASE("nowhere on the pad does the tang go into the spring", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        const Joint joint = designs::joint_of(design);
        for (double angle = -5.0; angle <= 185.0; angle += 1.9) {
            CAPTURE(name, angle);
            const Contact contact = contact_at(joint, angle);
            const double turn = radians(angle) - std::numbers::pi;
            CHECK(unexplained_depth_mm(joint, contact, {joint.outline.body, turn}) < 1e-9);
            if (const auto& kick = joint.outline.kick) {
                CHECK(unexplained_depth_mm(joint, contact, {{&*kick, 1}, turn}) < 1e-9);
            }
        }
    }
}

TEST_CASE("a pad that begins ahead of the corner bears on its rear edge", "[action][property]") {
    const Joint joint = designs::joint_of(designs::snipe());
    const Contact contact = contact_at(joint, 180.0);
    REQUIRE(contact.count == 1);
    CHECK(contact.touches[0].x_mm == 28.6);
    CHECK_THAT(contact.touches[0].height_mm, WithinRel(4.5, 1e-13));
    CHECK_THAT(contact.touches[0].slope, WithinAbs(0.0, 1e-13));
    // An edge's force stands square to the tang's face, here straight up 3.4 mm behind the pivot.
    CHECK_THAT(contact.torque_nmm, WithinRel(-3.4 * contact.force_n, 1e-12));
}

TEST_CASE("a pad that ends behind the corner bears on its front edge", "[action][property]") {
    const Joint joint = designs::joint_of(designs::avocet());
    bool seen = false;
    for (double angle = 90.0; angle < 130.0; angle += 0.5) {
        const Contact contact = contact_at(joint, angle);
        seen = seen || contact.touches[0].x_mm == 35.2;
    }
    for (double angle = 0.0; angle < 40.0; angle += 0.5) {
        const Contact contact = contact_at(joint, angle);
        seen = seen || contact.touches[0].x_mm == 35.2;
    }
    CHECK(seen);
}

TEST_CASE("where the tang is too low the spring has let go", "[action][property]") {
    Design design = designs::heron();
    design.own().fit.preload_mm = 0.05;
    design.own().tang.closed_mm = 4.3;
    const Contact contact = contact_at(designs::joint_of(design), 0.0);
    CHECK(contact.count == 0);
    CHECK(contact.all().empty());
    CHECK(contact.force_n == 0.0);
    CHECK(contact.energy_nmm == 0.0);
    CHECK(contact.torque_nmm == 0.0);
    CHECK(deflection_mm(designs::joint_of(design), contact, 33.0) == 0.0);
    CHECK(contact_at(designs::joint_of(design), 45.0).count == 1);
}

TEST_CASE("without preload the open fit only just touches", "[action][property]") {
    Design design = designs::heron();
    design.own().fit.preload_mm = 0.0;
    CHECK_THAT(contact_at(designs::joint_of(design), 180.0).force_n, WithinAbs(0.0, 1e-9));
    CHECK(contact_at(designs::joint_of(design), 120.0).force_n > 10.0);
}

// Heights are differences of lengths about as long as the way from pin to pivot, whose last bit is
// 7e-15 mm: so little in common tells nothing.
TEST_CASE("a tang that stands in the face by rounding alone does not bear", "[action][property]") {
    Joint joint = designs::joint_of(designs::heron());
    joint.face_slope = 0.0;
    for (const double angle : {60.0, 135.0, 170.0}) {
        CAPTURE(angle);
        const TurnedOutline turned(joint.outline.body, radians(angle) - std::numbers::pi);
        const double top = turned.at_slope(turned.level_arc(), 0.0).y_mm;
        joint.face_mm = std::nextafter(top, 0.0);
        CHECK(contact_at(joint, angle).count == 0);
        joint.face_mm = top - 1e-11;
        CHECK(contact_at(joint, angle).count == 1);
    }
}

TEST_CASE("forces and moments of a contact are those of its loads", "[action][property]") {
    const Contact contact = contact_at(designs::joint_of(designs::plover()), 0.5);
    const auto forces = loads(contact);
    double force = 0.0, torque = 0.0;
    REQUIRE(forces.size() == contact.all().size());
    for (std::size_t i = 0; i < forces.size(); ++i) {
        const Touch& touch = contact.touches[i];
        CHECK(forces.data()[i].x_mm == touch.x_mm);
        CHECK(forces.data()[i].force_n == touch.force_n);
        force += touch.force_n;
        torque += touch.force_n * (touch.x_mm - 32.0 + touch.slope * touch.height_mm);
    }
    CHECK_THAT(contact.force_n, WithinRel(force, 1e-14));
    CHECK_THAT(contact.torque_nmm, WithinAbs(torque, 1e-11));
}

TEST_CASE("angles the model does not cover are refused", "[action][abuse]") {
    const Joint joint = designs::joint_of(designs::heron());
    CHECK_NOTHROW(contact_at(joint, -45.0));
    CHECK_NOTHROW(contact_at(joint, 225.0));
    CHECK_THROWS_AS(contact_at(joint, -45.1), OutOfRange);
    CHECK_THROWS_AS(contact_at(joint, std::numeric_limits<double>::quiet_NaN()), OutOfRange);
    CHECK_THROWS_WITH(contact_at(joint, 226.0),
                      "blade_angle_deg: must be from -45 deg to 225 deg, got 226 deg");
}
