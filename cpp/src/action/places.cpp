#include "places.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "backspring/spring/stretches.hpp"
#include "tent.hpp"

namespace backspring {
namespace {

constexpr int kMostBearing = 10;
constexpr int kMostMoves = 12;
constexpr double kAlong = 1e-15;        // a slope below this is rounding
constexpr double kNearlyAlong = 1e-11;  // and below this, if it gets no less

using Column = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, kMostBearing, 1>;
using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, kMostBearing, kMostBearing>;

const Stretch& stretch_of(const Flexibility& flexibility, double x_mm) {
    const auto& all = flexibility.stretches;
    std::size_t i = all.size() - 1;
    while (i > 0 && x_mm < all[i].start_mm) --i;
    return all[i];
}

/// Curvature of the beam per moment.
double curvature_per_nmm(const Flexibility& flexibility, double x_mm) {
    const Stretch& stretch = stretch_of(flexibility, x_mm);
    return flexibility.bending_factor / 12.0 * unit_rates(stretch, x_mm).bending;
}

/// Touches with all forces that keep them in touch, and how far each runs along the face.
struct Together {
    const Flexibility& flexibility;
    std::vector<Borne>& borne;
    Eigen::Index n = static_cast<Eigen::Index>(borne.size());
    Matrix slopes{n, n};  ///< face slope at one touch per force at another
    Column forces{n}, misses{n};
    std::array<BeamPlace, kMostBearing> places{};
    bool edges_hold = true;  ///< no touch at an edge of its pad would come off it
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
    [[nodiscard]] bool of_two_blades(Eigen::Index i, Eigen::Index j) const {
        return touch(i).part.blade != touch(j).part.blade;
    }
    [[nodiscard]] bool at_edge(Eigen::Index i) const {
        const Pad& pad = indenter(i).pad;
        return touch(i).x_mm == pad.start_mm || touch(i).x_mm == pad.end_mm;
    }

    void solve() {
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
        misses = slopes * forces;
        edges_hold = true;
        for (Eigen::Index i = 0; i < n; ++i) {
            misses[i] += indenter(i).face_slope_at(touch(i).x_mm) - touch(i).slope;
            if (!at_edge(i)) continue;
            const bool start = touch(i).x_mm == indenter(i).pad.start_mm;
            edges_hold = edges_hold && (start ? misses[i] >= 0.0 : misses[i] <= 0.0);
            misses[i] = 0.0;
        }
    }

    /// How all misses change as one touch is moved: by slope on an arc, by station on a flat.
    [[nodiscard]] Column rates(Eigen::Index i) const {
        const Touch& moved = touch(i);
        double away = 1.0, turn = 0.0;
        if (!moved.part.flat) {
            const double steep = 1.0 + moved.slope * moved.slope;
            away = -indenter(i).outline.radius_mm(moved.part.arc) / (steep * std::sqrt(steep));
            turn = 1.0;
        }
        Column lack = -forces[i] * away * slopes.row(i).transpose();
        lack[i] -= misses[i] * away;
        Column rate = slopes * solver.solve(lack);
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
        rate[i] -= turn;
        return rate;
    }

    /// @returns  false where the touch would leave its part or its pad
    bool move(Eigen::Index i, double by) {
        Touch& moved = touch(i);
        const TurnedOutline& outline = indenter(i).outline;
        const int arc = moved.part.arc;
        if (moved.part.flat) {
            const SurfacePoint front = outline.at_slope(arc, moved.slope);
            const SurfacePoint rear = outline.at_slope(arc + 1, moved.slope);
            moved.x_mm += by;
            const double x = moved.x_mm - indenter(i).pivot_mm;
            if (!(x > rear.x_mm && x < front.x_mm)) return false;
            moved.height_mm = front.y_mm + moved.slope * (x - front.x_mm);
        } else {
            const double slope = moved.slope + by;
            if (!(slope >= outline.lowest_slope(arc) && slope <= outline.highest_slope(arc)))
                return false;
            const SurfacePoint place = outline.at_slope(arc, slope);
            moved.x_mm = indenter(i).pivot_mm + place.x_mm;
            moved.height_mm = place.y_mm;
            moved.slope = slope;
        }
        const Pad& pad = indenter(i).pad;
        return moved.x_mm > pad.start_mm && moved.x_mm < pad.end_mm;
    }

    bool step() {
        Matrix all = Matrix::Identity(n, n);
        for (Eigen::Index i = 0; i < n; ++i) {
            if (!at_edge(i)) all.col(i) = rates(i);
        }
        for (Eigen::Index i = 0; i < n; ++i) {
            if (!at_edge(i)) continue;
            all.row(i).setZero();
            all(i, i) = 1.0;
        }
        const Column by = all.partialPivLu().solve(-misses);
        if (!by.allFinite()) return false;
        for (Eigen::Index i = 0; i < n; ++i) {
            if (!at_edge(i) && !move(i, by[i])) return false;
        }
        return true;
    }
};

}  // namespace

bool detail::move_together(const Flexibility& flexibility, std::vector<Borne>& borne) {
    if (borne.size() > kMostBearing) return false;
    std::vector<Borne> moved = borne, best;
    Together together{flexibility, moved};
    double last = std::numeric_limits<double>::infinity();
    bool edges_hold = false;
    for (int round = 0; round < kMostMoves; ++round) {
        together.solve();
        if (!(together.forces.minCoeff() > 0.0)) return false;
        const double miss = together.misses.cwiseAbs().maxCoeff();
        if (!(miss < last)) break;
        last = miss;
        edges_hold = together.edges_hold;
        for (Eigen::Index i = 0; i < together.n; ++i)
            together.touch(i).force_n = together.forces[i];
        best = moved;
        if (miss <= kAlong || !together.step()) break;
    }
    if (!(last <= kNearlyAlong && edges_hold)) return false;
    borne = best;
    return true;
}

}  // namespace backspring
