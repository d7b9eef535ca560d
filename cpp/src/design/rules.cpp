#include "rules.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <span>

#include "backspring/action/end_stop.hpp"
#include "backspring/design/field.hpp"
#include "backspring/tang/outline.hpp"

namespace backspring {
namespace {

constexpr RuleText kClearOfMiddlePin{
    "clear_of_middle_pin",
    "the tang turns through the middle pin: it sweeps {1} about the "
    "pivot, the pin is {0} away"};
constexpr RuleText kDialOnSpring{"dial_on_spring",
                                 "must lie on the spring, which ends at {0}, got {1}"};
// A stop reaches above a back that was ground since, and bears at its edge: twice is a slip.
constexpr double kHighestStop = 2.0;
constexpr RuleText kStopOnEnd{"stop_on_end",
                              "must be about as high as the spring's end, which is {0} thick, got "
                              "{1}"};
constexpr RuleText kStopNearEnd{"stop_near_end",
                                "must meet the spring's end with the blade about open, so lie "
                                "between {0} and {1}, got {2}"};
// A blade that stands farther from straight is a slip of the pen.
constexpr double kMostOpenSlope = 0.1;
constexpr RuleText kEdgeIsLine{"edge_is_line", "must have at least two corners, got {0}"};
constexpr RuleText kPullsRise{"pulls_rise", "must rise from least to greatest, got {0} to {1}"};

/// Turning, the tang must stay clear of the pin that the spring turns on.
void clearance_rules(Requirements& rules, const Design& design) {
    const Spring& spring = design.spring;
    const Tang& tang = design.own().tang;
    double pin_radius = 0.0, offset = 0.0;
    if (const Hole* hole = hole_for(HoleFor::middle_pin, spring.holes)) {
        pin_radius = 0.5 * hole->diameter_mm;
        offset = hole->offset_mm;
    }
    const double mid_line =
        belly_mm(spring, design.own().pad, 0.0) + 0.5 * thickness_mm(spring.thickness, 0.0);
    const double pin_height = tang.open_mm + mid_line + offset;
    const double room = std::hypot(tang.pivot_mm, pin_height) - pin_radius;
    const double swept = swept_radius_mm(make_outline(tang, tang.pivot_mm));
    rules.require(swept < room, "tang.pivot", kClearOfMiddlePin, Quantity::length, {room}, {swept});
}

using Rows = std::vector<const Field*>;

/// The rows of a table that have a range, or of all where it is empty.
const Rows& rows_of(std::string_view table) {
    static const auto by_table = [] {
        std::map<std::string, Rows, std::less<>> all;
        for (const Field& field : fields()) {
            if (field.derived) continue;
            all[""].push_back(&field);
            const auto dot = field.key.find('.');
            if (dot != std::string::npos) all[field.key.substr(0, dot + 1)].push_back(&field);
        }
        return all;
    }();
    static const Rows none;
    const auto found = by_table.find(table);
    return found == by_table.end() ? none : found->second;
}

/// Of a table's rows those that a change of a key may move: its own; all, where it states numbers
/// of others. What a tang is not given follows from what it is.
std::span<const Field* const> rows_moved_by(std::string_view key, const Rows& table) {
    const auto own = std::ranges::find(
        table, key, [](const Field* row) -> std::string_view { return row->key; });
    const bool alone = own != table.end() && !key.starts_with("tang.");
    return alone ? std::span(own, 1) : std::span(table);
}

/// Every number of these rows lies in the range that its key allows.
void range_rules(Requirements& rules, const Design& design, std::span<const Field* const> rows) {
    for (const Field* row : rows) {
        const Field& field = *row;
        const auto judge = [&](double value) {
            if (auto fault = range_fault(field, value)) rules.fail(*std::move(fault));
        };
        if (field.numbers) {
            std::ranges::for_each(field.numbers(design), judge);
        } else if (const auto value = field.get ? field.get(design) : std::nullopt) {
            judge(*value);
        }
    }
}

void dial_rules(Requirements& rules, const Design& design) {
    if (!rules.sound("spring") || !rules.sound("fit.dial")) return;
    const double end = std::max(design.spring.thickness.back().x_mm, design.own().pad.end_mm);
    rules.require(design.own().fit.dial_mm <= end, "fit.dial", kDialOnSpring, Quantity::length,
                  {end}, {design.own().fit.dial_mm});
}

/// The stop bears on the spring's end, and its face meets that with the blade about open.
void stop_rules(Requirements& rules, const Design& design) {
    const Stop& stop = design.own().fit.stop;
    const Pad& pad = design.own().pad;
    if (!rules.sound("spring") || !rules.sound("tang")) return;
    const double thick = end_thickness_mm(design.spring, pad);
    rules.require(stop.place != StopPlace::height || stop.height_mm <= kHighestStop * thick,
                  "fit.stop", kStopOnEnd, Quantity::length, {thick}, {stop.height_mm});
    if (!stop.face_mm) return;
    const double end = pad.end_mm - design.own().tang.pivot_mm;
    const double away = kMostOpenSlope * (design.own().tang.open_mm + 0.5 * thick);
    rules.require(std::abs(*stop.face_mm - end) <= away, "fit.stop_face", kStopNearEnd,
                  Quantity::length, {end - away, end + away}, {*stop.face_mm});
}

void edge_rules(Requirements& rules, const BladeBody& blade) {
    const std::size_t corners = blade.edge.size();
    rules.require(corners != 1, "blade.edge", kEdgeIsLine, Quantity::count, {},
                  {static_cast<double>(corners)});
    rules.require(!blade.well_mm || blade.tip || corners > 0 || blade.length_mm, "blade.well", [] {
        return std::string("needs to know where the tip is: give blade.tip, edge or length");
    });
}

void target_rules(Requirements& rules, const Targets& targets) {
    if (!targets.pull_low_n || !targets.pull_high_n) return;
    rules.require(!(*targets.pull_low_n > *targets.pull_high_n), "targets.pull", kPullsRise,
                  Quantity::force, {}, {*targets.pull_low_n, *targets.pull_high_n});
}

/// Ranges are judged first and relations later; they are told in the order of the file.
std::vector<Fault> in_file_order(std::vector<Fault> found) {
    const auto place = [](const Fault& fault) {
        const auto& rows = fields();
        return std::find_if(rows.begin(), rows.end(),
                            [&](const Field& row) { return row.key == fault.key; }) -
               rows.begin();
    };
    std::stable_sort(found.begin(), found.end(),
                     [&](const Fault& a, const Fault& b) { return place(a) < place(b); });
    return found;
}

}  // namespace

namespace {

/// Faults of the first blade on its spring.
///
/// @param key  the only one that may have any, with what its table's numbers have to do with each
///             other; empty: all
std::vector<Fault> faults_of_first(const Design& design,
                                   bool between_blades,
                                   std::string_view key = {}) {
    const std::string_view table = key.substr(0, key.find('.') + 1);
    const bool of_spring = table.empty() || table == "spring.";
    const bool of_either = of_spring || table == "tang.";
    Requirements rules;
    range_rules(rules, design, rows_moved_by(key, rows_of(table)));
    if (of_spring) spring_rules(rules, design.spring, design.own().pad, design.strength);
    if (of_spring) surface_rules(rules, design);
    if (of_either) tang_rules(rules, design.own().tang, design.own().pad);
    const bool both_sound = rules.sound("spring") && rules.sound("tang");
    if (of_either && both_sound) clearance_rules(rules, design);
    dial_rules(rules, design);
    stop_rules(rules, design);
    edge_rules(rules, design.own().blade);
    target_rules(rules, design.targets);
    frame_rules(rules, design);
    if (between_blades) blade_rules(rules, design);
    return in_file_order(rules.faults());
}

}  // namespace

std::vector<Fault> faults_of_change(const Design& design, std::string_view key) {
    return faults_of_first(design, true, key);
}

std::vector<Fault> faults(const Design& design) {
    if (design.blades.empty()) return {{.key = "blades", .text = "must have at least one blade"}};
    std::vector<Fault> found = faults_of_first(design, true);
    for (std::size_t i = 1; i < design.blades.size(); ++i) {
        for (Fault& fault : faults_of_first(seen_from(design, i), false)) {
            fault.key = key_of_blade(fault.key, design.blades[i]);
            if (!fault.key.empty()) found.push_back(std::move(fault));
        }
    }
    return found;
}

}  // namespace backspring
