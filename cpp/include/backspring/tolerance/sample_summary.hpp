#pragma once

#include <Eigen/Core>
#include <array>
#include <cstdint>
#include <vector>

namespace backspring {

/// Probabilities of lying lower at which a sample's values are told.
inline constexpr std::array<double, 7> kQuantiles{0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99};

/// A sample in a few numbers; NaN without values.
struct SampleSummary {
    std::int64_t count = 0;         ///< values that are numbers
    double mean = 0.0;              ///< average
    double sd = 0.0;                ///< standard deviation, of the sample itself
    std::vector<double> quantiles;  ///< at kQuantiles, straight between the values in order
};

/// Sums up a sample; NaN is left out.
[[nodiscard]] SampleSummary summarise(const Eigen::ArrayXd& values);

}  // namespace backspring
