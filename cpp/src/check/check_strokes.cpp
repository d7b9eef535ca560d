#include "check_parts.hpp"

namespace backspring {
namespace {

StrokeReport make_report(const Design& design,
                         const std::string& from,
                         const std::string& to,
                         const Stroke& stroke) {
    StrokeReport report;
    report.from_position = from;
    report.to_position = to;
    report.stroke = stroke;
    if (const auto& nick = design.own().blade.nail_nick_mm) {
        report.start_pull_n = report.stroke.start_torque_nmm / *nick;
        report.peak_pull_n = report.stroke.peak_torque_nmm / *nick;
        report.closing_start_pull_n = report.stroke.closing_start_torque_nmm / *nick;
        report.closing_peak_pull_n = report.stroke.closing_peak_torque_nmm / *nick;
    }
    if (const auto inertia = inertia_kg_mm2(design.own().blade, design.own().tang)) {
        const double speed = angular_speed_rad_per_s(report.stroke.snap_energy_mj, *inertia);
        report.snap_speed_rad_per_s = speed;
        if (design.own().blade.length_mm) {
            const double tip_mm = *design.own().blade.length_mm - rear_reach_mm(design.own().tang);
            report.tip_speed_m_per_s = speed * tip_mm / 1000.0;
        }
    }
    return report;
}

}  // namespace

std::vector<StrokeReport> detail::make_reports(const Design& design,
                                               const Rests& rests,
                                               const std::vector<Stroke>& strokes) {
    const double half_stop = rests.half_stop ? rests.half_stop->blade_angle_deg : 360.0;
    std::vector<StrokeReport> reports;
    for (const Stroke& stroke : strokes) {
        reports.push_back(make_report(
            design, stroke.from_deg < half_stop ? "closed" : "half_stop",
            stroke.to_deg > half_stop || !rests.half_stop ? "open" : "half_stop", stroke));
    }
    return reports;
}

}  // namespace backspring
