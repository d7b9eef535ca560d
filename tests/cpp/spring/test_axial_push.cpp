#include <cmath>

#include "backspring/spring/axial_push.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

constexpr double kAt = 30.0, kLever = 1.2, kRise = 0.04;

double lever(double x) { return kLever + kRise * x; }

/// A clamped strip of 2.3 by 2.6 mm.
struct Strip {
    Spring spring = designs::dunlin().spring;
    Flexibility flexibility = make_flexibility(spring);
    double stiff_nmm2 = 205000.0 * 2.3 * 2.6 * 2.6 * 2.6 / 12.0;
    AxialPush push = make_axial_push(spring, flexibility, kAt, [](double x) { return lever(x); });
};

}  // namespace

TEST_CASE("a push along a strip gives way as its bending and its pressing together",
          "[spring][closed form]") {
    // Castigliano: int lever^2 ds/(E I) + L/(E A) for a lever that is straight.
    const Strip strip;
    const double bent = (std::pow(lever(kAt), 3) - std::pow(kLever, 3)) / (3.0 * kRise);
    const double pressed = kAt / (205000.0 * 2.3 * 2.6);
    CHECK_THAT(strip.push.own_mm_per_n, WithinRel(bent / strip.stiff_nmm2 + pressed, 1e-12));
}

TEST_CASE("a push along a strip bends it by the moment of its lever", "[spring][closed form]") {
    // E I y'' = lever: y = (lever(0) x^2/2 + rise x^3/6)/(E I), straight on ahead of the push.
    const Strip strip;
    const auto turn = [&](double x) { return (kLever * x + 0.5 * kRise * x * x); };
    const auto rise = [&](double x) { return 0.5 * kLever * x * x + kRise * x * x * x / 6.0; };
    for (const double x : {3.0, 17.5, 30.0, 36.0}) {
        CAPTURE(x);
        const double to = std::min(x, kAt);
        const Compliance found = push_compliance(strip.flexibility, strip.push, x);
        CHECK_THAT(found.rad_per_n, WithinRel(turn(to) / strip.stiff_nmm2, 1e-11));
        CHECK_THAT(found.mm_per_n,
                   WithinRel((rise(to) + (x - to) * turn(to)) / strip.stiff_nmm2, 1e-11));
    }
}

TEST_CASE("a push raised is the push made higher", "[spring][property]") {
    for (const auto& [name, design] : designs::all()) {
        CAPTURE(name);
        const Flexibility flexibility = make_flexibility(design.spring);
        const auto low = [](double x) { return lever(x); };
        const auto high = [](double x) { return lever(x) + 0.7; };
        const AxialPush made = make_axial_push(design.spring, flexibility, kAt, high);
        const AxialPush lifted =
            raised(make_axial_push(design.spring, flexibility, kAt, low), flexibility, 0.7);
        CHECK_THAT(lifted.own_mm_per_n, WithinRel(made.own_mm_per_n, 1e-10));
        CHECK_THAT(lifted.lever_mm(12.3), WithinRel(made.lever_mm(12.3), 1e-12));
        CHECK(lifted.lever_mm(kAt + 0.1) == 0.0);
        CHECK_THAT(push_compliance(flexibility, lifted, 25.0).mm_per_n,
                   WithinRel(push_compliance(flexibility, made, 25.0).mm_per_n, 1e-10));
    }
}
