#include "setting_forces.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "backspring/core/root.hpp"

namespace backspring {
namespace {

constexpr int kMostSteps = 60;
constexpr double kThereMm = 1e-11;
constexpr double kSameShare = 4e-16;

using Numbers = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, Loads::kMost, 1>;
using Square = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, Loads::kMost, Loads::kMost>;

const Load& load_of(const Loads& loads, Eigen::Index i) { return loads.data()[i]; }

Square compliances(const Flexibility& flexibility, const Loads& loads) {
    const auto n = static_cast<Eigen::Index>(loads.size());
    Square all(n, n);
    for (Eigen::Index i = 0; i < n; ++i) {
        for (Eigen::Index j = 0; j <= i; ++j) {
            all(i, j) = all(j, i) =
                deflection_per_force(flexibility, load_of(loads, i).x_mm, load_of(loads, j).x_mm);
        }
    }
    return all;
}

Numbers rises(const Loads& loads, const FaceShift& shift) {
    Numbers all(static_cast<Eigen::Index>(loads.size()));
    for (Eigen::Index i = 0; i < all.size(); ++i) all[i] = shift.at_mm(load_of(loads, i).x_mm);
    return all;
}

Numbers forces_of(const Loads& loads) {
    Numbers all(static_cast<Eigen::Index>(loads.size()));
    for (Eigen::Index i = 0; i < all.size(); ++i) all[i] = load_of(loads, i).force_n;
    return all;
}

Loads with_forces(Loads loads, const Numbers& forces) {
    for (Eigen::Index i = 0; i < forces.size(); ++i) loads.data()[i].force_n = forces[i];
    return loads;
}

class SettingForces {
  public:
    SettingForces(const PlasticSpring& plastic,
                  const Flexibility& flexibility,
                  const Loads& elastic,
                  const FaceShift& shift)
        : plastic_(plastic),
          places_(elastic),
          compliance_(compliances(flexibility, elastic)),
          needed_(compliance_ * forces_of(elastic) + rises(elastic, shift)) {}

    /// @param guess      where to begin; empty: as if nothing set further
    [[nodiscard]] Setting search(const Loads& guess, const Enough& enough) const {
        const bool guessed = guess.size() == places_.size();
        State here = at(guessed ? forces_of(guess) : largest_forces());
        double before_mm = 0.0, now_mm = miss_mm(here);
        for (int step = 0; step < kMostSteps && now_mm > kThereMm; ++step) {
            const Numbers way = newton_way(here);
            // Steps leave the square of what they find: of the next one this is left.
            const double left_mm = before_mm > 0.0
                                       ? now_mm * now_mm * now_mm / (before_mm * before_mm)
                                   : guessed ? now_mm * now_mm / grown_mm(here)
                                             : now_mm;
            const bool last = left_mm <= enough.mm + enough.share * grown_mm(here);
            if (last && (here.forces_n + way).minCoeff() > 0.0) return moved_on(here, way);
            State next = stepped(here, way);
            const auto change = (next.forces_n - here.forces_n).array().abs();
            if ((change <= kSameShare * here.forces_n.array()).all()) break;
            here = std::move(next);
            before_mm = std::exchange(now_mm, miss_mm(here));
        }
        return {with_forces(places_, here.forces_n), here.set};
    }

  private:
    /// As if nothing set further: no force is larger.
    [[nodiscard]] Numbers largest_forces() const {
        const Numbers room = needed_ - rises(places_, plastic_.shift());
        return compliance_.llt().solve(room).cwiseMax(0.0);
    }

    /// Forces, by how much the spring goes beyond where it is held, and how fast that grows.
    struct State {
        Numbers forces_n;
        FaceShift set;
        std::array<FaceShift, Loads::kMost> set_per_n;
        Numbers excess_mm;
        Square per_n;
    };

    [[nodiscard]] State at(const Numbers& forces) const {
        State state{.forces_n = forces,
                    .set = {},
                    .set_per_n = {},
                    .excess_mm = compliance_ * forces - needed_,
                    .per_n = compliance_};
        const std::span<FaceShift> rates(state.set_per_n.data(), places_.size());
        state.set = plastic_.shift_after(with_forces(places_, forces), rates);
        state.excess_mm += rises(places_, state.set);
        for (Eigen::Index j = 0; j < forces.size(); ++j) {
            state.per_n.col(j) += rises(places_, rates[static_cast<std::size_t>(j)]);
        }
        return state;
    }

