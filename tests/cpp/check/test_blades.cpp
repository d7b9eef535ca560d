#include <algorithm>
#include <cmath>

#include "backspring/check/check.hpp"
#include "backspring/check/columns.hpp"
#include "backspring/core/angle.hpp"
#include "backspring/design/cases.hpp"
#include "backspring/design/joint_of.hpp"
#include "catch.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace {

std::vector<Design> all_kinds() {
    return {designs::bunting(SupportKind::clamped), designs::bunting(SupportKind::two_pins),
            designs::whinchat(), designs::redstart()};
}

double energy_nmm(const Design& design, const std::vector<double>& angles_deg) {
    return contacts_at(design, angles_deg).front().contact.energy_nmm;
}

/// Rate of the whole spring's energy with one blade's angle, the others held.
double energy_rate_nmm(const Design& design, std::vector<double> angles_deg, std::size_t blade) {
    constexpr double h = 2e-3;
    const double angle = angles_deg[blade];
    const auto at = [&](double k) {
        angles_deg[blade] = angle + k * h;
        return energy_nmm(design, angles_deg);
    };
    return (8.0 * (at(1) - at(-1)) - at(2) + at(-2)) / (12.0 * radians(h));
}

}  // namespace

TEST_CASE("torque on every blade is the rate of the whole spring's energy", "[blades][property]") {
    for (const Design& design : all_kinds()) {
        for (const double a : {7.3, 31.1, 55.7, 101.9, 144.4}) {
            for (const double b : {3.1, 66.6, 133.3}) {
                std::vector<double> angles{a, b, 117.7};
                angles.resize(design.blades.size());
                const auto found = contacts_at(design, angles);
                double scale = 0.0;
                for (const BladeContact& blade : found) {
                    scale = std::max(scale, std::abs(blade.contact.torque_nmm));
                }
                for (std::size_t i = 0; i < angles.size(); ++i) {
                    CAPTURE(design.blades.size(), i, a, b);
                    CHECK_THAT(found[i].contact.torque_nmm,
                               WithinAbs(energy_rate_nmm(design, angles, i), 1e-6 * scale));
                }
            }
        }
    }
}

TEST_CASE("a spring seen from either end is the same spring", "[blades][property]") {
    for (const Design& design : all_kinds()) {
        std::vector<double> angles{40.0, 120.0, 15.0};
        angles.resize(design.blades.size());
        const auto here = contacts_at(design, angles);
        for (std::size_t k = 1; k < angles.size(); ++k) {
            std::vector<double> turned = angles;
            std::rotate(turned.begin(), turned.begin() + static_cast<int>(k),
                        turned.begin() + static_cast<int>(k) + 1);
            for (const BladeContact& there : contacts_at(seen_from(design, k), turned)) {
                const auto same = std::ranges::find(here, there.name, &BladeContact::name);
                CHECK_THAT(there.contact.force_n, WithinRel(same->contact.force_n, 1e-9) ||
                                                      WithinAbs(same->contact.force_n, 1e-9));
                CHECK_THAT(there.moved_mm, WithinAbs(same->moved_mm, 1e-10));
                CHECK_THAT(there.contact.energy_nmm, WithinRel(same->contact.energy_nmm, 1e-10));
            }
        }
    }
}

TEST_CASE("a blade free to seat rests where its torque vanishes", "[blades][property]") {
    for (const Design& design : all_kinds()) {
        for (const Design& one : cases(design)) {
            const Joint joint = make_joint(one);
            for (const double angle : {20.0, 90.0, 170.0}) {
                const Contact contact = contact_at(joint, angle);
                const std::vector<Contact> blades = blades_of(joint, contact);
                const std::vector<std::size_t> places = blades_in_joint(one);
                for (std::size_t i = 1; i < blades.size(); ++i) {
                    const Blade& blade = one.blades[places[i]];
                    CAPTURE(blade.name, static_cast<int>(blade.stands), angle,
                            blades[i].blade_angle_deg, blades[i].force_n);
                    if (blade.stands == Stand::open) {
                        CHECK(blades[i].blade_angle_deg == 180.0);
                    } else if (contact.others.all_rest) {
                        CHECK_THAT(blades[i].torque_nmm, WithinAbs(0.0, 1e-6));
                    }
                }
            }
        }
    }
}

TEST_CASE("peak stress is the largest along the whole spring", "[blades][property]") {
    for (const Design& design : {designs::bunting(SupportKind::two_pins), designs::whinchat()}) {
        for (const Check& check : check_blades(design)) {
            for (const Beside& row : check.beside) {
                CHECK(row.travel.peak_stress_mpa > 0.0);
                for (const Position& position : row.positions) {
                    CHECK(row.travel.peak_stress_mpa >= position.peak_stress_mpa * (1.0 - 1e-9));
                }
            }
        }
    }
}

TEST_CASE("cases are the positions of all other blades", "[blades]") {
    CHECK(cases(designs::heron()).size() == 1);
    CHECK(cases(designs::bunting(SupportKind::two_pins)).size() == 2);
    CHECK(cases(designs::redstart()).size() == 6);
    CHECK(all_cases(designs::redstart()).size() == 6 + 6 + 9);
    const Design first = cases(designs::redstart()).front();
    for (const Blade& blade : first.blades) {
        CHECK(blade.stands == Stand::closed);
    }
}

TEST_CASE("a broken rule of another blade goes by its own key", "[blades][abuse]") {
    const auto keys = [](const Design& design) {
        std::string text;
        for (const Fault& fault : faults(design)) text += fault.key + " ";
        return text;
    };
    Design design = designs::bunting(SupportKind::clamped);
    CHECK(keys(design).empty());
    design.blades[1].tang.open_mm = -1.0;
    CHECK(keys(design) == "blades.pen.tang.open ");
    design = designs::bunting(SupportKind::two_pins);
    design.blades[1].pad = {23.0, 40.0};
    design.blades[1].fit.dial_mm = std::nan("");
    CHECK(keys(design) == "blades.pen.pad blades.pen.fit.dial ");
    design = designs::bunting(SupportKind::root_stiffness);
    CHECK_THAT(keys(design), ContainsSubstring("spring.support"));
    CHECK_THROWS_AS(check_blades(design), InvalidInput);
    design = designs::whinchat();
    design.blades[1].name = "main";
    CHECK_THAT(keys(design), ContainsSubstring("blades.main.name"));
    design = designs::whinchat();
    design.blades[1].tang.pivot_mm = 31.0;
    CHECK_THAT(keys(design), ContainsSubstring("blades.sheep.pad"));
    design = designs::bunting(SupportKind::two_pins);
    design.own().blade.length_mm = 90.0;
    CHECK(keys(design) == "blade.length ");
}
