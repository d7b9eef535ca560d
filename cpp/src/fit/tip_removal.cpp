#include "tip_removal.hpp"

#include <algorithm>
#include <array>

#include "backspring/core/error.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

constexpr double kKickStepMm = 1e-3;
// Beyond rounding of what the solver finds; a face is not ground by so little.
constexpr double kNoDepthMm = 1e-7;

double tip_height_now_mm(const PlanSubject& s, const FaceDepths& depths) {
    const FitReadings both = fit_readings(take_off(s.now, depths), s.unknowns);
    return tip_of(s.now, both.closed_angle_deg.value());
}

/// Depths, negative where steel is missing, that meet the readings and the tip.
FaceDepths to_tip(const PlanSubject& s, double open_mm, double tip_height_mm) {
    const bool square = s.now.own().tang.half_stop_mm.has_value();
    FaceQuestion question{.design = s.now,
                          .unknowns = s.unknowns,
                          .which = Wanted::lowest,
                          .wanted = {.half_stop_mm = std::nullopt, .closed_mm = s.aim_mm},
                          .closed = kClosed,
                          .already = {.open_mm = open_mm},
                          .tip_height_mm = tip_height_mm};
    if (square) question.wanted.half_stop_mm = s.aim_mm;
    FaceDepths found = solve_faces_and_tip(question);
    if (square && found.half_stop_mm < 0.0) {
        question.wanted.half_stop_mm.reset();
        found = solve_faces_and_tip(question);
    }
    return sum(question.already, found);
}

/// What keeps some depths from being ground.
struct Hindrance {
    TangFace face;
    double bound_mm;  ///< the least or most that may come off it
};

std::optional<Hindrance> hindrance(const PlanSubject& s, const FaceDepths& depths) {
    constexpr std::array faces{TangFace::closed, TangFace::kick};
    // Steel that is missing counts first: to take the other face to its end would read low.
    for (const TangFace face : faces) {
        if (depths.of(face) < -kNoDepthMm) return Hindrance{face, 0.0};
    }
    for (const TangFace face : faces) {
        const double left = std::max(left_mm(s, face, depths), 0.0);
        if (depths.of(face) > left + kNoDepthMm) return Hindrance{face, left};
    }
    return std::nullopt;
}

/// Readings met with one face at its bound, which brings the tip as near as it can come.
FaceDepths nearest(const PlanSubject& s, double open_mm, const Hindrance& by) {
    FaceDepths already{.open_mm = open_mm};
    if (by.face == TangFace::closed) {
        already.closed_mm = by.bound_mm;
        return with_ways(s, already, {kKick, kClosedSide, kClosed});
    }
    // A kick that is at its end wears down with the face it stands on.
    const double height = s.now.own().tang.kick->height_mm;
    const bool gone = by.bound_mm >= height;
    already.kick_mm = std::min(by.bound_mm, height);
    if (gone) return with_ways(s, already, {kClosedSide, kClosed});
    return with_ways(s, already,
                     by.bound_mm > 0.0 ? std::vector{kClosed} : std::vector{kClosed, kKick});
}

FaceDepths kept_on(FaceDepths depths) {
    for (const TangFace face : {TangFace::half_stop, TangFace::closed, TangFace::kick}) {
        depths.of(face) = std::max(depths.of(face), 0.0);
    }
    return depths;
}

TipRemoval with_open(const PlanSubject& s, double open_mm, double tip_height_mm) {
    const FaceDepths wanted = to_tip(s, open_mm, tip_height_mm);
    const auto by = hindrance(s, wanted);
    if (!by) return {.depths = kept_on(wanted), .runs_out = std::nullopt};
    return {.depths = nearest(s, open_mm, *by), .runs_out = by->face};
}

/// The least depth off the open face at which the tip is reached, or the most that may come off.
double open_for_tip_mm(const PlanSubject& s, double open_mm, double tip_height_mm) {
    const double most = std::min(*s.rules.material.open_mm, s.now.own().fit.preload_mm);
    const auto least = [&](double open) {
        const FaceDepths all = to_tip(s, open, tip_height_mm);
        return std::min(all.closed_mm, all.kick_mm);
    };
    if (!(most > open_mm)) return open_mm;
    const double at_start = least(open_mm), at_end = least(most);
    if (at_start >= 0.0) return open_mm;
    return at_end < 0.0 ? most : find_root(least, open_mm, most, at_start, at_end);
}

TipRemoval met(const PlanSubject& s, double tip_height_mm) {
    double open = 0.0;
    TipRemoval found = with_open(s, open, tip_height_mm);
    if (ends_low(s, found.depths)) {
        open = open_depth_mm(s, kClosedSide);
        found = with_open(s, open, tip_height_mm);
    }
    if (!found.runs_out || !s.rules.material.open_mm) return found;
    const double more = open_for_tip_mm(s, open, tip_height_mm);
    return more > open ? with_open(s, more, tip_height_mm) : found;
}

/// Readings met with all that can be had by the face that moves the tip the way it is wanted.
TipRemoval farthest(const PlanSubject& s, double move_mm) {
    const bool in = move_mm < 0.0;
    const TangFace first = in ? TangFace::kick : TangFace::closed;
    const TangFace other = in ? TangFace::closed : TangFace::kick;
    const FaceDepths all =
        in ? removal_along(s, {kKick, kClosedSide, kClosed}) : removal_along(s, {kClosed, kKick});
    const bool used_up = all.of(first) > left_mm(s, first, all) - kNoDepthMm;
    return {.depths = all, .runs_out = used_up ? first : other};
}

}  // namespace

bool detail::kick_sets_tip(const PlanSubject& s) {
    if (!s.now.own().tang.kick) return false;
    const double start = tip_height_now_mm(s, {});
    return tip_height_now_mm(s, along(kKick, kKickStepMm)) < start &&
           tip_height_now_mm(s, along(kClosed, kKickStepMm)) > start;
}

TipRemoval detail::tip_removal(const PlanSubject& subject, double move_mm) {
    TipRemoval found;
    try {
        found = met(subject, tip_height_now_mm(subject, {}) + move_mm);
    } catch (const NoConvergence&) {
        // No tang at all has such a tip.
        return farthest(subject, move_mm);
    }
    require_steel(subject, found.depths);
    return found;
}

}  // namespace backspring
