#include "backspring/steel/hardness.hpp"

#include <algorithm>

#include "backspring/core/curve.hpp"

namespace backspring {
namespace {

// ASTM E140 as read in a hardness tester's manual; HV at 20 and 21 HRC from memory.
constexpr CurvePoint kVickers[] = {
    {20, 238}, {21, 243}, {22, 248}, {23, 254}, {24, 260}, {25, 266}, {26, 272},
    {27, 279}, {28, 286}, {29, 294}, {30, 302}, {31, 310}, {32, 318}, {33, 327},
    {34, 336}, {35, 345}, {36, 354}, {37, 363}, {38, 372}, {39, 382}, {40, 392},
    {41, 402}, {42, 412}, {43, 423}, {44, 434}, {45, 446}, {46, 458}, {47, 471},
    {48, 484}, {49, 498}, {50, 513}, {51, 528}, {52, 544}, {53, 560}, {54, 577},
    {55, 595}, {56, 613}, {57, 633}, {58, 653}, {59, 674}, {60, 697}, {61, 720},
    {62, 746}, {63, 772}, {64, 800}, {65, 832}, {66, 865}, {67, 900}, {68, 940},
};

// ASTM column of tensile strength, ksi turned into MPa, as read with the table above.
constexpr CurvePoint kTensileAstm[] = {
    {35, 1076}, {36, 1110}, {37, 1145}, {38, 1179}, {39, 1220}, {40, 1255}, {41, 1296},
    {42, 1344}, {43, 1386}, {44, 1434}, {45, 1482}, {46, 1524}, {47, 1579}, {48, 1634},
    {49, 1696}, {50, 1758}, {51, 1820}, {52, 1882}, {53, 1951}, {54, 2013}, {55, 2075},
    {56, 2158}, {57, 2241}, {58, 2330}, {59, 2420},
};

// DIN 50150, read in two copies; one copy misprints 1155 MPa (36.6 HRC) as 1115.
constexpr CurvePoint kTensileDin[] = {
    {20.3, 770},  {21.3, 785},  {22.2, 800},  {23.1, 820},  {24, 835},    {24.8, 850},
    {25.6, 865},  {26.4, 880},  {27.1, 900},  {27.8, 915},  {28.5, 930},  {29.2, 950},
    {29.8, 965},  {31, 995},    {32.2, 1030}, {33.3, 1060}, {34.4, 1095}, {35.5, 1125},
    {36.6, 1155}, {37.7, 1190}, {38.8, 1220}, {39.8, 1255}, {40.8, 1290}, {41.8, 1320},
    {42.7, 1350}, {43.6, 1385}, {44.5, 1420}, {45.3, 1455}, {46.1, 1485}, {46.9, 1520},
    {47.7, 1555}, {48.4, 1595}, {49.1, 1630}, {49.8, 1665}, {50.5, 1700}, {51.1, 1740},
    {51.7, 1775}, {52.3, 1810}, {53, 1845},   {53.6, 1880}, {54.1, 1920}, {54.7, 1955},
    {55.2, 1995}, {55.7, 2030}, {56.3, 2070}, {56.8, 2105}, {57.3, 2145}, {57.8, 2180},
};

}  // namespace

double vickers_hv(double hardness_hrc) {
    return interpolate(kVickers, hardness_hrc, "Vickers hardness by HRC");
}

double tensile_astm_mpa(double hardness_hrc) {
    return interpolate(kTensileAstm, hardness_hrc, "tensile strength by HRC (ASTM)");
}

double tensile_din_mpa(double hardness_hrc) {
    return interpolate(kTensileDin, hardness_hrc, "tensile strength by HRC (DIN)");
}

Band tensile_mpa(double hardness_hrc) {
    const double astm = tensile_astm_mpa(hardness_hrc);
    const double din = tensile_din_mpa(hardness_hrc);
    return {.value = 0.5 * (astm + din), .low = std::min(astm, din), .high = std::max(astm, din)};
}

}  // namespace backspring
