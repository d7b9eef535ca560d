#include "beside.hpp"

#include <algorithm>

#include "backspring/design/joint_of.hpp"
#include "verdict_parts.hpp"

namespace backspring {
namespace {

std::string position_of(const Blade& blade) {
    switch (blade.stands) {
        case Stand::closed:
            return "closed";
        case Stand::half_stop:
            return "half_stop";
        case Stand::open:
            break;
    }
    return "open";
}

/// Force of one of the blades of a joint, as Part::blade counts them.
double force_of_blade(const Contact& contact, int blade) {
    double force = 0.0;
    const auto add = [&](const Touch& touch) {
        if (touch.part.blade == blade) force += touch.force_n;
    };
    std::ranges::for_each(contact.all(), add);
    std::ranges::for_each(contact.others.beside, add);
    std::ranges::for_each(contact.others.far, add);
    return force;
}

std::vector<OtherBlade> others_of(Solution& solution) {
    const Design& design = solution.design();
    const std::vector<std::size_t> places = blades_in_joint(design);
    std::vector<OtherBlade> others;
    for (std::size_t i = 1; i < places.size(); ++i) {
        const Blade& blade = design.blades[places[i]];
        const auto force = [&](const Turn& turn) {
            return force_of_blade(turn.contact, static_cast<int>(i));
        };
        const auto less = [&](const Turn& turn) { return -force(turn); };
        others.push_back({blade.name, position_of(blade), force(largest(solution.travel(), less)),
                          force(largest(solution.travel(), force))});
    }
    return others;
}

/// As "pen:open", several joined by "+".
std::string name_of_case(const Beside& row) {
    std::string name;
    for (const OtherBlade& other : row.others) {
        name += (name.empty() ? "" : "+") + other.name + ":" + other.position;
    }
    return name;
}

/// Of every kind of failure the worst, in whichever case that is.
std::vector<Margin> worst_margins(std::vector<Margin> all) {
    sort_margins(all);
    std::vector<Margin> worst;
    for (Margin& margin : all) {
        const auto alike = [&](const Margin& known) {
            return known.kind == margin.kind && known.names == margin.names;
        };
        if (std::ranges::none_of(worst, alike)) worst.push_back(std::move(margin));
    }
    return worst;
}

bool alike(const Notice& a, const Notice& b) { return a.code == b.code && a.names == b.names; }

/// Every notice once; one that does not hold in all cases names those in which it does.
std::vector<Notice> joined_notices(const std::vector<Check>& checks) {
    std::vector<Notice> all;
    std::vector<std::vector<std::string>> where;
    for (const Check& check : checks) {
        for (const Notice& notice : check.notices) {
            auto known =
                std::ranges::find_if(all, [&](const Notice& n) { return alike(n, notice); });
            if (known == all.end()) {
                all.push_back(notice);
                where.emplace_back();
                known = all.end() - 1;
            }
            where[static_cast<std::size_t>(known - all.begin())].push_back(
                name_of_case(check.beside.front()));
        }
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i].names["blade"] = checks.front().blade;
        if (where[i].size() == checks.size()) continue;
        std::string& beside = all[i].names["beside"];
        for (const std::string& name : where[i]) beside += (beside.empty() ? "" : ",") + name;
    }
    return all;
}

/// How far the taking of the spring not to twist holds.
Notice twist_notice(const Twist& twist, const std::string& blade) {
    return {.code = NoticeCode::twist,
            .parameters = {{"torque", twist.torque_nmm, Quantity::torque},
                           {"angle", twist.angle_deg, Quantity::angle},
                           {"across", twist.across_mm, Quantity::length},
                           {"blade_angle", twist.blade_angle_deg, Quantity::angle}},
            .names = {{"blade", blade}, {"side", twist.side}, {"beside", twist.beside}}};
}

}  // namespace

Beside detail::beside(Solution& solution, Check& check) {
    Beside row{others_of(solution), check.positions, check.strokes, check.travel};
    for (const OtherBlade& other : row.others) {
        if (other.force_low_n > 0.0) continue;
        check.notices.push_back(
            {.code = NoticeCode::other_loose, .names = {{"other", other.name}}});
    }
    check.twist = twist(solution);
    if (check.twist) check.twist->beside = name_of_case(row);
    return row;
}

Check detail::worst_of_cases(std::vector<Check> checks) {
    Check result = checks.front();
    std::vector<Margin> margins;
    std::vector<std::vector<TargetResult>> targets;
    for (Check& check : checks) {
        for (Margin& margin : check.verdict) margins.push_back(std::move(margin));
        targets.push_back(check.targets);
        if (check.twist && check.twist->torque_nmm > result.twist->torque_nmm) {
            result.twist = check.twist;
        }
        if (&check != &checks.front()) result.beside.push_back(check.beside.front());
        for (const std::string& name : check.impossible) {
            const bool known =
                std::ranges::find(result.impossible, name) != result.impossible.end();
            if (!known) result.impossible.push_back(name);
        }
    }
    result.verdict = worst_margins(std::move(margins));
    result.targets = worst_targets(targets);
    result.notices = joined_notices(checks);
    if (result.twist) result.notices.push_back(twist_notice(*result.twist, result.blade));
    return result;
}

}  // namespace backspring
