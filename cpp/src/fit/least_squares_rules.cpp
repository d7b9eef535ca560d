#include "least_squares_rules.hpp"

#include <cmath>
#include <string>

#include "backspring/core/require.hpp"

namespace backspring::detail {

void require_sense(const std::vector<Unknown>& unknowns, const LeastSquaresRules& given) {
    Requirements rules;
    rules.in_range("most_iterations", given.most_iterations, 1.0, 1e5, "");
    rules.in_range("tolerance", given.tolerance, 1e-12, 1e-2, "");
    for (std::size_t i = 0; i < unknowns.size(); ++i) {
        const Unknown& each = unknowns[i];
        const std::string key = "unknowns[" + std::to_string(i) + "]";
        rules.require(each.least <= each.greatest, key, [&] {
            return "its bounds must rise, got " + with_unit(each.least, "") + " to " +
                   with_unit(each.greatest, "");
        });
        rules.require(std::isfinite(each.start) && std::isfinite(each.expected), key, [] {
            return std::string("start and expected value must be finite numbers");
        });
        rules.require(each.step > 0.0 && std::isfinite(each.step), key, [&] {
            return "step must be greater than 0, got " + with_unit(each.step, "");
        });
        rules.require(each.expected_sd > 0.0, key, [&] {
            return "expected_sd must be greater than 0, got " + with_unit(each.expected_sd, "");
        });
    }
    rules.throw_if_any();
}

}  // namespace backspring::detail
