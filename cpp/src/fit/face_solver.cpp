#include "face_solver.hpp"

#include <Eigen/Dense>
#include <cmath>

#include "backspring/check/closed_blade.hpp"
#include "backspring/core/error.hpp"

namespace backspring {
namespace {

constexpr double kStepMm = 1e-5;
constexpr double kSettledMm = 1e-8;
constexpr double kFarthestMm = 10.0;
constexpr double kLongBladeMm = 100.0;
constexpr double kHeldSlope = 1e-3;
constexpr int kRounds = 40;
constexpr int kHalvings = 12;

FaceDepths depths_at(const FaceQuestion& q, const Eigen::Vector3d& depth) {
    const Direction closed = q.tip_height_mm ? kClosed : q.closed;
    return sum(along(kHalfStop, depth[0]), sum(along(closed, depth[1]), along(kKick, depth[2])));
}

/// Readings of one state, and the height of the tip where that is wanted.
struct Had {
    Pair readings;
    double tip_height_mm = 0.0;
};

Pair held(const Design& design, const Readings& shown) {
    if (!shown.closed_mm) throw NoConvergence({.code = NoticeCode::not_held_closed});
    if (design.own().tang.half_stop_mm && !shown.half_stop_mm) {
        throw NoConvergence({.code = NoticeCode::no_half_stop_rest});
    }
    return {.half_stop_mm = shown.half_stop_mm, .closed_mm = shown.closed_mm};
}

Pair shown_of(const FaceQuestion& q, const FaceDepths& depths) {
    if (q.which == Wanted::lowest) return lowest_of(q.design, depths, q.unknowns);
    const bool loaded = q.which == Wanted::loaded;
    return readings_of(q.design, depths, q.unknowns,
                       loaded ? FitState::loaded : FitState::unloaded);
}

Had had(const FaceQuestion& q, const FaceDepths& depths) {
    if (!q.tip_height_mm) return {.readings = shown_of(q, depths)};
    const FitReadings both = fit_readings(take_off(q.design, depths), q.unknowns);
    if (!both.closed_angle_deg) throw NoConvergence({.code = NoticeCode::not_held_closed});
    const bool alone = q.design.blades.size() == 1;
    return {.readings = alone ? held(q.design, both.loaded) : shown_of(q, depths),
            .tip_height_mm = tip_of(q.design, *both.closed_angle_deg)};
}

/// What is missing to all that is wanted at some depths; nothing where the blade will not stay.
std::optional<Eigen::Vector3d> missing(const FaceQuestion& q, const Eigen::Vector3d& depth) {
    try {
        const Had found = had(q, sum(q.already, depths_at(q, depth)));
        Eigen::Vector3d left = Eigen::Vector3d::Zero();
        if (q.wanted.half_stop_mm) left[0] = *found.readings.half_stop_mm - *q.wanted.half_stop_mm;
        if (q.wanted.closed_mm) left[1] = *found.readings.closed_mm - *q.wanted.closed_mm;
        if (q.tip_height_mm) left[2] = found.tip_height_mm - *q.tip_height_mm;
        return left;
    } catch (const Error&) {
        return std::nullopt;
    }
}

std::optional<Eigen::Matrix3d> jacobian(const FaceQuestion& q,
                                        const Eigen::Vector3d& depth,
                                        const Eigen::Vector3d& here) {
    Eigen::Matrix3d slopes = Eigen::Matrix3d::Identity();
    const std::array<bool, 3> wanted{q.wanted.half_stop_mm.has_value(),
                                     q.wanted.closed_mm.has_value(), q.tip_height_mm.has_value()};
    for (int i = 0; i < 3; ++i) {
        if (!wanted[static_cast<std::size_t>(i)]) continue;
        Eigen::Vector3d step = Eigen::Vector3d::Zero();
        step[i] = kStepMm;
        const auto ahead = missing(q, depth + step);
        if (!ahead) return std::nullopt;
        slopes.col(i) = (*ahead - here) / kStepMm;
    }
    return slopes;
}

/// Whether another blade holds the spring up, so that a face moves nothing yet.
bool held_by_others(const FaceQuestion& q, const Eigen::Matrix3d& slopes) {
    return q.design.blades.size() > 1 && slopes.diagonal().cwiseAbs().minCoeff() < kHeldSlope;
}

NoConvergence no_tang(const FaceQuestion& q) {
    Notice notice{.code = NoticeCode::no_such_tang,
                  .names = {{"state", q.which == Wanted::unloaded ? "unloaded" : "loaded"}}};
    const auto add = [&](const char* name, const std::optional<double>& mm) {
        if (mm) notice.parameters.push_back({name, *mm, Quantity::length});
    };
    add("half_stop", q.wanted.half_stop_mm);
    add("closed", q.wanted.closed_mm);
    return NoConvergence(std::move(notice));
}

Eigen::Vector3d solved(const FaceQuestion& question) {
    Eigen::Vector3d depth = Eigen::Vector3d::Zero();
    auto left = missing(question, depth);
    for (int round = 0; left && round < kRounds; ++round) {
        if (left->norm() < kSettledMm) return depth;
        const auto slopes = jacobian(question, depth, *left);
        if (!slopes) break;
        if (held_by_others(question, *slopes)) {
            depth += *left;
            if (depth.norm() > kFarthestMm) break;
            left = missing(question, depth);
            continue;
        }
        Eigen::Vector3d step = -slopes->partialPivLu().solve(*left);
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

}  // namespace

double detail::tip_of(const Design& design, double closed_angle_deg) {
    const BladePoint long_blade{.u_mm = kLongBladeMm};
    return height_in_handle_mm(blade_tip(design).value_or(long_blade), closed_angle_deg);
}

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
    return held(design, readings_in(state, take_off(design, depths), unknowns));
}

Pair detail::lowest_of(const Design& design,
                       const FaceDepths& depths,
                       const FitUnknowns& unknowns) {
    return held(design, lowest_readings(take_off(design, depths), unknowns));
}

std::array<double, 2> detail::solve_faces(const FaceQuestion& question) {
    const Eigen::Vector3d depth = solved(question);
    return {depth[0], depth[1]};
}

FaceDepths detail::solve_faces_and_tip(const FaceQuestion& question) {
    return depths_at(question, solved(question));
}

}  // namespace backspring
