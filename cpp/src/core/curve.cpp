#include "backspring/core/curve.hpp"

#include <algorithm>
#include <string>

#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"

namespace backspring {

double interpolate(std::span<const CurvePoint> table, double x, std::string_view name) {
    if (!(x >= table.front().x && x <= table.back().x)) {
        throw OutOfRange(std::string(name) + ": known from " + with_unit(table.front().x, "") +
                         " to " + with_unit(table.back().x, "") + ", got " + with_unit(x, ""));
    }
    const auto above = std::upper_bound(table.begin(), table.end() - 1, x,
                                        [](double v, const CurvePoint& p) { return v < p.x; });
    const CurvePoint& a = *(above - 1);
    const CurvePoint& b = *above;
    return a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x);
}

}  // namespace backspring
