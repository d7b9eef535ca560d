#include "backspring/grind/grind_ways.hpp"

#include "backspring/grind/grind_depth.hpp"

namespace backspring {
namespace {

// Where along the way to the pivot a cut begins that leaves the root as it is: the moment ahead of
// it is at most two thirds of the root's.
constexpr double kAheadOfRoot = 1.0 / 3.0;

std::vector<GrindWay> places_to_grind(const Design& design) {
    const GrindRegion back = whole_face(design, GrindFace::back);
    const GrindRegion belly = whole_face(design, GrindFace::belly);
    const GrindRegion pad = whole_face(design, GrindFace::pad);
    const double ahead_of_root = kAheadOfRoot * design.own().tang.pivot_mm;
    std::vector<GrindWay> ways{
        {.face = GrindFace::back, .region = back, .after = {}, .refused = {}}};
    for (const double from : {0.0, ahead_of_root}) {
        if (from <= back.from_mm) continue;
        ways.push_back({GrindFace::back, {from, back.to_mm}, {}, {}});
    }
    ways.push_back({GrindFace::belly, belly, {}, {}});
    ways.push_back({GrindFace::pad, pad, {}, {}});
    return ways;
}

}  // namespace

std::vector<GrindWay> ways_to_pull(const Design& design, double pull_n) {
    std::vector<GrindWay> ways = places_to_grind(design);
    for (GrindWay& way : ways) {
        try {
            const double depth = depth_for_pull(design, way.face, way.region, pull_n);
            way.after = grind_row(grind(design, {way.face, depth, way.region}), depth);
        } catch (const NoConvergence& none) {
            way.refused = none.notice();
        }
    }
    return ways;
}

}  // namespace backspring
