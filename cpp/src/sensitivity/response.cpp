#include "response.hpp"

#include <Eigen/Dense>
#include <array>
#include <vector>

#include "equations.hpp"

namespace backspring {
namespace {

/// What must be nothing of a contact, and what moves until it is.
struct Conditions {
    static constexpr int most = 4;
    std::array<const Real*, most> misses{};
    std::array<int, most> unknowns{};
    int count = 0;

    void add(const Real& miss, int unknown) {
        misses[static_cast<std::size_t>(count)] = &miss;
        unknowns[static_cast<std::size_t>(count++)] = unknown;
    }
};

/// Takes the unknowns out of a value's derivatives: one solution of their few equations turned
/// round, whatever the number of elements.
Answering eliminated(const Real& value, const Conditions& conditions) {
    using Few = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, Conditions::most, 1>;
    using Square = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, Conditions::most,
                                 Conditions::most>;
    Answering answer{value.value(), value.derivatives().array()};
    const int n = conditions.count;
    if (n > 0) {
        Square by_unknown(n, n);
        Few of_value(n);
        for (int j = 0; j < n; ++j) {
            const int unknown = conditions.unknowns[static_cast<std::size_t>(j)];
            of_value[j] = value.derivatives()[unknown];
            for (int i = 0; i < n; ++i) {
                const Real& miss = *conditions.misses[static_cast<std::size_t>(i)];
                by_unknown(j, i) = miss.derivatives()[unknown];
            }
        }
        const Few per_miss = by_unknown.partialPivLu().solve(of_value);
        for (int i = 0; i < n; ++i) {
            const Real& miss = *conditions.misses[static_cast<std::size_t>(i)];
            answer.per_element -= per_miss[i] * miss.derivatives().array();
        }
    }
    answer.per_element.head(element::touch) = 0.0;
    return answer;
}

Real asked_for(const Equations& equations, Asked asked, double moment_at_mm) {
    switch (asked) {
        case Asked::opening_torque:
            return equations.torque() + equations.friction();
        case Asked::deflection:
            return equations.dial_deflection();
        case Asked::moment:
            break;
    }
    return equations.moment(moment_at_mm);
}

}  // namespace

Answering detail::respond(const Joint& joint,
                          const Friction& friction,
                          const State& state,
                          Asked asked,
                          double moment_at_mm) {
    const Elements elements = read_elements(joint, friction, state, joint.dial_mm);
    const Equations equations(joint, elements, state);
    const std::vector<Bearing>& bearings = equations.bearings();
    Conditions conditions;
    for (std::size_t k = 0; k < bearings.size(); ++k) {
        conditions.add(bearings[k].miss, element::place + static_cast<int>(k));
    }
    Real torque;
    if (state.seat == Seat::straddled) {
        conditions.add(bearings.front().off_line, element::turn);
        conditions.add(bearings.back().off_line, element::lean);
    } else if (state.seat == Seat::free && !bearings.empty()) {
        torque = equations.torque();
        conditions.add(torque, element::turn);
    }
    return eliminated(asked_for(equations, asked, moment_at_mm), conditions);
}

}  // namespace backspring
