#include "face_solver.hpp"

#include <Eigen/Dense>
#include <cmath>

#include "backspring/core/error.hpp"

namespace backspring {
namespace {

constexpr double kStepMm = 1e-5;
constexpr double kSettledMm = 1e-8;
constexpr double kFarthestMm = 10.0;
constexpr int kRounds = 40;
constexpr int kHalvings = 12;

/// What is missing to the wanted readings at some depths; nothing where the blade will not stay.
std::optional<Eigen::Vector2d> missing(const FaceQuestion& q, const Eigen::Vector2d& depth) {
    const FaceDepths depths =
        sum(q.already, sum(along(kHalfStop, depth[0]), along(q.closed, depth[1])));
    try {
        const Pair had = readings_of(q.design, depths, q.unknowns, q.state);
        Eigen::Vector2d left = Eigen::Vector2d::Zero();
        if (q.wanted.half_stop_mm) left[0] = *had.half_stop_mm - *q.wanted.half_stop_mm;
        if (q.wanted.closed_mm) left[1] = *had.closed_mm - *q.wanted.closed_mm;
        return left;
    } catch (const Error&) {
        return std::nullopt;
    }
}

std::optional<Eigen::Matrix2d> jacobian(const FaceQuestion& q,
                                        const Eigen::Vector2d& depth,
                                        const Eigen::Vector2d& here) {
    Eigen::Matrix2d slopes = Eigen::Matrix2d::Identity();
    const std::array<bool, 2> wanted{q.wanted.half_stop_mm.has_value(),
                                     q.wanted.closed_mm.has_value()};
    for (int i = 0; i < 2; ++i) {
        if (!wanted[static_cast<std::size_t>(i)]) continue;
        Eigen::Vector2d step = Eigen::Vector2d::Zero();
        step[i] = kStepMm;
        const auto ahead = missing(q, depth + step);
        if (!ahead) return std::nullopt;
        slopes.col(i) = (*ahead - here) / kStepMm;
    }
    return slopes;
}

NoConvergence no_tang(const FaceQuestion& q) {
    Notice notice{.code = NoticeCode::no_such_tang,
                  .names = {{"state", q.state == FitState::loaded ? "loaded" : "unloaded"}}};
    const auto add = [&](const char* name, const std::optional<double>& mm) {
        if (mm) notice.parameters.push_back({name, *mm, Quantity::length});
    };
    add("half_stop", q.wanted.half_stop_mm);
    add("closed", q.wanted.closed_mm);
    return NoConvergence(std::move(notice));
}

}  // namespace

FaceDepths detail::along(const Direction& direction, double depth_mm) {
    return {.open_mm = direction.open_mm * depth_mm,
            .half_stop_mm = direction.half_stop_mm * depth_mm,
            .closed_mm = direction.closed_mm * depth_mm,
            .kick_mm = direction.kick_mm * depth_mm};
}

FaceDepths detail::sum(const FaceDepths& a, const FaceDepths& b) {
    return {.open_mm = a.open_mm + b.open_mm,
            .half_stop_mm = a.half_stop_mm + b.half_stop_mm,
            .closed_mm = a.closed_mm + b.closed_mm,
            .kick_mm = a.kick_mm + b.kick_mm};
}

Pair detail::readings_of(const Design& design,
                         const FaceDepths& depths,
                         const FitUnknowns& unknowns,
                         FitState state) {
    const Readings of = readings_in(state, take_off(design, depths), unknowns);
    if (!of.closed_mm) throw NoConvergence({.code = NoticeCode::not_held_closed});
    if (design.tang.half_stop_mm && !of.half_stop_mm) {
        throw NoConvergence({.code = NoticeCode::no_half_stop_rest});
    }
    return {.half_stop_mm = of.half_stop_mm, .closed_mm = of.closed_mm};
}

std::array<double, 2> detail::solve_faces(const FaceQuestion& question) {
    Eigen::Vector2d depth = Eigen::Vector2d::Zero();
    auto left = missing(question, depth);
    for (int round = 0; left && round < kRounds; ++round) {
        if (left->norm() < kSettledMm) return {depth[0], depth[1]};
        const auto slopes = jacobian(question, depth, *left);
        if (!slopes) break;
        Eigen::Vector2d step = -slopes->partialPivLu().solve(*left);
        if (!step.allFinite()) break;
        auto next = missing(question, depth + step);
        for (int half = 0; half < kHalvings && !(next && next->norm() < left->norm()); ++half) {
            step *= 0.5;
            next = missing(question, depth + step);
        }
        depth += step;
        if (!next || depth.norm() > kFarthestMm) break;
        left = next;
    }
    throw no_tang(question);
}

}  // namespace backspring
