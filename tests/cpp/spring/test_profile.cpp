#include "backspring/spring/profile.hpp"
#include "catch.hpp"

using backspring::Profile;
using backspring::thickness_mm;

TEST_CASE("thickness is straight between stations and level beyond", "[spring][closed form]") {
    const Profile profile{{-10.0, 3.0}, {0.0, 4.0}, {20.0, 2.0}};
    CHECK(thickness_mm(profile, -5.0) == 3.5);
    CHECK(thickness_mm(profile, 0.0) == 4.0);
    CHECK(thickness_mm(profile, 15.0) == 2.5);
    CHECK(thickness_mm(profile, -50.0) == 3.0);
    CHECK(thickness_mm(profile, 20.0) == 2.0);
    CHECK(thickness_mm(profile, 50.0) == 2.0);
}

TEST_CASE("at a step the thickness ahead counts", "[spring][property]") {
    const Profile profile{{0.0, 4.0}, {10.0, 3.0}, {10.0, 2.0}, {20.0, 2.0}};
    CHECK(thickness_mm(profile, 10.0) == 2.0);
    CHECK_THAT(thickness_mm(profile, 10.0 - 1e-9), WithinAbs(3.0, 1e-9));
}

TEST_CASE("one station is a plain strip", "[spring][property]") {
    CHECK(thickness_mm({{0.0, 2.4}}, -7.0) == 2.4);
    CHECK(thickness_mm({{0.0, 2.4}}, 7.0) == 2.4);
}
