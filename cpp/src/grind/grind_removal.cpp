#include "grind_removal.hpp"

#include <algorithm>

#include "backspring/action/end_stop.hpp"
#include "backspring/design/steel_ends.hpp"

namespace backspring {
namespace {

Sides removed_at(const Profile& removal, double x_mm) {
    const double first = removal.front().x_mm, last = removal.back().x_mm;
    if (x_mm < first || x_mm > last) return {0.0, 0.0};
    Sides depth = sides(removal, x_mm);
    if (x_mm == first) depth.behind = 0.0;
    if (x_mm == last) depth.ahead = 0.0;
    return depth;
}

Profile from_end_to_end(const Design& design) {
    const Spring& spring = design.spring;
    if (spring.thickness.size() > 1) return spring.thickness;
    const double even = spring.thickness.front().thickness_mm;
    const GrindRegion whole = whole_spring(design);
    return {{whole.from_mm, even}, {whole.to_mm, even}};
}

double deepest_over(const Hole& hole, const Profile& removal) {
    const double from = std::max(hole.center_mm - 0.5 * hole.diameter_mm, removal.front().x_mm);
    const double to = std::min(hole.center_mm + 0.5 * hole.diameter_mm, removal.back().x_mm);
    if (!(from < to)) return 0.0;
    double deepest = std::max(removed_at(removal, from).ahead, removed_at(removal, to).behind);
    for (const Station& s : removal) {
        if (s.x_mm > from && s.x_mm < to) deepest = std::max(deepest, s.thickness_mm);
    }
    return deepest;
}

std::vector<double> places(const Profile& profile, const Profile& removal) {
    std::vector<double> all;
    for (const Station& s : profile) all.push_back(s.x_mm);
    for (const Station& s : removal) all.push_back(s.x_mm);
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

/// A profile less a share of a depth that is nothing beyond its own ends.
Profile less(const Profile& before, const Profile& removal, double share) {
    const std::vector<double> all = places(before, removal);
    Profile after;
    for (const double x : all) {
        const Sides now = sides(before, x), depth = removed_at(removal, x);
        const double behind = now.behind - share * depth.behind;
        const double ahead = now.ahead - share * depth.ahead;
        // Beyond the spring's ends there is nothing that a step could lead to.
        if (x != all.front()) after.push_back({x, behind});
        if (x == all.front() || (ahead != behind && x != all.back())) after.push_back({x, ahead});
    }
    return after;
}

}  // namespace

Sides detail::sides(const Profile& profile, double x_mm) {
    const auto same = std::find_if(profile.begin(), profile.end(),
                                   [&](const Station& s) { return s.x_mm == x_mm; });
    const double ahead = thickness_mm(profile, x_mm);
    return {same == profile.end() ? ahead : same->thickness_mm, ahead};
}

GrindRegion detail::whole_spring(const Design& design) {
    const SteelEnds ends = steel_ends(design);
    return {ends.rear_mm, ends.front_mm};
}

Profile detail::thinned(const Design& design, const Profile& removal) {
    return less(from_end_to_end(design), removal, 1.0);
}

void detail::move_mid_line(Spring& spring, const Profile& removal, double towards_back) {
    if (spring.mid_line.empty()) return;
    Profile heights;
    for (const MidLinePoint& p : spring.mid_line) heights.push_back({p.x_mm, p.height_mm});
    spring.mid_line.clear();
    for (const Station& s : less(heights, removal, 0.5 * towards_back)) {
        spring.mid_line.push_back({s.x_mm, s.thickness_mm});
    }
}

void detail::lower_stops(Design& ground) {
    for (Blade& blade : ground.blades) {
        Stop& stop = blade.fit.stop;
        if (stop.place != StopPlace::height) continue;
        const bool own = blade.end == ground.own().end;
        const Spring spring = own ? ground.spring : turned_round(ground.spring);
        stop.height_mm = bearing_height_mm(stop, end_thickness_mm(spring, blade.pad));
    }
}

void detail::take_off(Design& design, const Profile& removal, double towards_back) {
    for (Hole& hole : design.spring.holes) {
        hole.offset_mm += 0.5 * towards_back * deepest_over(hole, removal);
    }
    move_mid_line(design.spring, removal, towards_back);
    design.spring.thickness = thinned(design, removal);
    lower_stops(design);
}

double detail::thinnest_mm(const Profile& profile, double from_mm, double to_mm) {
    double least = std::min(thickness_mm(profile, from_mm), sides(profile, to_mm).behind);
    for (const Station& s : profile) {
        if (s.x_mm > from_mm && s.x_mm < to_mm) least = std::min(least, s.thickness_mm);
    }
    return least;
}

}  // namespace backspring
