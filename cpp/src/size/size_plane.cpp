#include <Eigen/Dense>
#include <array>
#include <cmath>

#include "backspring/sensitivity/gradient.hpp"
#include "size_trial.hpp"

namespace backspring {
namespace {

constexpr int kPlaneParts = 12;
constexpr int kPlaneRounds = 24;
constexpr double kMet = 1e-11;
constexpr double kStep = 1e-6;

using Sizes = Eigen::Vector2d;

class Plane {
  public:
    Plane(const Design& design,
          const FreeMeasure& first,
          const FreeMeasure& second,
          const Wanted& wanted)
        : design_(design), measures_{&first, &second}, wanted_(wanted) {}

    [[nodiscard]] Trial at(const Sizes& sizes) const {
        Design design = design_;
        for (int i = 0; i < 2; ++i) {
            design = with_size(design, measure(i).dimension, sizes[i]);
        }
        Trial trial = try_design(std::move(design));
        trial.sizes_mm = {sizes[0], sizes[1]};
        return trial;
    }

    [[nodiscard]] Found search() const {
        Found found = inside();
        for (int i = 0; i < 2; ++i) {
            for (const double edge : {measure(i).bounds.low_mm, measure(i).bounds.high_mm}) {
                const Line line = [&, i](double size) {
                    Sizes sizes;
                    sizes[i] = edge;
                    sizes[1 - i] = size;
                    return at(sizes);
                };
                found.add(find_on_line(line, measure(1 - i).bounds, wanted_));
            }
        }
        return found;
    }

    /// Narrows a grid about the nearest trial so far.
    [[nodiscard]] Trial narrowed(Trial best) const {
        Sizes span = high() - low();
        for (int round = 0; round < kPlaneRounds; ++round, span *= 0.5) {
            std::vector<Trial> trials{best};
            for (int i = -2; i <= 2; ++i) {
                for (int j = -2; j <= 2; ++j) {
                    const Sizes about{best.sizes_mm[0], best.sizes_mm[1]};
                    const Sizes step = 0.25 * span.cwiseProduct(Sizes(i, j));
                    Trial trial = at((about + step).cwiseMax(low()).cwiseMin(high()));
                    if (trial.works()) trials.push_back(std::move(trial));
                }
            }
            best = *nearest_of(trials, wanted_);
        }
        return best;
    }

  private:
    [[nodiscard]] const FreeMeasure& measure(int i) const {
        return *measures_[static_cast<std::size_t>(i)];
    }
    [[nodiscard]] Sizes low() const { return {measure(0).bounds.low_mm, measure(1).bounds.low_mm}; }
    [[nodiscard]] Sizes high() const {
        return {measure(0).bounds.high_mm, measure(1).bounds.high_mm};
    }

    [[nodiscard]] Sizes misses(const Trial& trial) const {
        return {wanted_.miss(trial), wanted_.spare(trial)};
    }

    /// Solutions found from each cell of a grid in which both misses may vanish.
    [[nodiscard]] Found inside() const {
        std::vector<Trial> grid;
        const Sizes ratio = high().cwiseQuotient(low());
        for (int i = 0; i <= kPlaneParts; ++i) {
            for (int j = 0; j <= kPlaneParts; ++j) {
                grid.push_back(at({low()[0] * std::pow(ratio[0], i / double{kPlaneParts}),
                                   low()[1] * std::pow(ratio[1], j / double{kPlaneParts})}));
            }
        }
        Found found;
        for (int i = 0; i < kPlaneParts; ++i) {
            for (int j = 0; j < kPlaneParts; ++j) start_in_cell(grid, i, j, found);
        }
        for (Trial& trial : grid) {
            if (trial.works()) found.others.push_back(std::move(trial));
        }
        return found;
    }

