#include "backspring/action/snap.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

/// Plate 80 x 18 x 2.5 mm of 7.85 g/cm3, pivot on the centre line 4 mm from an end.
BladeBody plate() {
    BladeBody blade;
    blade.mass_g = 28.26;
    blade.length_mm = 80.0;
    blade.height_mm = 18.0;
    return blade;
}

Tang reaching_back_4_mm() {
    Tang tang = designs::heron().own().tang;
    tang.half_stop_mm = 4.0;
    return tang;
}

}  // namespace

TEST_CASE("a plate's inertia about its pivot follows the parallel-axis theorem",
          "[action][closed form]") {
    // Evaluated apart: 52.45998 kg mm2.
    const auto inertia = inertia_kg_mm2(plate(), reaching_back_4_mm());
    REQUIRE(inertia);
    CHECK_THAT(*inertia, WithinRel(52.45998, 1e-6));
}

TEST_CASE("a stated inertia goes before an estimate", "[action][property]") {
    BladeBody blade = plate();
    blade.inertia_kg_mm2 = 40.0;
    CHECK(inertia_kg_mm2(blade, reaching_back_4_mm()) == 40.0);
}

TEST_CASE("without mass, length or height no inertia is made up", "[action][property]") {
    BladeBody blade = plate();
    blade.height_mm.reset();
    CHECK_FALSE(inertia_kg_mm2(blade, reaching_back_4_mm()));
    CHECK_FALSE(inertia_kg_mm2(BladeBody{}, reaching_back_4_mm()));
}

TEST_CASE("energy turns into speed by sqrt(2 U / J)", "[action][closed form]") {
    // Evaluated apart to nine digits.
    CHECK_THAT(angular_speed_rad_per_s(20.0, 52.45998), WithinRel(27.6131489, 1e-7));
    CHECK_THAT(angular_speed_rad_per_s(50.0, 52.45998), WithinRel(43.6602200, 1e-7));
    CHECK(angular_speed_rad_per_s(0.0, 52.0) == 0.0);
}
