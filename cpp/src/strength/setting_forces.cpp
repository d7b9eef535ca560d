#include "setting_forces.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <array>
#include <cmath>

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

    /// @param guess  where to begin; empty: as if nothing set further
    [[nodiscard]] Setting search(const Loads& guess) const {
        const bool guessed = guess.size() == places_.size();
        State here = at(guessed ? forces_of(guess) : largest_forces());
        for (int step = 0; step < kMostSteps && !settled(here); ++step) {
            State next = stepped(here, newton_way(here));
            const auto change = (next.forces_n - here.forces_n).array().abs();
            if ((change <= kSameShare * here.forces_n.array()).all()) break;
            here = std::move(next);
        }
        return {with_forces(places_, here.forces_n), here.set};
    }

  private:
    /// As if nothing set further: no force is larger.
    [[nodiscard]] Numbers largest_forces() const {
        const Numbers room = needed_ - rises(places_, plastic_.shift_after({}));
        return compliance_.llt().solve(room).cwiseMax(0.0);
    }

    /// Forces, by how much the spring goes beyond where it is held, and how fast that grows.
    struct State {
        Numbers forces_n;
        FaceShift set;
        Numbers excess_mm;
        Square per_n;
    };

    [[nodiscard]] State at(const Numbers& forces) const {
        std::array<FaceShift, Loads::kMost> rates;
        const std::span<FaceShift> per_n(rates.data(), places_.size());
        const FaceShift set = plastic_.shift_after(with_forces(places_, forces), per_n);
        State state{forces, set, compliance_ * forces + rises(places_, set) - needed_, compliance_};
        for (Eigen::Index j = 0; j < forces.size(); ++j) {
            state.per_n.col(j) += rises(places_, rates[static_cast<std::size_t>(j)]);
        }
        return state;
    }

    /// No force, and the spring stays clear of the place.
    [[nodiscard]] static bool is_clear(const State& state, Eigen::Index i) {
        return state.forces_n[i] == 0.0 && state.excess_mm[i] >= 0.0;
    }

    [[nodiscard]] static bool settled(const State& state) {
        for (Eigen::Index i = 0; i < state.forces_n.size(); ++i) {
            if (!is_clear(state, i) && std::abs(state.excess_mm[i]) > kThereMm) return false;
        }
        return true;
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
                               const Loads& guess) {
    return SettingForces(plastic, flexibility, elastic, shift).search(guess);
}

Loads detail::forces_left(const Flexibility& flexibility,
                          const Loads& loads,
                          const FaceShift& away) {
    if (loads.size() == 0) return loads;
    const Numbers lost = compliances(flexibility, loads).llt().solve(rises(loads, away));
    return with_forces(loads, (forces_of(loads) - lost).cwiseMax(0.0));
}

}  // namespace backspring
