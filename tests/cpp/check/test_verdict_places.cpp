#include <algorithm>

#include "backspring/check/check.hpp"
#include "backspring/check/look.hpp"
#include "backspring/spring/profile.hpp"
#include "backspring/strength/shoulder.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

const Margin* find(const Check& check, MarginKind kind) {
    const auto found = std::find_if(check.verdict.begin(), check.verdict.end(),
                                    [&](const Margin& m) { return m.kind == kind; });
    return found == check.verdict.end() ? nullptr : &*found;
}

/// A strip held fast, without holes: nothing raises its stress.
Design strip() {
    Design design = designs::dunlin();
    design.strength.tensile_mpa = {1600.0, 1550.0, 1650.0};
    return design;
}

}  // namespace

TEST_CASE("a hollow belly carries what curved beam theory adds", "[design][published]") {
    // E. P. Popov, Engineering Mechanics of Solids, 6.10, as far as thick: a section as deep as its
    // hollow's radius carries 128.7335 MPa where a straight one carries 99.984.
    Design design = strip();
    CHECK(find(check(design), MarginKind::curve) == nullptr);
    design.surface.curve_radius_mm = thickness_mm(design.spring.thickness, 0.0);
    const Check curved = check(design);
    const Margin* curve = find(curved, MarginKind::curve);
    REQUIRE(curve);
    CHECK_THAT(curve->value / curved.travel.peak_stress_mpa,
               WithinRel(128.733538525 / 99.984, 1e-6));
    REQUIRE(curve->parameters.size() == 1);
    CHECK(curve->parameters[0].name == "nominal");
    CHECK_THAT(curve->parameters[0].value, WithinRel(curved.travel.peak_stress_mpa, 1e-9));
}

TEST_CASE("a hollow that is hardly one adds hardly anything", "[design][convergence]") {
    Design design = strip();
    design.surface.curve_radius_mm = 450.0;
    const Check flat = check(design);
    REQUIRE(find(flat, MarginKind::curve));
    const double over = find(flat, MarginKind::curve)->value / flat.travel.peak_stress_mpa - 1.0;
    // To first order a third of thickness over radius.
    CHECK_THAT(over, WithinRel(thickness_mm(design.spring.thickness, 0.0) / (3.0 * 450.0), 1e-2));
}

TEST_CASE("fatigue is judged where a notch or the outer fibre is worst", "[design][property]") {
    Design design = strip();
    const Check plain = check(design);
    REQUIRE(find(plain, MarginKind::fatigue));
    const double alone = find(plain, MarginKind::fatigue)->margin.value();
    CHECK_THAT(find(plain, MarginKind::fatigue)->value,
               WithinRel(plain.travel.peak_stress_mpa, 1e-9));
    double last = alone;
    for (const double radius : {60.0, 15.0, 4.0}) {
        CAPTURE(radius);
        design.surface.curve_radius_mm = radius;
        const Check notched = check(design);
        const Margin* fatigue = find(notched, MarginKind::fatigue);
        REQUIRE(fatigue);
        CHECK(fatigue->margin.value() < last);
        // No more than the whole of a notch counts for fatigue.
        CHECK(fatigue->value <= find(notched, MarginKind::curve)->value * (1.0 + 1e-12));
        CHECK(fatigue->names.at("notch") == name_of(MarginKind::curve));
        last = fatigue->margin.value();
        // Spring makers' tables are read with the nominal stress.
        CHECK(find(notched, MarginKind::spring_trade)->value ==
              find(plain, MarginKind::spring_trade)->value);
    }
}

TEST_CASE("a shoulder is judged with its fillet, and a rounder one carries less",
          "[design][published]") {
    // Roark, table 17.1, by the one-sided rule: nominal 6 M/(b d^2) times the factor.
    Design design = strip();
    design.spring.thickness = {{0.0, 3.4}, {10.0, 3.4}, {10.0, 2.6}, {36.5, 2.6}};
    CHECK(find(check(design), MarginKind::shoulder) == nullptr);
    double last = 1e9;
    for (const double fillet : {0.4, 0.8, 1.6}) {
        CAPTURE(fillet);
        design.surface.kink_radius_mm = fillet;
        const Check result = check(design);
        const Margin* shoulder = find(result, MarginKind::shoulder);
        REQUIRE(shoulder);
        const Contact worst = contact_at(design, shoulder->blade_angle_deg.value());
        const double moment = worst.touches[0].force_n * (worst.touches[0].x_mm - 10.0);
        const double nominal = 6.0 * moment / (design.spring.width_mm * 2.6 * 2.6);
        CHECK_THAT(shoulder->value,
                   WithinRel(nominal * one_sided_shoulder_factor(3.4, 2.6, fillet), 1e-9));
        CHECK(shoulder->value < last);
        CHECK(shoulder->station_mm.value() == 10.0);
        last = shoulder->value;
    }
}

