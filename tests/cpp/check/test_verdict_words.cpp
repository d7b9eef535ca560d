#include <algorithm>
#include <cmath>
#include <tuple>

#include "backspring/check/check.hpp"
#include "backspring/check/look.hpp"
#include "backspring/core/angle.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

const Margin* row(const std::vector<Margin>& verdict, MarginKind kind) {
    const auto found = std::ranges::find(verdict, kind, &Margin::kind);
    return found == verdict.end() ? nullptr : &*found;
}

double number(const Margin& margin, const std::string& name) {
    const auto found = std::ranges::find(margin.parameters, name, &Parameter::name);
    REQUIRE(found != margin.parameters.end());
    return found->value;
}

/// A blade whose clearance is known.
Design clear_edge() {
    Design design = designs::heron();
    design.strength.tensile_mpa = {.value = 1600.0, .low = 1550.0, .high = 1650.0};
    design.own().blade.length_mm = 80.0;
    design.own().blade.edge_clearance_mm = 0.8;
    return design;
}

/// A blade with a kick whose edge is drawn.
Design drawn_edge() {
    Design design = designs::plover();
    design.own().blade.edge = {{9.0, -3.2}, {60.0, -4.0}, {75.0, 2.0}};
    return design;
}

}  // namespace

TEST_CASE("a word goes by the margin, then by its low end", "[verdict][closed form]") {
    CHECK(word_of(0.999, std::nullopt) == MarginWord::fails);
    CHECK(word_of(1.0, std::nullopt) == MarginWord::close);
    CHECK(word_of(1.149, 1.1) == MarginWord::close);
    CHECK(word_of(1.15, 1.0) == MarginWord::holds);
    CHECK(word_of(2.0, 0.99) == MarginWord::close);
    // Nothing is asked where nothing bears.
    CHECK(word_of(std::nullopt, std::nullopt) == MarginWord::holds);
}

TEST_CASE("what fails comes first and notes last", "[verdict][property]") {
    Design design = clear_edge();
    const auto place = [](const Margin& each) { return std::pair(each.word, each.margin); };
    for (const double preload : {0.3, 0.9, 1.6}) {
        CAPTURE(preload);
        design.own().fit.preload_mm = preload;
        const auto verdict = check(design).verdict;
        CHECK(std::ranges::is_sorted(verdict, {}, place));
        for (const Margin& each : verdict) {
            const bool note = each.kind == MarginKind::rap || each.kind == MarginKind::spring_trade;
            CHECK((each.word == MarginWord::note) == note);
            CHECK((note || (each.word == MarginWord::fails) == (each.margin < 1.0)));
        }
    }
    CHECK(check(design).verdict.front().word == MarginWord::fails);
}

TEST_CASE("only stainless on stainless is judged for galling", "[verdict][property]") {
    Design design = designs::heron();
    design.own().hardness_hrc = 60.0;
    design.hardness.spring_hrc = 45.0;
    for (const auto& [blade, spring, judged] : {std::tuple(false, SpringSteel::carbon, false),
                                                std::tuple(true, SpringSteel::carbon, false),
                                                std::tuple(false, SpringSteel::stainless, false),
                                                std::tuple(true, SpringSteel::stainless, true)}) {
        design.own().stainless = blade;
        design.surface.steel = spring;
        const auto verdict = check(design).verdict;
        const Margin* found = row(verdict, MarginKind::galling);
        CHECK((found != nullptr) == judged);
        if (found) CHECK(found->word == MarginWord::note);
    }
}

TEST_CASE("a rap is bounded by a hand and by letting go", "[verdict][energy]") {
    Design design = clear_edge();
    design.friction = {};
    const auto verdict = check(design).verdict;
    const Margin* rap = row(verdict, MarginKind::rap);
    REQUIRE(rap);
    // 0.2 m/s at the tip, 80 mm less the half-stop face ahead of the pivot: J w^2 / 2 in mJ is what
    // the spring takes up.
    const double reach = 80.0 - 4.62;
    const double omega = 200.0 / reach;
    const double rest = check(design).position("closed")->blade_angle_deg;
    const double past = number(*rap, "past_eased");
    const double taken =
        contact_at(design, rest - past).energy_nmm - contact_at(design, rest).energy_nmm;
    CHECK_THAT(taken, WithinRel(0.5e-3 * 52.0 * omega * omega, 1e-6));
    CHECK_THAT(rap->value, WithinRel(radians(past) * reach, 1e-12));
    CHECK_THAT(number(*rap, "gap_eased"), WithinRel(0.8 - rap->value, 1e-12));
    CHECK(number(*rap, "dip_let_go") > rap->value);
    CHECK_THAT(*rap->margin_low, WithinRel(0.8 / number(*rap, "dip_let_go"), 1e-12));
}

TEST_CASE("a drawn edge raps by the gap that is left under it", "[verdict][property]") {
    const Design design = drawn_edge();
    const Check found = check(design);
    const Margin* rap = row(found.verdict, MarginKind::rap);
    REQUIRE(rap);
    CHECK(rap->limit == *found.closed_blade.edge_gap_mm);
    const double angle = found.position("closed")->blade_angle_deg - number(*rap, "past_let_go");
    const Joint joint = designs::joint_of(design);
    const double left = *closed_blade(design, joint, contact_at(joint, angle)).edge_gap_mm;
    CHECK_THAT(number(*rap, "dip_let_go"), WithinAbs(rap->limit - left, 1e-9));
    CHECK(rap->names.at("edge") == "drawn");
}

TEST_CASE("a rap is judged where a gap is wanted", "[verdict][property]") {
    for (Design design : {clear_edge(), drawn_edge()}) {
        const auto free = check(design);
        REQUIRE(row(free.verdict, MarginKind::rap)->word == MarginWord::note);
        CHECK(std::ranges::find(free.targets, "edge_gap", &TargetResult::name) ==
              free.targets.end());
        const double left = number(*row(free.verdict, MarginKind::rap), "gap_eased");
        for (const double share : {0.99, 1.01}) {
            design.targets.edge_gap_mm = share * left;
            const Check judged = check(design);
            const auto target = std::ranges::find(judged.targets, "edge_gap", &TargetResult::name);
            REQUIRE(target != judged.targets.end());
            CHECK_THAT(*target->value, WithinRel(left, 1e-12));
            CHECK(target->met == (share < 1.0));
            const Margin* rap = row(judged.verdict, MarginKind::rap);
            CHECK((rap->word == MarginWord::fails) == (share > 1.0));
        }
    }
}

TEST_CASE("a gap wanted of a blade that tells none is missed and told", "[verdict][property]") {
    Design design = designs::heron();
    design.targets.edge_gap_mm = 0.1;
    const Check found = check(design);
    const auto target = std::ranges::find(found.targets, "edge_gap", &TargetResult::name);
    REQUIRE(target != found.targets.end());
    CHECK_FALSE(target->met);
    CHECK_FALSE(target->value);
    const auto told = std::ranges::find(found.notices, NoticeCode::target_unknown, &Notice::code);
    REQUIRE(told != found.notices.end());
    CHECK(told->names.at("missing") == "edge");
}
