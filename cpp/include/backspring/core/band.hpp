#pragma once

namespace backspring {

/// A number that is only known within limits.
struct Band {
    double value = 0.0;  ///< most likely value
    double low = 0.0;    ///< lower limit
    double high = 0.0;   ///< upper limit
};

}  // namespace backspring
