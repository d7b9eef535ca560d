#include "ask_design.hpp"

#include <bit>

#include "design_of_bytes.hpp"
#include "figures.hpp"
#include "questions.hpp"

using namespace backspring;

namespace fuzz {
namespace {

/// A design that breaks no rule is not refused by what needs nothing else to be told.
template <class Ask>
void of_sound(const Design& design, Ask ask) {
    try {
        ask();
    } catch (const InvalidInput& refusal) {
        require(!faults(design).empty(),
                std::string("a sound design is refused: ") + refusal.what());
        throw;
    }
}

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
    } catch (const InvalidInput& refusal) {
        require(!faults(design).empty(),
                std::string("a sound design is refused: ") + refusal.what());
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

void ask_gradient(const Design& design, Bytes&) {
    of_sound(design, [&] { hold(gradient(design)); });
}

void ask_influence(const Design& design, Bytes& bytes) {
    // Of several blades every station takes whole solutions of all cases.
    const double least = design.blades.size() == 1 ? 1.0 : 20.0;
    const Influence found = influence(design, bytes.flag() ? GrindFace::back : GrindFace::belly,
                                      bytes.between(least, 20.0));
    Figures("influence").hold(found.value);
    Figures("influence").hold(found.change_per_pass);
}

void hold_levers(const std::vector<Lever>& found) {
    for (const Lever& lever : found) {
        for (const auto& value : {lever.half_stop_mm, lever.closed_mm, lever.tip_mm,
                                  lever.edge_gap_mm, lever.peak_pull_n, lever.yield_margin}) {
            Figures("lever").hold(value);
        }
    }
}

void ask_levers(const Design& design, Bytes&) {
    of_sound(design, [&] { hold_levers(levers(design)); });
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
    if (bytes.flag()) stated.modulus_mpa = {bytes.between(1.8e5, 2e5), bytes.between(2e5, 2.2e5)};
    of_sound(design, [&] { hold(error_budget(design, stated)); });
}

void ask_feel(const Design& design, Bytes&) {
    of_sound(design, [&] {
        hold(feel(design));
        hold(whole_back(design));
    });
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
    of_sound(design, [&] { hold(permanent_set(design)); });
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
