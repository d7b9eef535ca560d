#include "places.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "along_outline.hpp"
#include "backspring/spring/stretches.hpp"
#include "tent.hpp"

namespace backspring {
namespace {

constexpr int kMostBearing = 10;
constexpr int kMostMoves = 20;
constexpr double kAlong = 1e-15;        // a slope below this is rounding
constexpr double kNearlyAlong = 1e-11;  // and below this, if it gets no less
constexpr double kStepRounding = 1e-10;
constexpr double kLeastShare = 1e-4;
constexpr int kMostInVain = 4;

const Stretch& stretch_of(const Flexibility& flexibility, double x_mm) {
    const auto& all = flexibility.stretches;
    std::size_t i = all.size() - 1;
    while (i > 0 && x_mm < all[i].start_mm) --i;
    return all[i];
}

/// Touches with all forces that keep them in touch, and how far each runs along the face; as many
/// as are known beforehand, a body and its kick, or any number.
template <int count>
struct Together {
    static constexpr int kMost = count == Eigen::Dynamic ? kMostBearing : count;
    using Column = Eigen::Matrix<double, count, 1, 0, kMost, 1>;
    using Matrix = Eigen::Matrix<double, count, count, 0, kMost, kMost>;

    const Flexibility& flexibility;
    std::vector<Borne>& borne;
    Eigen::Index n = static_cast<Eigen::Index>(borne.size());
    Matrix slopes{n, n};  ///< face slope at one touch per force at another
    Column forces{n}, misses{n};
    double twice_energy_nmm = 0.0;
    std::array<BeamPlace, kMost> places{};
    std::array<bool, kMost> held{};  ///< at an edge of its pad, and would go on beyond it
    Eigen::LLT<Matrix> solver{};

    [[nodiscard]] const Indenter& indenter(Eigen::Index i) const {
        return *borne[static_cast<std::size_t>(i)].indenter;
    }
    [[nodiscard]] Touch& touch(Eigen::Index i) const {
        return borne[static_cast<std::size_t>(i)].touch;
    }
    [[nodiscard]] const BeamPlace& place(Eigen::Index i) const {
        return places[static_cast<std::size_t>(i)];
    }
    [[nodiscard]] bool is_held(Eigen::Index i) const { return held[static_cast<std::size_t>(i)]; }
    [[nodiscard]] bool of_two_blades(Eigen::Index i, Eigen::Index j) const {
        return touch(i).part.blade != touch(j).part.blade;
    }

    /// @returns  false where a force would pull
    bool solve() {
        Matrix moves(n, n);
        Column overlaps(n);
        for (Eigen::Index i = 0; i < n; ++i) {
            places[static_cast<std::size_t>(i)] = beam_place(flexibility, touch(i).x_mm);
        }
        for (Eigen::Index i = 0; i < n; ++i) {
            overlaps[i] = indenter(i).overlap_mm(touch(i));
            for (Eigen::Index j = 0; j < n; ++j) {
                const Compliance c = of_two_blades(i, j)
                                         ? beside_compliance(flexibility, place(i), place(j))
                                         : compliance(flexibility, place(i), place(j));
                moves(i, j) = c.mm_per_n;
                slopes(i, j) = c.rad_per_n;
            }
        }
        solver.compute(moves);
        forces = solver.solve(overlaps);
        twice_energy_nmm = forces.dot(overlaps);
        misses = slopes * forces;
        for (Eigen::Index i = 0; i < n; ++i) {
            misses[i] += indenter(i).face_slope_at(touch(i).x_mm) - touch(i).slope;
            const Pad& pad = indenter(i).pad;
            const double x = touch(i).x_mm;
            const bool hold =
                (x == pad.start_mm && misses[i] >= 0.0) || (x == pad.end_mm && misses[i] <= 0.0);
            held[static_cast<std::size_t>(i)] = hold;
            if (hold) misses[i] = 0.0;
        }
        return forces.minCoeff() > 0.0;
    }

    /// How far a touch goes along the spring as it is moved: by slope on an arc, by station on a
    /// flat.
    [[nodiscard]] double away_mm(Eigen::Index i) const {
        const Touch& moved = touch(i);
        if (moved.part.flat) return 1.0;
        const double steep = 1.0 + moved.slope * moved.slope;
        return -indenter(i).outline.radius_mm(moved.part.arc) / (steep * std::sqrt(steep));
    }

