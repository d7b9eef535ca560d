#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <tuple>
#include <vector>

#include "backspring/action/contact.hpp"
#include "backspring/core/angle.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

enum class Bears { inside, rear_edge, front_edge };

/// Which piece of the outline a touch is on: arcs count 0, 2, 4..., flats 1, 3..., kick -1.
using TouchedPart = std::tuple<int, Bears>;

TouchedPart piece_of(const Joint& joint, const Touch& touch, double blade_angle_deg) {
    const Bears bears = touch.x_mm == joint.pad.start_mm ? Bears::rear_edge
                        : touch.x_mm == joint.pad.end_mm ? Bears::front_edge
                                                         : Bears::inside;
    const double turn = radians(blade_angle_deg) - std::numbers::pi;
    const double x = touch.x_mm - joint.pivot_mm, c = std::cos(turn), s = std::sin(turn);
    const double u = c * x + s * touch.height_mm, w = -s * x + c * touch.height_mm;
    if (const auto& kick = joint.outline.kick) {
        const double off = std::hypot(u - kick->u_mm, w - kick->w_mm) - kick->radius_mm;
        if (std::abs(off) < 1e-9) return {-1, bears};
    }
    const double normal = 0.5 * std::numbers::pi + std::atan(touch.slope) - turn;
    int piece = 0;
    for (const Arc& arc : joint.outline.body) {
        if (normal < arc.from_rad - 1e-9) break;
        if (normal <= arc.from_rad + 1e-9) return {piece - 1, bears};
        if (normal < arc.to_rad - 1e-9) return {piece, bears};
        piece += 2;
    }
    return {piece - 1, bears};
}

std::vector<TouchedPart> touched(const Joint& joint, const Contact& contact) {
    std::vector<TouchedPart> pieces;
    for (const Touch& touch : contact.all()) {
        pieces.push_back(piece_of(joint, touch, contact.blade_angle_deg));
    }
    return pieces;
}

/// Fourth-order difference of the energy; nothing where the contact set changes inside it.
std::optional<double> difference(const Joint& joint, double angle_deg, double h_deg) {
    std::array<double, 5> energy{};
    std::optional<std::vector<TouchedPart>> all;
    for (int i = -2; i <= 2; ++i) {
        const Contact contact = contact_at(joint, angle_deg + i * h_deg);
        const auto pieces = touched(joint, contact);
        if (all && *all != pieces) return std::nullopt;
        all = pieces;
        energy[static_cast<std::size_t>(i + 2)] = contact.energy_nmm;
    }
    return (8.0 * (energy[3] - energy[1]) - (energy[4] - energy[0])) / (12.0 * radians(h_deg));
}

/// Step halved until two differences agree; the pair that agrees best counts.
std::optional<double> energy_rate(const Joint& joint, double angle_deg, double enough) {
    std::optional<double> best, last;
    double closest = 1e300;
    for (double h = 4e-3; h > 1e-4; h *= 0.5) {
        const auto next = difference(joint, angle_deg, h);
        if (!next) continue;
        if (!best) best = next;
        if (last && std::abs(*next - *last) < closest) {
            closest = std::abs(*next - *last);
            best = next;
        }
        if (closest < enough) break;
        last = next;
    }
    return best;
}

}  // namespace

TEST_CASE("torque is the rate of strain energy over the whole travel", "[action][property]") {
    for (const auto& [name, design] : designs::all()) {
        const Joint joint =
            make_joint(design.spring, design.own().pad, design.own().tang, design.own().fit);
        std::vector<Contact> travel;
        for (int i = -60; i <= 1860; ++i) travel.push_back(contact_at(joint, 0.1 * i));
        double peak = 0.0;
        for (const Contact& contact : travel) peak = std::max(peak, std::abs(contact.torque_nmm));
        double worst = 0.0, worst_deg = 0.0;
        int left_out = 0;
        for (const Contact& contact : travel) {
            const auto rate = energy_rate(joint, contact.blade_angle_deg, 1e-8 * peak);
            if (!rate) {
                ++left_out;
                continue;
            }
            const double error = std::abs(contact.torque_nmm - *rate) / peak;
            if (error <= worst) continue;
            worst = error;
            worst_deg = contact.blade_angle_deg;
        }
        WARN(name << ": worst error " << worst << " of the peak torque, at " << worst_deg
                  << " deg; left out " << left_out << " of " << travel.size()
                  << " angles, where the contact set changes");
        CHECK(worst < 1e-6);
        // A handful of changes, each hiding at most the one angle that lies on it.
        CHECK(left_out <= 4);
    }
}

TEST_CASE("force, place and reading never jump between close angles", "[action][property]") {
    // Second differences at 1e-4 deg: a smooth curve leaves f'' h^2, a search that stops at a
    // grid or a loose tolerance leaves its own step.
    constexpr double h = 1e-4;
    for (const auto& [name, design] : designs::all()) {
        const Joint joint =
            make_joint(design.spring, design.own().pad, design.own().tang, design.own().fit);
        for (const double start : {0.3, 12.0, 33.3, 61.0, 89.0, 91.3, 128.0, 171.0, 179.7}) {
            std::array<std::array<double, 3>, 20> rows{};
            std::vector<TouchedPart> first;
            for (std::size_t i = 0; i < rows.size(); ++i) {
                const Contact contact = contact_at(joint, start + h * static_cast<double>(i));
                if (i == 0) first = touched(joint, contact);
                REQUIRE(touched(joint, contact) == first);
                rows[i] = {contact.force_n, contact.touches[0].x_mm,
                           deflection_mm(joint, contact, joint.dial_mm)};
            }
            for (std::size_t i = 1; i + 1 < rows.size(); ++i) {
                for (std::size_t k = 0; k < 3; ++k) {
                    CAPTURE(name, start, i, k);
                    const double bend = rows[i + 1][k] - 2.0 * rows[i][k] + rows[i - 1][k];
                    CHECK(std::abs(bend) < 1e-8);
                }
            }
        }
    }
}

TEST_CASE("torque is continuous through every change of the contact set", "[action][property]") {
    // Energy has a continuous rate wherever touches come, go or pass from arc to flat; only a
    // pad's edge, which has no radius, may pass the slope of the tang's face in one jump.
    for (const auto& [name, design] : designs::all()) {
        const Joint joint =
            make_joint(design.spring, design.own().pad, design.own().tang, design.own().fit);
        double peak = 0.0, jump = 0.0, where = 0.0;
        Contact last = contact_at(joint, -6.0);
        for (int i = -6000; i <= 186000; i += 5) {
            const Contact next = contact_at(joint, 1e-3 * i);
            peak = std::max(peak, std::abs(next.torque_nmm));
            if (std::abs(next.torque_nmm - last.torque_nmm) > jump) {
                jump = std::abs(next.torque_nmm - last.torque_nmm);
                where = next.blade_angle_deg;
            }
            last = next;
        }
        CAPTURE(name, where);
        // On a flat the place runs over millimetres within a degree: dT/dtheta up to a few peaks
        // per degree, 0.005 deg apart.
        CHECK(jump < 0.05 * peak);
    }
}
