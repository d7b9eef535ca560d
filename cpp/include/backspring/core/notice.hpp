#pragma once

#include <array>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "backspring/core/fault.hpp"

namespace backspring {

/// A number that a finding is described with.
struct Parameter {
    std::string name;                     ///< within the finding, as "preload_before"
    double value = 0.0;                   ///< in the core's unit of its kind
    Quantity quantity = Quantity::ratio;  ///< kind of number
};

/// Everything that the core finds to say about a design or a question, beside numbers and faults.
enum class NoticeCode {
    // a checked design
    not_held_open,
    not_held_closed,
    no_half_stop_rest,
    further_rest,
    lifted_off,
    other_loose,
    twist,
    kick_off_pad,
    yields,
    may_yield,
    steep,
    stop_unknown,
    target_unknown,
    out_of_bounds,
    kink_not_judged,
    soft_skin,
    // a fit's plan
    fit_done,
    lowers_open,
    no_finer,
    slightly_low,
    short_of_target,
    moves_tip,
    tip_runs_out,
    tip_follows,
    // what stands in the way of a size
    margin_out_of_reach,
    margin_at_limit,
    stock_sizes,
    least_size,
    greatest_size,
    breaks_rule,
    does_not_stay,
    pull_turns_back,
    none_works,
    // searches that end without a solution
    no_taper,
    face_runs_out,
    no_such_tang,
    grind_too_weak,
    grind_limit,
    grind_lets_go,
    flush_breaks_rule,
    flush_passes,
    other_no_rest,
    // outside what a steel's temper data cover
    temper_range,
    temper_time_range,
    temper_hold,
    hardness_range,
    hardness_after_hold,
    later_heat_range,
    later_heat_hottest,
    later_time_longest,
    later_too_soft,
    later_above_temper,
};

/// A code with its fixed name.
struct NoticeName {
    NoticeCode code;        ///< the code
    std::string_view name;  ///< as "not-held-open"
};

/// All codes with their names, in the order of the codes.
extern const std::array<NoticeName, 52> kNoticeNames;

/// The fixed name of a code, as "not-held-open".
[[nodiscard]] std::string_view name_of(NoticeCode code);

/// A finding that is no error, in numbers and names; its sentence is written where it is shown.
struct Notice {
    NoticeCode code = NoticeCode::yields;        ///< what was found
    std::vector<Parameter> parameters{};         ///< numbers it is described with
    std::map<std::string, std::string> names{};  ///< names it is described with, as of a position
};

/// A finding that a rule is broken: its names are "key" and "rule", the rule's text with places for
/// numbers, and its numbers stand by place, as "number_0".
[[nodiscard]] Notice broken_rule(NoticeCode code, const Fault& fault);

/// A notice in one line for a log: code, numbers in the core's units, names.
[[nodiscard]] std::string in_short(const Notice& notice);

}  // namespace backspring
