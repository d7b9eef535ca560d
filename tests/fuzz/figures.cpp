#include "figures.hpp"

#include "backspring/check/error_budget.hpp"

using namespace backspring;

namespace fuzz {
namespace {

void hold_position(const Figures& figures, const Position& position) {
    figures.hold(position.contacts_mm);
    figures.hold(position.yield_margin);
    figures.hold(position.yield_margin_low);
    figures.hold(position.reading_loaded_low_mm);
    figures.hold(position.reading_loaded_high_mm);
    figures.hold(position.reading_unloaded_mm);
    for (const double value :
         {position.blade_angle_deg, position.force_n, position.energy_mj, position.torque_nmm,
          position.peak_stress_mpa, position.peak_stress_station_mm, position.reading_loaded_mm}) {
        figures.hold(value);
    }
}

void hold_stroke(const Figures& figures, const StrokeReport& report) {
    const Stroke& stroke = report.stroke;
    for (const double value :
         {stroke.from_deg, stroke.to_deg, stroke.start_torque_nmm, stroke.peak_torque_nmm,
          stroke.peak_torque_angle_deg, stroke.crest_angle_deg, stroke.energy_up_mj,
          stroke.energy_released_mj, stroke.snap_energy_mj, stroke.closing_peak_torque_nmm,
          stroke.closing_peak_angle_deg, stroke.closing_start_torque_nmm}) {
        figures.hold(value);
    }
    for (const auto& value :
         {report.start_pull_n, report.peak_pull_n, report.closing_start_pull_n,
          report.closing_peak_pull_n, report.snap_speed_rad_per_s, report.tip_speed_m_per_s}) {
        figures.hold(value);
    }
}

void hold_travel(const Figures& figures, const Travel& travel) {
    for (const double value :
         {travel.peak_force_n, travel.peak_force_angle_deg, travel.peak_stress_mpa,
          travel.peak_stress_angle_deg, travel.peak_stress_station_mm}) {
        figures.hold(value);
    }
    for (const auto& value :
         {travel.yield_margin, travel.yield_margin_low, travel.yield_margin_high}) {
        figures.hold(value);
    }
}

void hold_verdict(const Margin& margin) {
    const Figures figures("verdict " + std::string(name_of(margin.kind)));
    figures.hold(margin.value);
    figures.hold(margin.limit);
    figures.hold(margin.margin);
    figures.hold(margin.margin_low);
    figures.hold(margin.station_mm);
    figures.hold(margin.blade_angle_deg);
    for (const Parameter& each : margin.parameters) {
        const std::string of = "verdict " + std::string(name_of(margin.kind)) + " " + each.name;
        // Openings are endless where no limit is found.
        if (each.quantity == Quantity::count) {
            require(each.value >= 0.0, of);
        } else {
            Figures(of).hold(each.value);
        }
    }
}

void hold_stop_band(const StopBand& band) {
    const Figures figures("stop band");
    figures.hold(band.friction);
    for (const Ends& ends : {band.stop_n, band.force_n, band.blade_angle_deg, band.reading_mm}) {
        figures.hold(ends.low);
        figures.hold(ends.high);
    }
}

/// An impossible check says so, and its numbers are none.
bool told_impossible(const Check& check) {
    if (check.impossible.empty()) return false;
    require(check.verdict.empty(), "a verdict on an impossible check");
    for (const Notice& each : check.notices) {
        if (each.code == NoticeCode::out_of_bounds) return true;
    }
    throw WrongAnswer("an impossible check that does not say so");
}

}  // namespace

void hold(const std::vector<Notice>& notices) {
    for (const Notice& notice : notices) {
        for (const Parameter& each : notice.parameters) {
            Figures("notice " + in_short(notice)).hold(each.value);
        }
    }
}

void hold(const Check& check) {
    for (const Margin& margin : check.verdict) hold_verdict(margin);
    if (told_impossible(check)) return;
    const Figures figures("check");
    for (const Position& position : check.positions) hold_position(figures, position);
    for (const StrokeReport& report : check.strokes) hold_stroke(figures, report);
    hold_travel(figures, check.travel);
    figures.hold(check.stiffness_n_per_mm);
    figures.hold(check.closed_blade.tip_mm);
    figures.hold(check.closed_blade.edge_gap_mm);
    figures.hold(check.closed_blade.edge_gap_at_mm);
    if (check.stop_band) hold_stop_band(*check.stop_band);
    for (const TargetResult& target : check.targets) figures.hold(target.value);
    hold(check.notices);
    for (const Beside& beside : check.beside) {
        for (const OtherBlade& other : beside.others) {
            figures.hold(other.force_low_n);
            figures.hold(other.force_high_n);
        }
        for (const Position& position : beside.positions) hold_position(figures, position);
        for (const StrokeReport& report : beside.strokes) hold_stroke(figures, report);
        hold_travel(figures, beside.travel);
    }
    if (check.twist) {
        for (const double value : {check.twist->torque_nmm, check.twist->angle_deg,
                                   check.twist->across_mm, check.twist->blade_angle_deg}) {
            figures.hold(value);
        }
    }
}

void hold(const Design& design) {
    require(!design.blades.empty(), "a design without a blade");
    for (const Field& field : fields()) Figures(field.key).hold(numbers(field, design));
}

/// A derivative that is none is told so by find() and sides(); a result always is a number.
void hold(const Gradient& gradient) {
    Figures("gradient").hold(gradient.value);
    for (Eigen::Index i = 0; i < gradient.below.size(); ++i) {
        for (const auto* sides : {&gradient.derivative, &gradient.below, &gradient.above}) {
            require(!std::isinf(sides->data()[i]), "gradient: an endless derivative");
        }
    }
}

void hold(const Readings& readings) {
    const Figures figures("readings");
    figures.hold(readings.closed_mm);
    figures.hold(readings.half_stop_mm);
    figures.hold(readings.open_mm);
}

}  // namespace fuzz
