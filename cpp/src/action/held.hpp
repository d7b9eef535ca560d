#pragma once

#include <Eigen/Cholesky>
#include <array>
#include <span>

#include "bearing.hpp"
#include "indenters.hpp"
#include "tent.hpp"

namespace backspring::detail {

/// Touches that stay where they are, whatever else bears: their forces give way.
class Held {
  public:
    // As many as can bear at one end: four blades, each with a kick.
    using Numbers = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, 8, 1>;
    using Square = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, 8, 8>;

    Held(const Flexibility& flexibility, std::span<const Borne> touches)
        : flexibility_(flexibility), touches_(touches) {
        const auto n = static_cast<Eigen::Index>(touches.size());
        overlaps_.resize(n);
        Square all(n, n);
        for (Eigen::Index i = 0; i < n; ++i) {
            const Borne& borne = at(i);
            overlaps_[i] = borne.indenter->overlap_mm(borne.touch);
            places_[static_cast<std::size_t>(i)] = beam_place(flexibility, borne.touch.x_mm);
            for (Eigen::Index j = 0; j <= i; ++j) {
                all(i, j) = all(j, i) = between(borne.touch.part, place(i), j).mm_per_n;
            }
        }
        solver_.compute(all);
        forces_ = solver_.solve(overlaps_);
    }

    [[nodiscard]] const Numbers& forces_n() const { return forces_; }

    /// How the spring answers an indenter.
    [[nodiscard]] Answer answer(const Indenter& indenter, double x) const {
        const BeamPlace here = beam_place(flexibility_, x);
        const Compliance own = compliance(flexibility_, here, here);
        const auto n = static_cast<Eigen::Index>(touches_.size());
        Numbers moves(n), turns(n);
        for (Eigen::Index i = 0; i < n; ++i) {
            const Compliance cross = between(indenter.part, here, i);
            moves[i] = cross.mm_per_n;
            turns[i] = cross.rad_per_n;
        }
        const Numbers shares = solver_.solve(moves);
        Answer answer{indenter.face_at_mm(x) + moves.dot(forces_),
                      indenter.face_slope_at(x) + turns.dot(forces_),
                      own.mm_per_n - shares.dot(moves), own.rad_per_n - shares.dot(turns)};
        // What is left of a compliance beside a touch below this share is rounding.
        constexpr double held_fast = 1e-12;
        if (answer.mm_per_n < held_fast * own.mm_per_n) answer.mm_per_n = 0.0;
        return answer;
    }

  private:
    /// What a touch does at a place of a blade.
    [[nodiscard]] Compliance between(const Part& part,
                                     const BeamPlace& moves,
                                     Eigen::Index touch) const {
        return part.blade == at(touch).touch.part.blade
                   ? compliance(flexibility_, moves, place(touch))
                   : beside_compliance(flexibility_, moves, place(touch));
    }

    [[nodiscard]] const Borne& at(Eigen::Index i) const {
        return touches_[static_cast<std::size_t>(i)];
    }

    [[nodiscard]] const BeamPlace& place(Eigen::Index i) const {
        return places_[static_cast<std::size_t>(i)];
    }

    const Flexibility& flexibility_;
    std::span<const Borne> touches_;
    std::array<BeamPlace, 8> places_;
    Numbers overlaps_, forces_;
    Eigen::LLT<Square> solver_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
