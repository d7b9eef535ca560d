#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "figures.hpp"

namespace backspring::detail {

/// What a number of a design may move.
enum class Moves {
    nothing,   ///< of what is read
    friction,  ///< alone
    joint,     ///< on the same spring
    spring,    ///< alone
    all        ///< any of it
};

/// By the key of the number; `nothing` are strengths and what only the hand feels.
[[nodiscard]] Moves moves_of(const Design& design, std::string_view key);

/// What differences are taken of: the elements of each watched contact, stress per moment.
struct Reading {
    std::vector<Elements> elements;
    double stress_per_moment = 0.0;
    double worst_mm = 0.0;  ///< where that is
};

/// Reads the elements of a design's figures off designs that differ a little.
class ElementReader {
  public:
    /// Both outlive this.
    ElementReader(const Design& design, const Figures& figures);

    /// Of the design itself.
    [[nodiscard]] const Reading& unchanged() const { return unchanged_; }

    /// @param moves  in what the design may differ
    [[nodiscard]] Reading operator()(const Design& design, Moves moves) const;

  private:
    [[nodiscard]] std::vector<Elements> all_anew(const Design& design) const;
    void read_other_spring(std::vector<Elements>& elements, const Design& design) const;
    void read_other_tang(std::vector<Elements>& elements, const Design& design) const;
    void read_stress(Reading& reading, const Spring& spring) const;

    const Design& design_;
    const Figures& figures_;
    std::vector<WholeStretch> stretches_;
    std::optional<double> worst_mm_;
    Reading unchanged_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
