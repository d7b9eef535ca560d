#include "backspring/core/notice.hpp"

namespace backspring {

// In the order of the codes, which is checked below.
constexpr std::array<NoticeName, 52> kNoticeNames{{
    {NoticeCode::not_held_open, "not-held-open"},
    {NoticeCode::not_held_closed, "not-held-closed"},
    {NoticeCode::no_half_stop_rest, "no-half-stop-rest"},
    {NoticeCode::further_rest, "further-rest"},
    {NoticeCode::lifted_off, "lifted-off"},
    {NoticeCode::other_loose, "other-loose"},
    {NoticeCode::twist, "twist"},
    {NoticeCode::kick_off_pad, "kick-off-pad"},
    {NoticeCode::yields, "yields"},
    {NoticeCode::may_yield, "may-yield"},
    {NoticeCode::steep, "steep"},
    {NoticeCode::stop_unknown, "stop-unknown"},
    {NoticeCode::target_unknown, "target-unknown"},
    {NoticeCode::out_of_bounds, "out-of-bounds"},
    {NoticeCode::kink_not_judged, "kink-not-judged"},
    {NoticeCode::soft_skin, "soft-skin"},
    {NoticeCode::fit_done, "fit-done"},
    {NoticeCode::lowers_open, "lowers-open"},
    {NoticeCode::no_finer, "no-finer"},
    {NoticeCode::slightly_low, "slightly-low"},
    {NoticeCode::short_of_target, "short-of-target"},
    {NoticeCode::moves_tip, "moves-tip"},
    {NoticeCode::tip_runs_out, "tip-runs-out"},
    {NoticeCode::tip_follows, "tip-follows"},
    {NoticeCode::margin_out_of_reach, "margin-out-of-reach"},
    {NoticeCode::margin_at_limit, "margin-at-limit"},
    {NoticeCode::stock_sizes, "stock-sizes"},
    {NoticeCode::least_size, "least-size"},
    {NoticeCode::greatest_size, "greatest-size"},
    {NoticeCode::breaks_rule, "breaks-rule"},
    {NoticeCode::does_not_stay, "does-not-stay"},
    {NoticeCode::pull_turns_back, "pull-turns-back"},
    {NoticeCode::none_works, "none-works"},
    {NoticeCode::no_taper, "no-taper"},
    {NoticeCode::face_runs_out, "face-runs-out"},
    {NoticeCode::no_such_tang, "no-such-tang"},
    {NoticeCode::grind_too_weak, "grind-too-weak"},
    {NoticeCode::grind_limit, "grind-limit"},
    {NoticeCode::grind_lets_go, "grind-lets-go"},
    {NoticeCode::flush_breaks_rule, "flush-breaks-rule"},
    {NoticeCode::flush_passes, "flush-passes"},
    {NoticeCode::other_no_rest, "other-no-rest"},
    {NoticeCode::temper_range, "temper-range"},
    {NoticeCode::temper_time_range, "temper-time-range"},
    {NoticeCode::temper_hold, "temper-hold"},
    {NoticeCode::hardness_range, "hardness-range"},
    {NoticeCode::hardness_after_hold, "hardness-after-hold"},
    {NoticeCode::later_heat_range, "later-heat-range"},
    {NoticeCode::later_heat_hottest, "later-heat-hottest"},
    {NoticeCode::later_time_longest, "later-time-longest"},
    {NoticeCode::later_too_soft, "later-too-soft"},
    {NoticeCode::later_above_temper, "later-above-temper"},
}};

namespace {

constexpr bool in_order() {
    for (std::size_t i = 0; i < kNoticeNames.size(); ++i) {
        if (static_cast<std::size_t>(kNoticeNames[i].code) != i) return false;
    }
    return static_cast<std::size_t>(NoticeCode::later_above_temper) + 1 == kNoticeNames.size();
}
static_assert(in_order());

}  // namespace

std::string_view name_of(NoticeCode code) {
    return kNoticeNames.at(static_cast<std::size_t>(code)).name;
}

Notice broken_rule(NoticeCode code, const Fault& fault) {
    Notice notice{.code = code, .names = {{"key", fault.key}, {"rule", fault.text}}};
    const auto add = [&](double value) {
        const std::string place = std::to_string(notice.parameters.size());
        notice.parameters.push_back({"number_" + place, value, fault.quantity});
    };
    for (const double limit : fault.limits) add(limit);
    for (const double value : fault.values) add(value);
    return notice;
}

std::string in_short(const Notice& notice) {
    std::string text(name_of(notice.code));
    const char* before = ": ";
    const auto add = [&](const std::string& name, const std::string& value) {
        text += before + name + " " + value;
        before = ", ";
    };
    for (const auto& [name, value] : notice.names) add(name, value);
    for (const Parameter& each : notice.parameters) {
        add(each.name, with_unit(each.value, each.quantity));
    }
    return text;
}

}  // namespace backspring