    /// How force times miss changes at every touch as one is moved.
    ///
    /// That product is the energy's own rate, and goes straighter than the miss where the touches
    /// lie close and share the force.
    [[nodiscard]] Column rates(Eigen::Index i) const {
        const Touch& moved = touch(i);
        const double away = away_mm(i);
        Column lack = -forces[i] * away * slopes.row(i).transpose();
        lack[i] -= misses[i] * away;
        const Column gain = solver.solve(lack);
        Column rate = slopes * gain;
        const double root = flexibility.root_rotation_rad_per_nmm;
        for (Eigen::Index k = 0; k < n; ++k) {
            const BeamPlace& nearer = touch(k).x_mm < moved.x_mm ? place(k) : place(i);
            rate[k] += (nearer.upto.a0 + root) * forces[i] * away;
            if (touch(k).x_mm > moved.x_mm) {
                rate[i] += (touch(k).x_mm - moved.x_mm) * forces[k] * away *
                           curvature_per_nmm(flexibility, moved.x_mm);
            }
            if (!of_two_blades(k, i)) continue;
            const double tent = tent_rate(flexibility, place(k), place(i));
            rate[k] += tent * place(k).shear_rad_per_n * forces[i] * away;
            rate[i] -= tent * place(i).shear_rad_per_n * forces[k] * away;
        }
        if (!moved.part.flat) rate[i] -= 1.0;
        return forces.cwiseProduct(rate) + misses.cwiseProduct(gain);
    }

    /// Turns a step that would lose energy: where the energy is hollow it leads to the least.
    void climb(Column& by) const {
        const auto rise = [&](Eigen::Index i) {
            return -forces[i] * misses[i] * away_mm(i) * by[i];
        };
        double sum = 0.0;
        for (Eigen::Index i = 0; i < n; ++i) sum += rise(i);
        for (Eigen::Index i = 0; sum < 0.0 && i < n; ++i) {
            if (rise(i) < 0.0) by[i] = -by[i];
        }
    }

    /// Newton's step, or as much of it as does not lose energy.
    ///
    /// @returns  false where no part of it does
    bool step() {
        Matrix all = Matrix::Identity(n, n);
        for (Eigen::Index i = 0; i < n; ++i) {
            if (!is_held(i)) all.col(i) = rates(i);
        }
        for (Eigen::Index i = 0; i < n; ++i) {
            if (!is_held(i)) continue;
            all.row(i).setZero();
            all(i, i) = 1.0;
        }
        Column by = all.partialPivLu().solve(-forces.cwiseProduct(misses));
        if (!by.allFinite()) return false;
        climb(by);
        const std::vector<Borne> before = borne;
        const std::array<bool, kMost> stay = held;
        const double least = twice_energy_nmm * (1.0 - kStepRounding);
        for (double share = 1.0; share > kLeastShare; share *= 0.5) {
            bool reached = true;
            for (Eigen::Index i = 0; i < n; ++i) {
                if (!stay[static_cast<std::size_t>(i)])
                    reached = go_along(indenter(i), share * by[i], touch(i)) && reached;
            }
            if (reached && solve() && twice_energy_nmm >= least) return true;
            borne = before;
        }
        return false;
    }
};

template <int count>
bool moved_together(const Flexibility& flexibility, std::vector<Borne>& borne) {
    std::vector<Borne> moved = borne, best;
    Together<count> together{flexibility, moved};
    double least = std::numeric_limits<double>::infinity();
    int in_vain = 0;
    if (!together.solve()) return false;
    for (int round = 0; round < kMostMoves; ++round) {
        const double miss = together.misses.cwiseAbs().maxCoeff();
        in_vain = miss < least ? 0 : in_vain + 1;
        if (in_vain > (least <= kNearlyAlong ? 0 : kMostInVain)) break;
        if (in_vain == 0) {
            for (Eigen::Index i = 0; i < together.n; ++i)
                together.touch(i).force_n = together.forces[i];
            best = moved;
            least = miss;
        }
        if (miss <= kAlong || !together.step()) break;
    }
    if (!(least <= kNearlyAlong)) return false;
    borne = best;
    return true;
}

}  // namespace

PlaceRates detail::place_rates(const Flexibility& flexibility, const BeamPlace& place) {
    const Stretch& stretch = stretch_of(flexibility, place.x_mm);
    const double thinner = stretch.taper / thickness_mm(stretch, place.x_mm) +
                           stretch.width_taper / width_share(stretch, place.x_mm);
    return {curvature_per_nmm(flexibility, place.x_mm), -place.shear_rad_per_n * thinner};
}

double detail::curvature_per_nmm(const Flexibility& flexibility, double x_mm) {
    const Stretch& stretch = stretch_of(flexibility, x_mm);
    return flexibility.bending_factor / 12.0 * unit_rates(stretch, x_mm).bending;
}

double detail::shear_dip_mm(const Flexibility& flexibility,
                            double x_mm,
                            double force_n,
                            double at_mm) {
    const double away = std::abs(x_mm - at_mm);
    double dip = 0.5 * flexibility.shear_factor /
                 shear_depth_mm(stretch_of(flexibility, at_mm), at_mm) * away;
    // Bending fills it from behind, on a spring that grows thicker there by half of this at least.
    if (x_mm < at_mm) dip -= 0.5 * curvature_per_nmm(flexibility, at_mm) * away * away * away / 6.0;
    return 1.01 * force_n * std::max(dip, 0.0);
}

bool detail::move_together(const Flexibility& flexibility, std::vector<Borne>& borne) {
    if (borne.size() > kMostBearing) return false;
    return borne.size() == 2 ? moved_together<2>(flexibility, borne)
                             : moved_together<Eigen::Dynamic>(flexibility, borne);
}

}  // namespace backspring