    void start_in_cell(const std::vector<Trial>& grid, int i, int j, Found& found) const {
        Sizes least = Sizes::Constant(1e300), most = -least, middle = Sizes::Zero();
        for (const auto& [k, l] : {std::pair{0, 0}, {0, 1}, {1, 0}, {1, 1}}) {
            const Trial& trial =
                grid[static_cast<std::size_t>((i + k) * (kPlaneParts + 1) + j + l)];
            if (!trial.works()) return;
            least = least.cwiseMin(misses(trial));
            most = most.cwiseMax(misses(trial));
            middle += 0.25 * Sizes(trial.sizes_mm[0], trial.sizes_mm[1]);
        }
        // A curve that only clips a cell leaves its corners on one side, hence a half beside.
        const Sizes beside = 0.5 * (most - least);
        if (((least - beside).array() > 0.0).any() || ((most + beside).array() < 0.0).any()) return;
        if (const auto solved = newton(at(middle))) found.answers.push_back(*solved);
    }

    /// Newton's method; a step that does not bring both nearer is halved.
    [[nodiscard]] std::optional<Trial> newton(Trial trial) const {
        if (!trial.works()) return std::nullopt;
        for (int round = 0; round < kPlaneRounds; ++round) {
            const Sizes miss = misses(trial);
            if (miss.cwiseAbs().maxCoeff() < kMet) return trial;
            const Sizes here{trial.sizes_mm[0], trial.sizes_mm[1]};
            Sizes step = -jacobian(trial).fullPivLu().solve(miss);
            bool nearer = false;
            for (int halving = 0; halving < 12 && !nearer; ++halving, step *= 0.5) {
                Trial next = at((here + step).cwiseMax(low()).cwiseMin(high()));
                nearer = next.works() && misses(next).norm() < miss.norm();
                if (nearer) trial = std::move(next);
            }
            if (!nearer)
                return miss.cwiseAbs().maxCoeff() < 1e-9 ? std::optional(trial) : std::nullopt;
        }
        return std::nullopt;
    }

    [[nodiscard]] Eigen::Matrix2d jacobian(const Trial& trial) const {
        // Beside other blades the gradient is no more exact than the differences below.
        const bool alone = trial.design.blades.size() == 1;
        const auto slopes = alone ? std::optional(gradient(trial.design)) : std::nullopt;
        Eigen::Matrix2d result;
        for (int i = 0; i < 2; ++i) {
            result.col(i) = column(trial, slopes, measure(i).dimension, i);
        }
        return result;
    }

    [[nodiscard]] Sizes column(const Trial& trial,
                               const std::optional<Gradient>& slopes,
                               const SizeDimension& dimension,
                               int i) const {
        const double size = trial.sizes_mm[static_cast<std::size_t>(i)];
        const auto from_gradient = [&](std::string_view key, double per_mm) {
            return Sizes(slopes->of("peak_pull_n", key) * per_mm / *wanted_.target.pull_n,
                         slopes->of("yield_margin", key) * per_mm / *wanted_.target.yield_margin);
        };
        if (slopes && !dimension.station_mm) {
            if (dimension.key == "spring.thickness") {
                return from_gradient("spring.thickness_scale", 1.0 / size);
            }
            if (dimension.key == "fit.preload" || dimension.key == "spring.width") {
                return from_gradient(dimension.key, 1.0);
            }
        }
        // Several numbers of the design move together.
        const double step = kStep * size;
        const Trial moved = try_design(with_size(trial.design, dimension, size + step));
        if (!moved.works()) return Sizes(1.0, 1.0);
        return (misses(moved) - misses(trial)) / step;
    }

    const Design& design_;
    std::array<const FreeMeasure*, 2> measures_;
    const Wanted& wanted_;
};

}  // namespace

Found detail::find_on_plane(const Design& design,
                            const FreeMeasure& first,
                            const FreeMeasure& second,
                            const Wanted& wanted) {
    const Plane plane(design, first, second, wanted);
    Found found = plane.search();
    if (!found.answers.empty()) return found;
    if (const Trial* best = nearest_of(found.others, wanted)) {
        found.others = {plane.narrowed(*best)};
    }
    return found;
}

}  // namespace backspring
