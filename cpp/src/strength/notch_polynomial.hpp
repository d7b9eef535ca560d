#pragma once

#include <array>
#include <cmath>

namespace backspring::detail {

/// One of the four C of a notch's cubic: constant, share of sqrt(h/r), share of h/r.
using NotchRow = std::array<double, 3>;

/// Sum of C_i x^i, each C = a + b sqrt(h/r) + c h/r, as Roark's table of notch factors has it.
inline double notch_polynomial(const std::array<NotchRow, 4>& rows, double h_over_r, double x) {
    const double root = std::sqrt(h_over_r);
    double sum = 0.0;
    for (auto row = rows.rbegin(); row != rows.rend(); ++row) {
        sum = sum * x + (*row)[0] + (*row)[1] * root + (*row)[2] * h_over_r;
    }
    return sum;
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
