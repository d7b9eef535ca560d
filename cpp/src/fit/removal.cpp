#include "removal.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "backspring/core/angle.hpp"
#include "backspring/core/error.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

constexpr double kLeverStepMm = 1e-3;
constexpr double kBelowOpenMm = 0.5;
constexpr double kAlikeMm = 1e-9;

double closed_reading_mm(const PlanSubject& s, const FaceDepths& depths) {
    return *lowest_of(s.now, depths, s.unknowns).closed_mm;
}

/// Faces along which the closed reading may be brought down, the first choice first.
std::vector<Direction> closed_directions(const PlanSubject& s) {
    if (!s.now.own().tang.kick) return {kClosed};
    switch (s.rules.closed_by) {
        case ClosedGrind::closed:
            return {kClosed};
        case ClosedGrind::kick:
            return {kKick};
        case ClosedGrind::level:
        case ClosedGrind::least:
            break;
    }
    const double face = closed_reading_mm(s, along(kClosed, kLeverStepMm));
    const double nose = closed_reading_mm(s, along(kKick, kLeverStepMm));
    if (face <= nose) return {kClosed, kKick};
    return {kKick, kClosed};
}

/// How far a direction goes before one of its faces runs out of steel.
double reach_mm(const PlanSubject& s, const Direction& direction, const FaceDepths& already) {
    double reach = std::numeric_limits<double>::infinity();
    const auto limit = [&](double left, double share) {
        if (share > 0.0) reach = std::min(reach, std::max(left, 0.0) / share);
    };
    limit(left_mm(s, TangFace::closed) - already.closed_mm, direction.closed_mm);
    limit(left_mm(s, TangFace::kick, already) - already.kick_mm,
          direction.kick_mm - direction.closed_mm);
    if (const auto& kick = s.rules.material.kick_mm) {
        limit(*kick - already.kick_mm, direction.kick_mm);
    }
    return reach;
}

/// @param needed_mm  none: no depth would do
[[noreturn]] void runs_out(const PlanSubject& s,
                           TangFace face,
                           std::optional<double> needed_mm,
                           const FaceDepths& with = {}) {
    Notice notice{.code = NoticeCode::face_runs_out, .names = {{"face", name_of(face)}}};
    const double left = std::max(left_mm(s, face, with), 0.0);
    notice.parameters.push_back({"left", left, Quantity::length});
    if (needed_mm) notice.parameters.push_back({"needed", *needed_mm, Quantity::length});
    throw NoConvergence(std::move(notice));
}

/// Depths, negative where steel is missing, that end at the aim with the open face as given.
///
/// @param active  which readings are brought to the aim
FaceDepths to_aim(const PlanSubject& s,
                  const FaceDepths& already,
                  const Direction& closed,
                  std::array<bool, 2> active) {
    FaceQuestion question{.design = s.now,
                          .unknowns = s.unknowns,
                          .which = Wanted::lowest,
                          .wanted = {},
                          .closed = closed,
                          .already = already};
    if (active[0]) question.wanted.half_stop_mm = s.aim_mm;
    if (active[1]) question.wanted.closed_mm = s.aim_mm;
    const auto [half, side] = solve_faces(question);
    return sum(already, sum(along(kHalfStop, half), along(closed, side)));
}

/// As to_aim(); nothing where a kick would have to go on below the closed face.
std::optional<FaceDepths> maybe_to_aim(const PlanSubject& s,
                                       const FaceDepths& already,
                                       const Direction& closed,
                                       std::array<bool, 2> active) {
    try {
        return to_aim(s, already, closed, active);
    } catch (const NoConvergence&) {
        if (closed.kick_mm > 0.0) return std::nullopt;
        throw;
    }
}

}  // namespace

