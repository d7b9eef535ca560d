#include <algorithm>

#include "backspring/fit/allowance.hpp"
#include "backspring/fit/flush_targets.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

constexpr double kThouMm = 0.0254;

struct Ends {
    double least_mm = 0.0;
    double greatest_mm = 0.0;

    [[nodiscard]] double farthest_mm() const { return std::max(greatest_mm, -least_mm); }
};

/// Over both positions.
Ends ends_of(const WholeBack& back) {
    Ends ends;
    for (const auto& along : {back.half_stop, back.closed}) {
        if (!along) continue;
        ends.least_mm = std::min(ends.least_mm, along->least_mm);
        ends.greatest_mm = std::max(ends.greatest_mm, along->greatest_mm);
    }
    return ends;
}

}  // namespace

TEST_CASE("flush at the Heron's dial leaves the back low behind it", "[back][demo]") {
    const BackAlong half = *fitted_back(designs::heron(), 0.0).half_stop;
    CHECK_THAT(half.least_mm / kThouMm, WithinAbs(-0.82, 0.005));
    CHECK_THAT(half.least_at_mm, WithinAbs(22.0, 0.1));
    CHECK_THAT(half.greatest_mm / kThouMm, WithinAbs(0.34, 0.005));
    CHECK(half.greatest_at_mm == 36.5);
    CHECK_THAT(*flush_targets(designs::heron()).nowhere_low_mm / kThouMm, WithinAbs(2.8, 0.05));
}

TEST_CASE("the fitted back is that of the allowance's tang", "[back][property]") {
    for (const auto& [name, design] : designs::all()) {
        INFO(name);
        Design done = design;
        done.own().tang = allowance(design, 0.03).tang;
        const BackAlong own = *whole_back(done).closed;
        const BackAlong fitted = *fitted_back(design, 0.03).closed;
        CHECK(fitted.least_mm == own.least_mm);
        CHECK(fitted.greatest_mm == own.greatest_mm);
    }
}

TEST_CASE("at the target that leaves nothing low a hair less leaves some low", "[back][property]") {
    for (const auto& [name, design] : designs::all()) {
        INFO(name);
        const double target = *flush_targets(design).nowhere_low_mm;
        // Beside the middle pin, where the back hardly moves, 1e-6 mm is left out of account.
        CHECK(ends_of(fitted_back(design, target + 1e-4)).least_mm > -1e-6);
        CHECK(ends_of(fitted_back(design, target - 1e-3)).least_mm < 0.0);
    }
}

TEST_CASE("no other target keeps the back nearer to open", "[back][property]") {
    for (const auto& [name, design] : designs::all()) {
        INFO(name);
        const FlushTargets targets = flush_targets(design);
        const double best = ends_of(fitted_back(design, *targets.flattest_mm)).farthest_mm();
        CHECK_THAT(*targets.flattest_off_mm, WithinAbs(best, 1e-9));
        for (const double beside : {-0.01, -0.001, 0.001, 0.01}) {
            const double target = *targets.flattest_mm + beside;
            CHECK(ends_of(fitted_back(design, target)).farthest_mm() > best);
        }
    }
}

TEST_CASE("a dial at the flattest back's flush station fits it for 0", "[back][property]") {
    Design design = designs::heron();
    const FlushTargets targets = flush_targets(design);
    design.own().fit.dial_mm = *targets.flattest_dial_mm;
    CHECK_THAT(*flush_targets(design).flattest_mm, WithinAbs(0.0, 1e-6));
    CHECK_THAT(*flush_targets(design).flattest_off_mm, WithinAbs(*targets.flattest_off_mm, 1e-6));
}

TEST_CASE("a spring out of what its preload can reach has no such targets", "[back][abuse]") {
    // Beside the middle pin no tang moves the dial by what makes the rest of the back flush.
    Design design = designs::heron();
    design.own().fit.dial_mm = 0.001;
    const FlushTargets targets = flush_targets(design);
    CHECK_FALSE(targets.nowhere_low_mm);
    CHECK_FALSE(targets.flattest_mm);
}
