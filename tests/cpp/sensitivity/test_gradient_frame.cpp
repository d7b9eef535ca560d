#include <algorithm>
#include <cmath>

#include "backspring/design/dimension.hpp"
#include "backspring/sensitivity/gradient.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "figures_of.hpp"

using namespace backspring;

TEST_CASE("the gradient knows what liners do, and what moves their pins", "[frame][property]") {
    // Against central differences, to 1e-5 of a figure's largest entry for a change of 1 mm.
    Design design = designs::heron();
    design.frame.liner_thickness_mm = 1.0;
    design.frame.liner_height_mm = 12.0;
    const Gradient result = gradient(design);
    for (const std::string& figure : result.figures) {
        const auto row = std::ranges::find(result.figures, figure) - result.figures.begin();
        for (const char* key :
             {"frame.liner_thickness", "frame.liner_height", "spring.rear_pin", "spring.pin_hole",
              "spring.thickness_offset", "tang.pivot", "tang.open", "fit.dial", "fit.preload"}) {
            CAPTURE(figure, key);
            const double value = dimension_value(design, key).value_or(0.0), step = 2e-4;
            const double high = figures_of(with_dimension(design, key, value + step)).at(figure);
            const double low = figures_of(with_dimension(design, key, value - step)).at(figure);
            const double largest = result.derivative.row(row).cwiseAbs().maxCoeff();
            CHECK_THAT(result.of(figure, key),
                       WithinAbs((high - low) / (2.0 * step), 1e-5 * largest));
        }
    }
}
