#include "bounded_step.hpp"

#include <Eigen/Cholesky>
#include <cmath>
#include <vector>

namespace backspring::detail {
namespace {

enum class Side { free, low, high };

struct StepSearch {
    const Eigen::MatrixXd& matrix;
    const Eigen::VectorXd& gradient;
    const Eigen::VectorXd& low;
    const Eigen::VectorXd& high;
    Eigen::VectorXd step;
    std::vector<Side> side;
};

using Places = std::vector<Eigen::Index>;

Places free_places(const StepSearch& s) {
    Places places;
    for (Eigen::Index i = 0; i < s.step.size(); ++i) {
        if (s.side[static_cast<std::size_t>(i)] == Side::free) places.push_back(i);
    }
    return places;
}

void hold_what_is_pushed_out(StepSearch& s) {
    for (Eigen::Index i = 0; i < s.step.size(); ++i) {
        Side& side = s.side[static_cast<std::size_t>(i)];
        if (s.low[i] >= 0.0 && (s.gradient[i] > 0.0 || s.high[i] <= 0.0)) side = Side::low;
        if (s.high[i] <= 0.0 && s.gradient[i] < 0.0 && side == Side::free) side = Side::high;
    }
}

/// The least over the free places, the others as they stand.
Eigen::VectorXd least_of_free(const StepSearch& s, const Places& places) {
    Eigen::VectorXd goal = s.step;
    if (places.empty()) return goal;
    const Eigen::VectorXd slope = s.gradient + s.matrix * s.step;
    const Eigen::MatrixXd part = s.matrix(places, places);
    const Eigen::VectorXd by = part.llt().solve(-slope(places));
    goal(places) += by;
    return goal;
}

/// Goes towards the goal as far as the bounds let it; holds what stops it.
bool arrive(StepSearch& s, const Eigen::VectorXd& goal, const Places& places) {
    double share = 1.0;
    Eigen::Index stopped = -1;
    for (const Eigen::Index i : places) {
        const double limit = goal[i] < s.low[i] ? s.low[i] : s.high[i];
        if (goal[i] >= s.low[i] && goal[i] <= s.high[i]) continue;
        const double reach = (limit - s.step[i]) / (goal[i] - s.step[i]);
        if (stopped >= 0 && reach >= share) continue;
        share = reach;
        stopped = i;
    }
    s.step += share * (goal - s.step);
    if (stopped < 0) return true;
    const bool down = goal[stopped] < s.low[stopped];
    s.step[stopped] = down ? s.low[stopped] : s.high[stopped];
    s.side[static_cast<std::size_t>(stopped)] = down ? Side::low : Side::high;
    return false;
}

/// Lets go the bound that holds it back most; false when none does.
bool release(StepSearch& s) {
    const Eigen::VectorXd slope = s.gradient + s.matrix * s.step;
    double most = 0.0;
    Eigen::Index place = -1;
    for (Eigen::Index i = 0; i < s.step.size(); ++i) {
        const Side side = s.side[static_cast<std::size_t>(i)];
        if (side == Side::free || s.low[i] == s.high[i]) continue;
        const double inward = side == Side::low ? -slope[i] : slope[i];
        const double gain = inward / std::sqrt(s.matrix(i, i));
        if (gain <= most) continue;
        most = gain;
        place = i;
    }
    if (place < 0) return false;
    s.side[static_cast<std::size_t>(place)] = Side::free;
    return true;
}

}  // namespace

Eigen::VectorXd bounded_step(const Eigen::MatrixXd& matrix,
                             const Eigen::VectorXd& gradient,
                             const Eigen::VectorXd& low,
                             const Eigen::VectorXd& high) {
    const Eigen::Index count = gradient.size();
    StepSearch s{.matrix = matrix,
                 .gradient = gradient,
                 .low = low,
                 .high = high,
                 .step = Eigen::VectorXd::Zero(count),
                 .side = std::vector<Side>(static_cast<std::size_t>(count), Side::free)};
    hold_what_is_pushed_out(s);
    // Each round holds or lets go one bound and lowers the sum; rounding alone could make it cycle.
    for (Eigen::Index round = 0; round < 10 * count + 10; ++round) {
        const Places places = free_places(s);
        if (arrive(s, least_of_free(s, places), places) && !release(s)) break;
    }
    return s.step;
}

}  // namespace backspring::detail