double detail::left_mm(const PlanSubject& s, TangFace face, const FaceDepths& with) {
    const Tang& tang = s.now.own().tang;
    const Material& given = s.rules.material;
    const double lowest = tang.open_mm - kBelowOpenMm;
    switch (face) {
        case TangFace::half_stop:
            return given.half_stop_mm.value_or(tang.half_stop_mm.value_or(0.0) - lowest);
        case TangFace::closed:
            return given.closed_mm.value_or(tang.closed_mm - lowest);
        case TangFace::kick: {
            const double height = tang.kick ? tang.kick->height_mm + with.closed_mm : 0.0;
            return std::min(given.kick_mm.value_or(height), height);
        }
        case TangFace::open:
            break;
    }
    return std::min(given.open_mm.value_or(s.now.own().fit.preload_mm), s.now.own().fit.preload_mm);
}

FaceDepths detail::with_ways(const PlanSubject& s,
                             FaceDepths already,
                             const std::vector<Direction>& ways) {
    const bool square = s.now.own().tang.half_stop_mm.has_value();
    std::array<bool, 2> active{square, true};
    for (std::size_t way = 0;;) {
        const auto solved = maybe_to_aim(s, already, ways[way], active);
        const double reach = reach_mm(s, ways[way], already);
        if (!solved && way + 1 == ways.size()) runs_out(s, TangFace::kick, std::nullopt, already);
        if (!solved) {
            already = sum(already, along(ways[way], reach));
            ++way;
            continue;
        }
        const FaceDepths& found = *solved;
        if (active[0] && found.half_stop_mm < 0.0) {
            active[0] = false;
            continue;
        }
        const FaceDepths side{.closed_mm = found.closed_mm - already.closed_mm,
                              .kick_mm = found.kick_mm - already.kick_mm};
        const double length =
            (side.closed_mm + side.kick_mm) / (ways[way].closed_mm + ways[way].kick_mm);
        if (active[1] && length < 0.0) {
            active[1] = false;
            continue;
        }
        if (length > reach && way + 1 < ways.size()) {
            already = sum(already, along(ways[way], reach));
            ++way;
            continue;
        }
        return found;
    }
}

bool detail::ends_low(const PlanSubject& s, const FaceDepths& depths) {
    const Pair end = lowest_of(s.now, depths, s.unknowns);
    const double lowest = std::min(*end.closed_mm, end.half_stop_mm.value_or(*end.closed_mm));
    return s.rules.target_mm - lowest > s.slack_mm;
}

double detail::open_depth_mm(const PlanSubject& s, const Direction& closed) {
    const bool square = s.now.own().tang.half_stop_mm.has_value();
    // Least depth of the others that ends at the aim: below 0 a reading is still low.
    const auto least = [&](double open) {
        const FaceDepths all = to_aim(s, {.open_mm = open}, closed, {square, true});
        const double side = all.closed_mm + all.kick_mm;
        return square ? std::min(all.half_stop_mm, side) : side;
    };
    const double at_start = least(0.0);
    if (at_start >= 0.0) return 0.0;
    // A reading rises by nearly what is taken off the open face, a kick's by more.
    const double left = std::max(left_mm(s, TangFace::open), 0.0);
    const double farthest = std::min(left, -4.0 * at_start);
    const double at_end = farthest > 0.0 ? least(farthest) : at_start;
    if (at_end < 0.0) {
        const bool known = at_end > at_start;
        const double needed = known ? farthest * at_start / (at_start - at_end) : -at_start;
        runs_out(s, TangFace::open, needed);
    }
    return find_root(least, 0.0, farthest, at_start, at_end);
}

void detail::require_steel(const PlanSubject& subject, const FaceDepths& depths) {
    for (const TangFace face :
         {TangFace::half_stop, TangFace::closed, TangFace::kick, TangFace::open}) {
        if (depths.of(face) > std::max(left_mm(subject, face, depths), 0.0) + kAlikeMm) {
            runs_out(subject, face, depths.of(face), depths);
        }
    }
}

FaceDepths detail::least_removal(const PlanSubject& subject) {
    return removal_along(subject, closed_directions(subject));
}

FaceDepths detail::removal_along(const PlanSubject& subject, const std::vector<Direction>& ways) {
    FaceDepths depths = with_ways(subject, {}, ways);
    if (ends_low(subject, depths)) {
        const double open = open_depth_mm(subject, ways.front());
        depths = with_ways(subject, {.open_mm = open}, ways);
    }
    require_steel(subject, depths);
    return depths;
}

}  // namespace backspring
