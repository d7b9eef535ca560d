#pragma once

#include <functional>
#include <optional>

#include "backspring/size/size.hpp"

namespace backspring::detail {

/// A design tried while sizing.
struct Trial {
    Design design;
    std::vector<double> sizes_mm;  ///< of the free measures
    std::optional<double> pull_n;
    double yield_margin = 0.0;
    std::optional<Notice> fault{};  ///< why it cannot be made or does not work

    [[nodiscard]] bool works() const { return !fault; }
};

/// Peak pull and margin of a design, as check() has them.
[[nodiscard]] Trial try_design(Design design);

/// What is wanted of a trial, as shares so that pull and margin weigh alike.
struct Wanted {
    SizeTarget target;

    /// How far the trial is over what must be met exactly, as a share of it.
    [[nodiscard]] double miss(const Trial& trial) const;

    /// How far the margin is over the wanted one, as a share; nothing wanted: 0.
    [[nodiscard]] double spare(const Trial& trial) const;

    /// Whether a trial may be an answer as far as the margin goes.
    [[nodiscard]] bool strong_enough(const Trial& trial) const;
};

/// A free measure with its bounds.
struct FreeMeasure {
    SizeDimension dimension;
    SizeBounds bounds;
};

/// Trials by size along one measure.
using Line = std::function<Trial(double size_mm)>;

/// Answers on a line, and all trials that might be the nearest when there are none.
struct Found {
    std::vector<Trial> answers;
    std::vector<Trial> others;

    void add(const Found& more);
};

/// All sizes on a line that meet what is wanted.
[[nodiscard]] Found find_on_line(const Line& line, const SizeBounds& bounds, const Wanted& wanted);

/// Sizes of two measures that meet pull and margin, and answers on the bounds.
[[nodiscard]] Found find_on_plane(const Design& design,
                                  const FreeMeasure& first,
                                  const FreeMeasure& second,
                                  const Wanted& wanted);

/// The trial that comes nearest to what is wanted: strong enough before all.
[[nodiscard]] const Trial* nearest_of(const std::vector<Trial>& trials, const Wanted& wanted);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
