#include "backspring/core/error.hpp"
#include "backspring/steel/hardness.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("hardness tables give their printed rows", "[steel][oracle]") {
    // ASTM E140: 45 HRC is 446 HV and 1482 MPa (215 ksi); 60 HRC is 697 HV.
    CHECK(vickers_hv(45.0) == 446.0);
    CHECK(vickers_hv(60.0) == 697.0);
    CHECK(tensile_astm_mpa(45.0) == 1482.0);
    // DIN 50150: 45.3 HRC (450 HV) is 1455 MPa; 36.6 HRC (360 HV) is 1155 MPa, not 1115.
    CHECK(tensile_din_mpa(45.3) == 1455.0);
    CHECK(tensile_din_mpa(36.6) == 1155.0);
}

TEST_CASE("harder steel is stronger all along both tables", "[steel][property]") {
    double last_hv = 0.0, last_astm = 0.0, last_din = 0.0;
    for (double hrc = 35.0; hrc <= 57.8; hrc += 0.1) {
        CAPTURE(hrc);
        CHECK(vickers_hv(hrc) > last_hv);
        CHECK(tensile_astm_mpa(hrc) > last_astm);
        CHECK(tensile_din_mpa(hrc) > last_din);
        last_hv = vickers_hv(hrc);
        last_astm = tensile_astm_mpa(hrc);
        last_din = tensile_din_mpa(hrc);
    }
}

TEST_CASE("the band of tensile strength spans both tables", "[steel][property]") {
    for (double hrc = 35.0; hrc <= 57.8; hrc += 0.1) {
        CAPTURE(hrc);
        const Band band = tensile_mpa(hrc);
        CHECK(band.low == std::min(tensile_astm_mpa(hrc), tensile_din_mpa(hrc)));
        CHECK(band.high == std::max(tensile_astm_mpa(hrc), tensile_din_mpa(hrc)));
        CHECK(band.value == 0.5 * (tensile_astm_mpa(hrc) + tensile_din_mpa(hrc)));
    }
}

TEST_CASE("between 48 and 55 HRC the two tables part by 3 to 6 %", "[steel][oracle]") {
    for (double hrc = 48.0; hrc <= 55.0; hrc += 0.5) {
        CAPTURE(hrc);
        const double ratio = tensile_astm_mpa(hrc) / tensile_din_mpa(hrc);
        CHECK(ratio > 1.03);
        CHECK(ratio < 1.06);
    }
}

TEST_CASE("hardness outside a table is refused", "[steel][abuse]") {
    CHECK_THROWS_AS(vickers_hv(19.9), OutOfRange);
    CHECK_THROWS_AS(vickers_hv(68.1), OutOfRange);
    CHECK_THROWS_AS(tensile_astm_mpa(34.9), OutOfRange);
    CHECK_THROWS_AS(tensile_din_mpa(57.9), OutOfRange);
    CHECK_THROWS_AS(tensile_mpa(58.0), OutOfRange);
}