TEST_CASE("every kind of margin has a name of its own and a group", "[design][property]") {
    for (const MarginName& each : kMarginNames) {
        CAPTURE(each.name);
        CHECK(name_of(each.kind) == each.name);
        CHECK(std::count_if(kMarginNames.begin(), kMarginNames.end(),
                            [&](const MarginName& other) { return other.name == each.name; }) == 1);
    }
    for (const Margin& margin : check(strip()).verdict) {
        const MarginName& named = kMarginNames.at(static_cast<std::size_t>(margin.kind));
        CHECK(margin.group == named.group);
    }
}

TEST_CASE("a kink without a stated root radius is told with what radii would mean",
          "[design][property]") {
    Design design = designs::heron();
    design.strength.tensile_mpa = {1460.0, 1440.0, 1480.0};
    const auto told = [](const Check& check) -> const Notice* {
        const auto found =
            std::ranges::find(check.notices, NoticeCode::kink_not_judged, &Notice::code);
        return found == check.notices.end() ? nullptr : &*found;
    };
    const Check open_question = check(design);
    const Notice* notice = told(open_question);
    REQUIRE(notice);
    const auto number = [&](const std::string& name) {
        return std::ranges::find(notice->parameters, name, &Parameter::name)->value;
    };
    int place = 0;
    for (const double radius : {0.3, 1.0, 3.0}) {
        CAPTURE(radius);
        const std::string at = std::to_string(place++);
        design.surface.kink_radius_mm = radius;
        const Check stated = check(design);
        CHECK(told(stated) == nullptr);
        const Margin* kink = find(stated, MarginKind::kink);
        REQUIRE(kink);
        CHECK(number("radius_" + at) == radius);
        CHECK_THAT(number("stress_" + at), WithinRel(kink->value, 1e-12));
        CHECK_THAT(number("yield_margin_" + at), WithinRel(kink->margin.value(), 1e-12));
    }
    CHECK(number("stress_0") > number("stress_1"));
    CHECK(number("fatigue_margin_0") < number("fatigue_margin_2"));
}

TEST_CASE("a hole's wall has a finish and a residual stress of its own", "[design][property]") {
    Design design = designs::heron();
    design.strength.tensile_mpa = {1460.0, 1440.0, 1480.0};
    const auto margin = [&](auto change) {
        Design changed = design;
        change(changed.surface);
        const Check checked = check(changed);
        const Margin* fatigue = find(checked, MarginKind::fatigue);
        REQUIRE(fatigue);
        return fatigue->margin.value();
    };
    const double drilled = margin([](Surface&) {});
    const double reamed = margin([](Surface& s) { s.hole_finish = HoleFinish::reamed; });
    const double polished = margin([](Surface& s) { s.hole_finish = HoleFinish::polished; });
    CHECK(drilled < reamed);
    CHECK(reamed < polished);
    // The hole judges this spring: peened faces do nothing for it, a burnished hole does.
    CHECK(margin([](Surface& s) { s.residual_mpa = -400.0; }) == drilled);
    CHECK(margin([](Surface& s) { s.hole_residual_mpa = -400.0; }) > 1.1 * drilled);
    CHECK(margin([](Surface& s) { s.soft_skin_mm = 0.05; }) < drilled);
}

TEST_CASE("a spring that yields tells how far it is stretched, and one that does not, nothing",
          "[design][property]") {
    Design design = designs::heron();
    design.strength.tensile_mpa = {1460.0, 1440.0, 1480.0};
    CHECK(find(check(design), MarginKind::strain) == nullptr);
    double last = 0.0;
    for (const double yield : {1170.0, 1100.0, 1000.0, 900.0}) {
        CAPTURE(yield);
        design.strength.yield_mpa = {yield, yield, yield};
        const Check checked = check(design);
        const Margin* strain = find(checked, MarginKind::strain);
        REQUIRE(strain);
        CHECK(strain->value > last);
        last = strain->value;
    }
}

TEST_CASE("yielding is judged by the likely strength, its low end by the least",
          "[verdict][closed form]") {
    const Check result = check(designs::heron());
    const auto yield = std::ranges::find(result.verdict, MarginKind::yield, &Margin::kind);
    REQUIRE(yield != result.verdict.end());
    const double stress = result.travel.peak_stress_mpa;
    CHECK_THAT(yield->margin.value(), WithinRel(1300.0 / stress, 1e-9));
    CHECK_THAT(yield->margin_low.value(), WithinRel(1200.0 / stress, 1e-9));
    CHECK(yield->limit == 1300.0);
}

TEST_CASE("a tang softer than its spring sets the limit of pressure", "[verdict][closed form]") {
    // 1.79 of the yield stress (Hertz); 392 HV at 40 HRC and 458 HV at 46 HRC (ASTM E140).
    Design design = designs::heron();
    design.hardness.spring_hrc = 46.0;
    const auto limit = [&](double tang_hrc) {
        design.own().hardness_hrc = tang_hrc;
        const Check result = check(design);
        return std::ranges::find(result.verdict, MarginKind::contact_pressure, &Margin::kind)
            ->limit;
    };
    CHECK_THAT(limit(40.0), WithinRel(1.79 * 1300.0 * 392.0 / 458.0, 1e-12));
    CHECK_THAT(limit(58.0), WithinRel(1.79 * 1300.0, 1e-12));
}