    /// A step so short that the set goes on with it in a straight line.
    [[nodiscard]] Setting moved_on(const State& from, const Numbers& way) const {
        Setting setting{with_forces(places_, from.forces_n + way), from.set};
        for (Eigen::Index j = 0; j < way.size(); ++j) {
            const FaceShift& rate = from.set_per_n[static_cast<std::size_t>(j)];
            setting.set.height_mm += rate.height_mm * way[j];
            setting.set.slope += rate.slope * way[j];
        }
        return setting;
    }

    /// No force, and the spring stays clear of the place.
    [[nodiscard]] static bool is_clear(const State& state, Eigen::Index i) {
        return state.forces_n[i] == 0.0 && state.excess_mm[i] >= 0.0;
    }

    /// By how much what it touches is beyond its place, or short of it, at most.
    [[nodiscard]] static double miss_mm(const State& state) {
        double most = 0.0;
        for (Eigen::Index i = 0; i < state.forces_n.size(); ++i) {
            if (!is_clear(state, i)) most = std::max(most, std::abs(state.excess_mm[i]));
        }
        return most;
    }

    /// By how much it has set at most since it was last let go.
    [[nodiscard]] double grown_mm(const State& state) const {
        return (rises(places_, state.set) - rises(places_, plastic_.shift())).cwiseAbs().maxCoeff();
    }

    [[nodiscard]] static Numbers newton_way(const State& state) {
        Square rate = state.per_n;
        Numbers excess = state.excess_mm;
        const auto leave_out = [&](Eigen::Index i) {
            rate.row(i).setZero();
            rate.col(i).setZero();
            rate(i, i) = 1.0;
            excess[i] = 0.0;
        };
        for (Eigen::Index i = 0; i < excess.size(); ++i) {
            if (is_clear(state, i)) leave_out(i);
        }
        Numbers way = -rate.llt().solve(excess);
        for (Eigen::Index i = 0; i < excess.size(); ++i) {
            if (state.forces_n[i] > 0.0 || way[i] >= 0.0) continue;
            leave_out(i);
            way = -rate.llt().solve(excess);
        }
        return way;
    }

    /// As far along a way as no force pulls and the spring, on the whole, is not beyond where it is
    /// held.
    [[nodiscard]] State stepped(const State& from, const Numbers& way) const {
        double most = 1.0;
        for (Eigen::Index i = 0; i < way.size(); ++i) {
            const double force = from.forces_n[i];
            if (force > 0.0 && way[i] < -force) most = std::min(most, -force / way[i]);
        }
        const auto after = [&](double share) {
            return at((from.forces_n + share * way).cwiseMax(0.0));
        };
        State whole = after(most);
        const double first = way.dot(from.excess_mm), last = way.dot(whole.excess_mm);
        constexpr double hardly = 0.5;
        if (first >= 0.0 || last <= -hardly * first) return whole;
        constexpr int bits = 12;
        const auto beyond = [&](double share) { return way.dot(after(share).excess_mm); };
        return after(find_root(beyond, 0.0, most, first, last, bits));
    }

    const PlasticSpring& plastic_;
    const Loads places_;
    const Square compliance_;
    const Numbers needed_;  ///< movement of the places, elastic and set [mm]
};

}  // namespace

Setting detail::setting_forces(const PlasticSpring& plastic,
                               const Flexibility& flexibility,
                               const Loads& elastic,
                               const FaceShift& shift,
                               const Loads& guess,
                               const Enough& enough) {
    if (elastic.size() == 1) {
        const auto& [x, force] = *elastic.data();
        const double mm_per_n = deflection_per_force(flexibility, x, x);
        return setting_force(plastic, {x, mm_per_n * force + shift.at_mm(x), mm_per_n}, guess,
                             enough);
    }
    return SettingForces(plastic, flexibility, elastic, shift).search(guess, enough);
}

void detail::lessen(const Flexibility& flexibility, Loads& loads, const FaceShift& away) {
    if (loads.size() == 0) return;
    if (loads.size() == 1) {
        Load& only = *loads.data();
        only.force_n -=
            away.at_mm(only.x_mm) / deflection_per_force(flexibility, only.x_mm, only.x_mm);
        only.force_n = std::max(only.force_n, 0.0);
        return;
    }
    const Numbers lost = compliances(flexibility, loads).llt().solve(rises(loads, away));
    loads = with_forces(loads, (forces_of(loads) - lost).cwiseMax(0.0));
}

}  // namespace backspring
