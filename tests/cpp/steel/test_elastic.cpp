#include "backspring/steel/elastic.hpp"
#include "catch.hpp"

using backspring::shear_modulus_mpa;

TEST_CASE("shear modulus is E / 2(1 + nu)", "[steel][closed form]") {
    CHECK(shear_modulus_mpa({.youngs_modulus_mpa = 200000.0, .poisson = 0.25}) == 80000.0);
    CHECK(shear_modulus_mpa({.youngs_modulus_mpa = 200000.0, .poisson = 0.0}) == 100000.0);
}
