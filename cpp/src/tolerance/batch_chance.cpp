#include "backspring/tolerance/batch_chance.hpp"

#include <boost/math/special_functions/beta.hpp>
#include <cmath>

#include "backspring/core/require.hpp"

namespace backspring {

BatchChance batch_chance(std::int64_t good, std::int64_t count, std::int64_t pieces) {
    constexpr double tail = 0.025;
    const double k = static_cast<double>(good), n = static_cast<double>(count);
    const double size = static_cast<double>(pieces);
    Requirements rules;
    rules.in_range("count", n, 1.0, 1e12, "");
    rules.in_range("good", k, 0.0, n, "");
    rules.in_range("pieces", size, 1.0, 1e9, "");
    rules.throw_if_any();
    BatchChance result{.share = k / n, .share_high = 1.0};
    if (good > 0) result.share_low = boost::math::ibeta_inv(k, n - k + 1.0, tail);
    if (good < count) result.share_high = boost::math::ibetac_inv(k + 1.0, n - k, tail);
    result.chance = std::pow(result.share, size);
    result.chance_low = std::pow(result.share_low, size);
    result.chance_high = std::pow(result.share_high, size);
    return result;
}

}  // namespace backspring
