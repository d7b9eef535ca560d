#include "backspring/grind/grind.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "../design/field_rows.hpp"
#include "../design/rules.hpp"
#include "backspring/design/field.hpp"
#include "backspring/design/joint_of.hpp"
#include "backspring/design/steel_ends.hpp"
#include "grind_removal.hpp"

namespace backspring {
namespace {

// Stations written by hand in inches do not fall on a pad's edge to the last bit.
constexpr double kSamePlaceMm = 1e-6;

const char* key_of(GrindFace face) {
    switch (face) {
        case GrindFace::belly:
            return "belly";
        case GrindFace::pad:
            return "pad";
        case GrindFace::back:
            break;
    }
    return "back";
}

double towards_back(GrindFace face) { return face == GrindFace::back ? 1.0 : -1.0; }

/// The pad with those of the blades on the same pin: the face is ground over the whole width.
Pad pad_on_pin(const Design& design) {
    Pad pad = design.own().pad;
    for (const Blade& blade : design.blades) {
        if (!on_own_pin(design, blade)) continue;
        pad.start_mm = std::min(pad.start_mm, blade.pad.start_mm);
        pad.end_mm = std::max(pad.end_mm, blade.pad.end_mm);
    }
    return pad;
}

bool region_rules(Requirements& rules, const Design& design, GrindFace face, GrindRegion region) {
    constexpr std::string_view key = "region";
    if (!rules.in_range(key, region.from_mm, -kLongestMm, kLongestMm, "mm")) return false;
    if (!rules.in_range(key, region.to_mm, -kLongestMm, kLongestMm, "mm")) return false;
    const auto got = [&] { return ", got " + mm(region.from_mm) + " to " + mm(region.to_mm); };
    const auto rise = [&] { return "must end ahead of its start" + got(); };
    if (!rules.require(region.from_mm < region.to_mm, key, rise)) return false;
    const GrindRegion whole = whole_spring(design);
    const bool within = region.from_mm >= whole.from_mm - kSamePlaceMm &&
                        region.to_mm <= whole.to_mm + kSamePlaceMm;
    bool good = rules.require(within, key, [&] {
        return "must lie on the spring, from " + mm(whole.from_mm) + " to " + mm(whole.to_mm) +
               got();
    });
    if (face == GrindFace::belly) {
        const SteelEnds belly = belly_ends(design);
        good &= rules.require(region.to_mm <= belly.front_mm + kSamePlaceMm, key, [&] {
            return "the belly ends where the pad begins, at " + mm(belly.front_mm) +
                   "; the pad is a face of its own" + got();
        });
        good &= rules.require(region.from_mm >= belly.rear_mm - kSamePlaceMm, key, [&] {
            return "the belly ends where the pad at the other end begins, at " + mm(belly.rear_mm) +
                   "; that pad is a face of its own" + got();
        });
    }
    if (face == GrindFace::pad) {
        const Pad pad = pad_on_pin(design);
        const bool same = std::abs(region.from_mm - pad.start_mm) <= kSamePlaceMm &&
                          std::abs(region.to_mm - pad.end_mm) <= kSamePlaceMm;
        good &= rules.require(same, key, [&] {
            return "the pad is ground whole, from " + mm(pad.start_mm) + " to " + mm(pad.end_mm) +
                   got();
        });
    }
    return good;
}

/// The station or pad's edge that is meant: two stations a hair apart would be a needless stretch.
double snapped(const Design& design, double x_mm) {
    const GrindRegion whole = whole_spring(design);
    const Pad pad = pad_on_pin(design);
    const SteelEnds belly = belly_ends(design);
    std::vector<double> places{0.0,        belly.front_mm, belly.rear_mm, pad.start_mm,
                               pad.end_mm, whole.from_mm,  whole.to_mm};
    for (const Station& s : design.spring.thickness) places.push_back(s.x_mm);
    for (const double place : places) {
        if (std::abs(x_mm - place) <= kSamePlaceMm) return place;
    }
    return x_mm;
}

GrindRegion good_region(const Design& design,
                        GrindFace face,
                        const std::optional<GrindRegion>& region) {
    std::vector<Fault> broken = faults(design);
    if (!broken.empty()) throw InvalidInput(std::move(broken));
    if (!region) return whole_face(design, face);
    Requirements rules;
    region_rules(rules, design, face, *region);
    rules.throw_if_any();
    return {snapped(design, region->from_mm), snapped(design, region->to_mm)};
}

/// What must be left of the steel for the ground spring to be a design.
double least_left_mm() { return find_field("spring.thickness")->least; }

GrindLimit steel_limit(const Profile& profile, GrindRegion region) {
    const double thinnest = thinnest_mm(profile, region.from_mm, region.to_mm);
    return {thinnest - least_left_mm(), GrindEnd::no_steel};
}

/// Least of thickness a_p/x over the pad: the ratio of two straight lines is least at an end.
GrindLimit pad_steel_limit(const Design& design) {
    const Profile& profile = design.spring.thickness;
    const Pad pad = pad_on_pin(design);
    const auto limit_at = [&](double x, double thick) {
        return (thick - least_left_mm()) * design.own().tang.pivot_mm / x;
    };
    double least = std::min(limit_at(pad.start_mm, thickness_mm(profile, pad.start_mm)),
                            limit_at(pad.end_mm, thickness_mm(profile, pad.end_mm)));
    for (const Station& s : profile) {
        if (s.x_mm > pad.start_mm && s.x_mm <= pad.end_mm) {
            least = std::min(least, limit_at(s.x_mm, s.thickness_mm));
        }
    }
    return {least, GrindEnd::no_steel};
}

void add_hole_limits(std::vector<GrindLimit>& limits,
                     const Spring& spring,
                     GrindFace face,
                     GrindRegion region) {
    for (const Hole& hole : spring.holes) {
        const double rear = hole.center_mm - 0.5 * hole.diameter_mm;
        const double front = hole.center_mm + 0.5 * hole.diameter_mm;
        const double from = std::max(rear, region.from_mm), to = std::min(front, region.to_mm);
        if (!(from < to)) continue;
        const double taken = hole.diameter_mm + 2.0 * towards_back(face) * hole.offset_mm;
        const double over = 0.5 * (thinnest_mm(spring.thickness, from, to) - taken);
        // Where the hole is only partly ground over, its offset also counts in the other part.
        const double beside = thinnest_mm(spring.thickness, rear, front) - taken;
        limits.push_back({std::min(over, beside), GrindEnd::hole_opens, hole.center_mm});
    }
}

std::vector<GrindLimit> limits_over(const Design& design, GrindFace face, GrindRegion region) {
    std::vector<GrindLimit> limits;
    if (face == GrindFace::pad) {
        limits.push_back(pad_steel_limit(design));
        double preload = design.own().fit.preload_mm;
        for (const Blade& blade : design.blades) {
            if (on_own_pin(design, blade)) preload = std::min(preload, blade.fit.preload_mm);
        }
        limits.push_back({preload, GrindEnd::preload_used, 0.0, true});
    } else {
        limits.push_back(steel_limit(design.spring.thickness, region));
        add_hole_limits(limits, design.spring, face, region);
    }
    std::stable_sort(limits.begin(), limits.end(), [](const GrindLimit& a, const GrindLimit& b) {
        return a.depth_mm < b.depth_mm;
    });
    return limits;
}

std::string reason(const GrindLimit& limit) {
    switch (limit.end) {
        case GrindEnd::no_steel:
            return "next to no steel is left";
        case GrindEnd::hole_opens:
            return "the pin hole at " + mm(limit.hole_mm) + " opens";
        case GrindEnd::preload_used:
            return "the preload is used up";
    }
    return "";
}

void depth_rules(Requirements& rules, const Cut& cut, const std::vector<GrindLimit>& limits) {
    const char* key = key_of(cut.face);
    if (!rules.in_range(key, cut.depth_mm, 0.0, kThickestMm, "mm")) return;
    for (const GrindLimit& limit : limits) {
        const bool good =
            cut.depth_mm < limit.depth_mm || (limit.allowed && cut.depth_mm == limit.depth_mm);
        // A cut of nothing is always possible.
        rules.require(good || cut.depth_mm == 0.0, key, [&] {
            return std::string(limit.allowed ? "must be at most " : "must be less than ") +
                   mm(limit.depth_mm) + ", where " + reason(limit) + ", got " + mm(cut.depth_mm);
        });
    }
}

Design pad_ground(const Design& design, double depth_mm) {
    const Pad pad = pad_on_pin(design);
    const double per_mm = depth_mm / design.own().tang.pivot_mm;
    const Profile removal{{pad.start_mm, per_mm * pad.start_mm}, {pad.end_mm, per_mm * pad.end_mm}};
    Design ground = design;
    ground.spring.thickness = thinned(design, removal);
    move_mid_line(ground.spring, removal, -1.0);
    // Heights are measured from a line along the pad, which now leans by what was taken off.
    for (MidLinePoint& point : ground.spring.mid_line) point.height_mm -= per_mm * point.x_mm;
    for (Blade& blade : ground.blades) {
        if (on_own_pin(design, blade)) blade.fit.preload_mm -= depth_mm;
    }
    lower_stops(ground);
    return ground;
}

}  // namespace

GrindRegion whole_face(const Design& design, GrindFace face) {
    const Pad pad = pad_on_pin(design);
    if (face == GrindFace::pad) return {pad.start_mm, pad.end_mm};
    if (face == GrindFace::belly) return {0.0, belly_ends(design).front_mm};
    return whole_spring(design);
}

std::vector<GrindLimit> grind_limits(const Design& design,
                                     GrindFace face,
                                     const std::optional<GrindRegion>& region) {
    return limits_over(design, face, good_region(design, face, region));
}

Design grind(const Design& design, const Cut& cut) {
    const GrindRegion region = good_region(design, cut.face, cut.region);
    Requirements rules;
    depth_rules(rules, cut, limits_over(design, cut.face, region));
    rules.throw_if_any();
    if (cut.depth_mm == 0.0) return design;
    Design ground = cut.face == GrindFace::pad ? pad_ground(design, cut.depth_mm) : design;
    if (cut.face != GrindFace::pad) {
        take_off(ground, {{region.from_mm, cut.depth_mm}, {region.to_mm, cut.depth_mm}},
                 towards_back(cut.face));
    }
    std::vector<Fault> broken = faults(ground);
    if (!broken.empty()) throw InvalidInput(std::move(broken));
    return ground;
}

}  // namespace backspring
