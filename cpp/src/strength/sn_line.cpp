#include "backspring/strength/sn_line.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/require.hpp"
#include "within.hpp"

namespace backspring {
namespace {

constexpr double kFew = 1e3;
constexpr double kMany = 1e6;

double at_few(const SnLine& line) { return line.share_at_thousand * line.tensile_mpa; }

double steep_exponent(const SnLine& line) { return std::log10(line.share_at_thousand) / 3.0; }

double exponent(const SnLine& line) { return -std::log10(at_few(line) / line.endurance_mpa) / 3.0; }

}  // namespace

Band share_at_thousand(double tensile_mpa) {
    const double s = std::clamp(tensile_mpa / kMpaPerKpsi, 70.0, 200.0);
    const double f = 1.06 - 2.8e-3 * s + 6.9e-6 * s * s;
    return {.value = f, .low = 0.83 * f, .high = 1.05 * f};
}

SnLine make_sn_line(double tensile_mpa, double share_at_thousand, double endurance_mpa) {
    Requirements rules;
    rules.positive("tensile_mpa", tensile_mpa, 1e6, "MPa");
    rules.positive("endurance_mpa", endurance_mpa, 1e6, "MPa");
    rules.require(share_at_thousand > 0.0 && share_at_thousand < 1.0, "share_at_thousand", [&] {
        return "must be greater than 0 and less than 1, got " + with_unit(share_at_thousand, "");
    });
    const double few = share_at_thousand * tensile_mpa;
    rules.require(!rules.faults().empty() || endurance_mpa < few, "endurance_mpa", [&] {
        return "must be less than share_at_thousand x tensile_mpa, " + with_unit(few, "MPa") +
               ", got " + with_unit(endurance_mpa, "MPa");
    });
    rules.throw_if_any();
    return {tensile_mpa, share_at_thousand, endurance_mpa};
}

double fatigue_strength_mpa(const SnLine& line, double cycles) {
    if (!(cycles >= 1.0)) {
        throw OutOfRange("cycles: must be at least 1, got " + with_unit(cycles, ""));
    }
    if (cycles >= kMany) return line.endurance_mpa;
    if (cycles >= kFew) return line.endurance_mpa * std::pow(cycles / kMany, exponent(line));
    return line.tensile_mpa * std::pow(cycles, steep_exponent(line));
}

std::optional<double> cycles_to_failure(const SnLine& line, double reversed_mpa) {
    if (reversed_mpa <= line.endurance_mpa) return std::nullopt;
    if (reversed_mpa > line.tensile_mpa) return 0.0;
    if (reversed_mpa > at_few(line)) {
        return std::pow(reversed_mpa / line.tensile_mpa, 1.0 / steep_exponent(line));
    }
    return kMany * std::pow(reversed_mpa / line.endurance_mpa, 1.0 / exponent(line));
}

}  // namespace backspring
