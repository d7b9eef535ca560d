#include "stressed_piece.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace backspring {
namespace {

constexpr std::size_t kMostNear = 8;

/// What each of a few turns has in a polynomial through all of them, at an angle.
std::array<double, kMostNear> lagrange_shares(std::span<const SeenForces> near, double angle_deg) {
    std::array<double, kMostNear> shares{}, under{};
    double all = 1.0;
    for (std::size_t k = 0; k < near.size(); ++k) {
        under[k] = 1.0;
        for (std::size_t j = 0; j < k; ++j) {
            const double apart = near[k].angle_deg - near[j].angle_deg;
            under[k] *= apart;
            under[j] *= -apart;
        }
        const double away = angle_deg - near[k].angle_deg;
        if (away == 0.0) {
            shares[k] = 1.0;
            return shares;
        }
        all *= away;
    }
    for (std::size_t k = 0; k < near.size(); ++k) {
        shares[k] = all / (under[k] * (angle_deg - near[k].angle_deg));
    }
    return shares;
}

}  // namespace

void StressedPiece::take_in(const SeenForces& seen) {
    constexpr double close = 2e-3;
    const auto away = [&](const SeenForces& each) {
        return std::abs(each.angle_deg - seen.angle_deg);
    };
    const auto near = std::ranges::min_element(seen_, {}, away);
    if (away(*near) <= close * (seen_.back().angle_deg - seen_.front().angle_deg)) {
        *near = seen;
        return;
    }
    seen_.insert(std::ranges::upper_bound(seen_, seen.angle_deg, {}, &SeenForces::angle_deg), seen);
}

std::size_t StressedPiece::before(double angle_deg) const {
    const auto behind = std::ranges::upper_bound(seen_, angle_deg, {}, &SeenForces::angle_deg);
    const auto i = static_cast<std::size_t>(behind - seen_.begin());
    return std::min(i > 0 ? i - 1 : 0, seen_.size() > 1 ? seen_.size() - 2 : 0);
}

Loads StressedPiece::at(double angle_deg, std::size_t on_each_side) const {
    const std::size_t i = before(angle_deg), last = seen_.size() - 1;
    const std::size_t first = i + 1 - std::min(i + 1, on_each_side);
    const std::size_t end = std::min(i + on_each_side, last);
    const std::size_t count = seen_[i].loads.size();
    for (std::size_t k = first; k <= end; ++k) {
        if (seen_[k].loads.size() == count) continue;
        // Another part comes to bear somewhere about: the nearer turn tells more than a curve.
        const bool nearer =
            i < last && seen_[i + 1].angle_deg - angle_deg < angle_deg - seen_[i].angle_deg;
        return nearer ? seen_[i + 1].loads : seen_[i].loads;
    }
    const std::span<const SeenForces> near = seen().subspan(first, end - first + 1);
    const std::array<double, kMostNear> shares = lagrange_shares(near, angle_deg);
    Loads loads;
    for (std::size_t j = 0; j < count; ++j) {
        Load sum{0.0, 0.0};
        for (std::size_t k = 0; k < near.size(); ++k) {
            const Load& load = near[k].loads.data()[j];
            sum = {sum.x_mm + shares[k] * load.x_mm, sum.force_n + shares[k] * load.force_n};
        }
        loads.push_back({sum.x_mm, std::max(sum.force_n, 0.0)});
    }
    return loads;
}

}  // namespace backspring
