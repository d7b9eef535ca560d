#include "response.hpp"

#include <Eigen/Dense>
#include <vector>

#include "equations.hpp"

namespace backspring {
namespace {

/// Takes the unknowns out of derivatives.
class Elimination {
  public:
    Elimination(const Equations& equations, Seat seat) {
        std::vector<Real> misses;
        for (std::size_t k = 0; k < equations.bearings().size(); ++k) {
            misses.push_back(equations.bearings()[k].miss);
            unknowns_.push_back(element::place + static_cast<int>(k));
        }
        if (seat == Seat::straddled) {
            for (const Bearing& b : equations.bearings()) misses.push_back(b.off_line);
            unknowns_.push_back(element::turn);
            unknowns_.push_back(element::lean);
        }
        if (seat == Seat::free && !misses.empty()) {
            misses.push_back(equations.torque());
            unknowns_.push_back(element::turn);
        }
        const auto n = static_cast<Eigen::Index>(misses.size());
        Eigen::MatrixXd by_unknown(n, n), by_element(n, Eigen::Index{element::count});
        for (Eigen::Index i = 0; i < n; ++i) {
            by_element.row(i) = misses[static_cast<std::size_t>(i)].derivatives().transpose();
            for (Eigen::Index j = 0; j < n; ++j) {
                by_unknown(i, j) = by_element(i, unknowns_[static_cast<std::size_t>(j)]);
            }
        }
        if (n > 0) moves_ = by_unknown.partialPivLu().solve(by_element);
    }

    [[nodiscard]] Answering operator()(const Real& value) const {
        Answering answer{value.value(), value.derivatives().array()};
        for (std::size_t i = 0; i < unknowns_.size(); ++i) {
            answer.per_element -= value.derivatives()[unknowns_[i]] *
                                  moves_.row(static_cast<Eigen::Index>(i)).transpose().array();
        }
        answer.per_element.head(element::touch) = 0.0;
        return answer;
    }

  private:
    std::vector<int> unknowns_;
    Eigen::MatrixXd moves_;
};

}  // namespace

Answering detail::respond(const Joint& joint,
                          const Friction& friction,
                          const State& state,
                          Asked asked,
                          double moment_at_mm) {
    const Elements elements = read_elements(joint, friction, state, joint.dial_mm);
    const Equations equations(joint, elements, state);
    const Elimination eliminated(equations, state.seat);
    switch (asked) {
        case Asked::opening_torque:
            return eliminated(equations.torque() + equations.friction());
        case Asked::deflection:
            return eliminated(equations.dial_deflection());
        case Asked::moment:
            break;
    }
    return eliminated(equations.moment(moment_at_mm));
}

}  // namespace backspring
