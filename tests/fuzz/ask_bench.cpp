#include "figures.hpp"
#include "questions.hpp"

using namespace backspring;

namespace fuzz {

namespace {

Cut cut_of(Bytes& bytes) {
    Cut cut{static_cast<GrindFace>(bytes.one_of(3)), bytes.number(0.1, 0.0, 3.0), {}};
    if (bytes.flag()) cut.region = {bytes.number(0.0, -30.0, 40.0), bytes.number(30.0, 0.0, 60.0)};
    return cut;
}

}  // namespace

void ask_grind(const Design& design, Bytes& bytes) {
    const Cut cut = cut_of(bytes);
    const Design ground = grind(design, cut);
    hold(ground);
    hold(grind_row(ground, cut.depth_mm));
}

void ask_grind_depth(const Design& design, Bytes& bytes) {
    const Cut cut = cut_of(bytes);
    const double pull = bytes.number(20.0, 1.0, 100.0);
    if (const auto preload = preload_for_pull(design, pull)) {
        Figures("preload").hold(preload->preload_mm);
        Figures("preload").hold(preload->rear_pin_offset_mm);
        Figures("preload").hold(preload->yield_margin);
    }
    Figures("depth").hold(depth_for_pull(design, cut.face, cut.region, pull));
}

void ask_flush(const Design& design, Bytes& bytes) {
    const Flush flush = grind_flush(design, {}, bytes.number(0.05, 0.01, 0.5));
    hold(flush.at_start);
    for (const FlushPass& pass : flush.passes) hold(pass.after);
    hold(flush.design);
    Figures("flush").hold(flush.left_proud_mm);
}

void ask_size(const Design& design, Bytes& bytes) {
    static constexpr const char* kKeys[]{"spring.thickness", "fit.preload", "spring.width",
                                         "tang.pivot", "spring.length"};
    SizeTarget target;
    if (bytes.one_of(4) != 0) target.pull_n = bytes.number(20.0, 1.0, 100.0);
    if (bytes.one_of(3) != 0) target.yield_margin = bytes.number(1.2, 0.1, 10.0);
    SizeDimension dimension{.key = kKeys[bytes.one_of(5)],
                            .station_mm = {},
                            .low_mm = {},
                            .high_mm = {},
                            .stock_mm = {}};
    if (bytes.one_of(3) == 0) dimension.low_mm = bytes.number(1.0, 0.1, 50.0);
    if (bytes.one_of(3) == 0) dimension.high_mm = bytes.number(5.0, 0.1, 50.0);
    const SizeResult result = size(design, target, {dimension});
    for (const SizeAnswer& answer : result.answers) {
        Figures("size").hold(answer.sizes_mm);
        Figures("size").hold(answer.pull_n);
        Figures("size").hold(answer.yield_margin);
    }
    hold(result.limits);
}

void ask_taper(const Design& design, Bytes& bytes) {
    const Taper taper =
        propose_taper(design, bytes.number(20.0, 1.0, 100.0), bytes.number(1.5, 0.1, 4.0),
                      2 + static_cast<int>(bytes.one_of(12)));
    hold(taper.design);
    for (const double value :
         {taper.pull_n, taper.peak_stress_mpa, taper.yield_margin, taper.even_stress_mpa}) {
        Figures("taper").hold(value);
    }
}

namespace {

FitUnknowns unknowns_of(Bytes& bytes) {
    if (bytes.flag()) return {};
    return {.pad_tilt_rad = bytes.number(0.0, -0.02, 0.02),
            .pivot_play_mm = bytes.number(0.0, 0.0, 0.1),
            .extra_root_rad_per_nmm = bytes.number(0.0, 0.0, 1e-5),
            .loaded_offset_mm = bytes.number(0.0, -0.1, 0.1)};
}

}  // namespace

void ask_plan(const Design& design, Bytes& bytes) {
    const FitUnknowns unknowns = unknowns_of(bytes);
    PlanRules rules;
    rules.target_mm = bytes.number(0.0254, -0.1, 0.1);
    rules.repeatability_mm = bytes.number(0.0, 0.0, 0.05);
    rules.closed_by = static_cast<ClosedGrind>(bytes.one_of(4));
    if (bytes.one_of(3) == 0) rules.tip_mm = bytes.number(0.0, -2.0, 2.0);
    Measured measured;
    measured.state = bytes.flag() ? FitState::loaded : FitState::unloaded;
    measured.closed_mm = bytes.number(0.2, -0.1, 0.5);
    if (bytes.flag()) measured.half_stop_mm = bytes.number(0.2, -0.1, 0.5);
    hold(fit_plan(design, measured, rules, unknowns));
}

void ask_allowance(const Design& design, Bytes& bytes) {
    const FitUnknowns unknowns = unknowns_of(bytes);
    const FitReadings readings = fit_readings(design, unknowns);
    hold(readings.loaded);
    hold(readings.unloaded);
    const Allowance left = allowance(design, bytes.number(0.0254, -1.0, 1.0), unknowns);
    Figures("allowance").hold(left.closed_mm);
    Figures("allowance").hold(left.half_stop_mm);
}

}  // namespace fuzz
