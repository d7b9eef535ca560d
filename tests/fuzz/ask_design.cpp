#include "ask_design.hpp"

#include <bit>

#include "design_of_bytes.hpp"
#include "figures.hpp"

using namespace backspring;

namespace fuzz {
namespace {

/// A question asked of a sound or unsound design with what the bytes say besides.
using Question = void (*)(const Design&, Bytes&);

bool same(double a, const std::optional<double>& b) {
    return b ? std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(*b) : std::isnan(a);
}

/// What a row of many designs must say of this one, to the last bit.
void require_alike(const Batch& batch, const Check& check) {
    const auto in = [](const Position* at) {
        return at ? std::optional(at->reading_loaded_mm) : std::nullopt;
    };
    const std::pair<const char*, std::optional<double>> figures[]{
        {"travel_peak_stress_mpa", check.travel.peak_stress_mpa},
        {"yield_margin", check.travel.yield_margin},
        {"stiffness_n_per_mm", check.stiffness_n_per_mm},
        {"reading_loaded_closed_mm", in(check.position("closed"))},
        {"reading_loaded_half_stop_mm", in(check.position("half_stop"))}};
    for (const auto& [name, value] : figures) {
        for (const BatchColumn& column : batch.columns) {
            if (column.name != name) continue;
            require(same(column.values[0], value), std::string("check is not its row: ") + name);
        }
    }
}

void ask_row(const Design& design, Bytes&) {
    std::optional<Check> checked;
    try {
        checked = check(design);
    } catch (const InvalidInput&) {
    }
    if (checked) hold(*checked);
    if (design.blades.empty()) return;
    const Change same_again{"tang.open", Eigen::ArrayXd::Constant(1, design.own().tang.open_mm)};
    const Batch batch = check_many(design, {same_again}, {.threads = 1, .columns = {}});
    require((batch.status[0] == RowStatus::invalid) == !checked, "a row is refused otherwise");
    for (const BatchColumn& column : batch.columns) {
        require(!std::isinf(column.values[0]), "an endless number in a row: " + column.name);
    }
    const bool impossible = batch.status[0] == RowStatus::out_of_bounds;
    if (checked && design.blades.size() == 1 && !impossible && checked->impossible.empty()) {
        require_alike(batch, *checked);
    }
}

void ask_rests(const Design& design, Bytes& bytes) {
    Solution solution(design);
    hold(solution.readings());
    hold(solution.unloaded_readings());
    const Figures figures("sweep");
    const Contact contact = contact_at(solution.joint(), bytes.between(-45.0, 225.0));
    for (const double value : {contact.force_n, contact.energy_nmm, contact.torque_nmm}) {
        figures.hold(value);
    }
}

void ask_sweep(const Design& design, Bytes& bytes) {
    const Sweep turned = sweep(design, bytes.between(2.0, 30.0), bytes.between(-45.0, 100.0));
    const Figures figures("sweep");
    for (const auto* column :
         {&turned.force_n, &turned.opening_torque_nmm, &turned.closing_torque_nmm,
          &turned.energy_mj, &turned.peak_stress_mpa, &turned.peak_stress_station_mm}) {
        figures.hold(*column);
    }
    const SpringAlong along = spring_along(design, bytes.between(0.0, 180.0), 1.0);
    figures.hold(along.deflection_mm);
    figures.hold(along.back_stress_mpa);
    figures.hold(along.belly_stress_mpa);
}

void ask_gradient(const Design& design, Bytes&) { hold(gradient(design)); }

void ask_influence(const Design& design, Bytes& bytes) {
    // Of several blades every station takes whole solutions of all cases.
    const double least = design.blades.size() == 1 ? 1.0 : 20.0;
    const Influence found = influence(design, bytes.flag() ? GrindFace::back : GrindFace::belly,
                                      bytes.between(least, 20.0));
    Figures("influence").hold(found.value);
    Figures("influence").hold(found.change_per_pass);
}

Cut cut_of(Bytes& bytes) {
    Cut cut{static_cast<GrindFace>(bytes.one_of(3)), bytes.number(0.1, 0.0, 3.0), {}};
    if (bytes.flag()) cut.region = {bytes.number(0.0, -30.0, 40.0), bytes.number(30.0, 0.0, 60.0)};
    return cut;
}

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

FitUnknowns unknowns_of(Bytes& bytes) {
    if (bytes.flag()) return {};
    return {.pad_tilt_rad = bytes.number(0.0, -0.02, 0.02),
            .pivot_play_mm = bytes.number(0.0, 0.0, 0.1),
            .extra_root_rad_per_nmm = bytes.number(0.0, 0.0, 1e-5),
            .loaded_offset_mm = bytes.number(0.0, -0.1, 0.1)};
}

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

void ask_levers(const Design& design, Bytes&) {
    for (const Lever& lever : levers(design)) {
        for (const auto& value : {lever.half_stop_mm, lever.closed_mm, lever.tip_mm,
                                  lever.edge_gap_mm, lever.peak_pull_n, lever.yield_margin}) {
            Figures("lever").hold(value);
        }
    }
}

void ask_load(const Design& design, Bytes& bytes) {
    PullOut pull{.at_mm = {}, .clearance_mm = bytes.number(0.25, 0.0, 5.0), .lever_mm = {}};
    if (bytes.flag()) pull.at_mm = bytes.number(25.0, 1.0, 40.0);
    if (bytes.flag()) pull.lever_mm = bytes.number(100.0, 1.0, 1000.0);
    hold(load_spring(design, pull));
}

void ask_budget(const Design& design, Bytes& bytes) {
    BudgetStated stated{
        .pin_clearance = bytes.flag(), .pivot_clearance = bytes.flag(), .modulus_mpa = {}};
    if (bytes.flag())
        stated.modulus_mpa = {bytes.number(2e5, 1e3, 1e6), bytes.number(2.1e5, 1e3, 1e6)};
    hold(error_budget(design, stated));
}

void ask_feel(const Design& design, Bytes&) {
    hold(feel(design));
    hold(whole_back(design));
}

void ask_tolerance(const Design& design, Bytes& bytes) {
    std::vector<Spread> spreads;
    for (std::size_t i = 0; i < 1 + bytes.one_of(3); ++i) {
        const auto& keys = dimensions();
        spreads.push_back({keys[bytes.one_of(keys.size())].key,
                           bytes.flag() ? SpreadKind::normal : SpreadKind::uniform,
                           bytes.number(0.02, 0.0, 0.5)});
    }
    ToleranceSettings settings{
        .rows = 8, .seed = bytes.word(), .pieces = 12, .with_shares = bytes.flag(), .threads = 1};
    hold(tolerance(design, spreads, settings));
}

void ask_set(const Design& design, Bytes&) {
    hold(permanent_set(design));
    for (const BearingPressure& each : bearing_pressures(design)) {
        Figures("bearing").hold(each.force_n);
        Figures("bearing").hold(each.station_mm);
    }
}

void ask_others(const Design& design, Bytes&) {
    for (const UsualEffect& effect : usual_effects(design)) {
        for (const FrameEffect& each : {effect.least, effect.most}) {
            Figures("usual effect").hold(each.pull_share);
            Figures("usual effect").hold(each.half_stop_mm);
            Figures("usual effect").hold(each.closed_mm);
        }
    }
    for (const BladeLever& lever : blade_levers(design)) {
        for (const BladeMoves& moves : lever.moves) {
            Figures("blade lever").hold(moves.half_stop_mm);
            Figures("blade lever").hold(moves.closed_mm);
        }
    }
}

constexpr Question kQuestions[]{
    &ask_row,       &ask_row,       &ask_row,         &ask_rests, &ask_sweep,  &ask_gradient,
    &ask_influence, &ask_grind,     &ask_grind_depth, &ask_flush, &ask_size,   &ask_taper,
    &ask_plan,      &ask_allowance, &ask_levers,      &ask_load,  &ask_budget, &ask_feel,
    &ask_tolerance, &ask_set,       &ask_others};

}  // namespace

void ask_design(std::span<const std::uint8_t> input) {
    Bytes bytes(input);
    const Question question = kQuestions[bytes.one_of(std::size(kQuestions))];
    const Design design = design_of(bytes);
    try {
        question(design, bytes);
    } catch (const Error&) {
        // A refusal in the library's own words.
    }
}

}  // namespace fuzz
