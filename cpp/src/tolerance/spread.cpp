#include "backspring/tolerance/spread.hpp"

#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <map>
#include <numbers>

#include "backspring/core/require.hpp"
#include "backspring/design/dimension.hpp"
#include "backspring/tolerance/quasi_random.hpp"

namespace backspring {
namespace {

constexpr double kFarthestSigmas = 3.0;
constexpr std::size_t kMostSpreads = kMostQuasiDimensions / 2;

std::string no_single_value(const std::string& key) {
    std::string text = "the design has no single value to spread";
    if (key == "spring.thickness") {
        text += ": spread spring.thickness_offset or spring.thickness_scale";
    }
    if (key == "spring.width") text += ": spread spring.width_offset";
    return text;
}

}  // namespace

double standard_deviation(const Spread& spread) {
    return spread.kind == SpreadKind::normal ? spread.size : spread.size / std::numbers::sqrt3;
}

double farthest(const Spread& spread) {
    return spread.kind == SpreadKind::normal ? kFarthestSigmas * spread.size : spread.size;
}

double departure(const Spread& spread, double probability) {
    if (spread.kind == SpreadKind::uniform) return spread.size * (2.0 * probability - 1.0);
    return -spread.size * std::numbers::sqrt2 * boost::math::erfc_inv(2.0 * probability);
}

void require_spreads(const Design& design, const std::vector<Spread>& spreads) {
    Requirements rules;
    rules.require(!spreads.empty(), "spreads",
                  [] { return std::string("must name at least one dimension"); });
    rules.require(spreads.size() <= kMostSpreads, "spreads", [&] {
        return "must be at most " + std::to_string(kMostSpreads) + ", got " +
               std::to_string(spreads.size());
    });
    std::map<std::string, std::string> seen;
    for (const Spread& spread : spreads) {
        const auto found = find_dimension(design, spread.key);
        const bool is_known = rules.require(found.has_value(), spread.key, [] {
            return std::string("is no dimension of a design");
        });
        if (!is_known) continue;
        const auto stated = seen.emplace(number_key(*found, design), spread.key);
        rules.require(stated.second, spread.key,
                      [&] { return given_again(spread.key, stated.first->second); });
        rules.in_range(spread.key, spread.size, 0.0, 1e6, found->field->quantity);
        rules.require(dimension_value(design, spread.key).has_value(), spread.key,
                      [&] { return no_single_value(spread.key); });
    }
    rules.throw_if_any();
}

std::vector<double> nominals(const Design& design, const std::vector<Spread>& spreads) {
    require_spreads(design, spreads);
    std::vector<double> values;
    for (const Spread& spread : spreads) {
        values.push_back(*dimension_value(design, spread.key));
    }
    return values;
}

std::vector<Change> draw_rows(const Design& design,
                              const std::vector<Spread>& spreads,
                              std::int64_t rows,
                              std::uint32_t seed) {
    const std::vector<double> middle = nominals(design, spreads);
    Requirements rules;
    rules.in_range("n", static_cast<double>(rows), 1.0, 1e7, "");
    rules.throw_if_any();
    std::vector<Change> changes;
    for (std::size_t k = 0; k < spreads.size(); ++k) {
        Change change{.key = spreads[k].key, .values = Eigen::ArrayXd(rows)};
        for (Eigen::Index i = 0; i < rows; ++i) {
            const double u = quasi_random(static_cast<std::uint32_t>(i), static_cast<int>(k), seed);
            change.values[i] = middle[k] + departure(spreads[k], u);
        }
        changes.push_back(std::move(change));
    }
    return changes;
}

}  // namespace backspring
