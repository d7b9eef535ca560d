#include <pybind11/eigen.h>

#include "backspring/check/check.hpp"
#include "backspring/check/columns.hpp"
#include "backspring/check/in_use.hpp"
#include "backspring/check/look.hpp"
#include "backspring/design/cases.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

/// What the blade that a question is about has, offered on the design.
template <auto member>
const auto& of_own(const Design& design) {
    return design.own().*member;
}

#define BACKSPRING_OF_OWN(design, name) \
    design.def_property_readonly(#name, &of_own<&Blade::name>, DOC(Blade_##name))

void define_input() {
    auto blade = declared<Blade>();
    define_record(blade, BACKSPRING_FIELD(Blade, name), BACKSPRING_FIELD(Blade, end),
                  BACKSPRING_FIELD(Blade, pad), BACKSPRING_FIELD(Blade, tang),
                  BACKSPRING_FIELD(Blade, fit), BACKSPRING_FIELD(Blade, blade),
                  BACKSPRING_FIELD(Blade, hardness_hrc), BACKSPRING_FIELD(Blade, stainless),
                  BACKSPRING_FIELD(Blade, stands));
    auto targets = declared<Targets>();
    define_record(targets, BACKSPRING_FIELD(Targets, pull_low_n),
                  BACKSPRING_FIELD(Targets, pull_high_n), BACKSPRING_FIELD(Targets, yield_margin),
                  BACKSPRING_FIELD(Targets, reading_mm), BACKSPRING_FIELD(Targets, openings),
                  BACKSPRING_FIELD(Targets, edge_gap_mm));
    auto design = declared<Design>();
    define_record(design, BACKSPRING_FIELD(Design, spring), BACKSPRING_FIELD(Design, strength),
                  BACKSPRING_FIELD(Design, blades), BACKSPRING_FIELD(Design, friction),
                  BACKSPRING_FIELD(Design, targets), BACKSPRING_FIELD(Design, surface),
                  BACKSPRING_FIELD(Design, pins), BACKSPRING_FIELD(Design, frame),
                  BACKSPRING_FIELD(Design, hardness));
    BACKSPRING_OF_OWN(design, pad);
    BACKSPRING_OF_OWN(design, tang);
    BACKSPRING_OF_OWN(design, fit);
    BACKSPRING_OF_OWN(design, blade);
}

#undef BACKSPRING_OF_OWN

void define_position() {
    auto position = declared<Position>();
    define_record(
        position, BACKSPRING_FIELD(Position, name), BACKSPRING_FIELD(Position, blade_angle_deg),
        BACKSPRING_FIELD(Position, force_n), BACKSPRING_FIELD(Position, contacts_mm),
        BACKSPRING_FIELD(Position, energy_mj), BACKSPRING_FIELD(Position, torque_nmm),
        BACKSPRING_FIELD(Position, peak_stress_mpa),
        BACKSPRING_FIELD(Position, peak_stress_station_mm),
        BACKSPRING_FIELD(Position, yield_margin), BACKSPRING_FIELD(Position, yield_margin_low),
        BACKSPRING_FIELD(Position, reading_loaded_mm),
        BACKSPRING_FIELD(Position, reading_loaded_low_mm),
        BACKSPRING_FIELD(Position, reading_loaded_high_mm),
        BACKSPRING_FIELD(Position, reading_unloaded_mm));
}

/// A stroke's own numbers, offered on its report.
template <double Stroke::*member>
double of_stroke(const StrokeReport& report) {
    return report.stroke.*member;
}

#define BACKSPRING_OF_STROKE(name) \
    def_property_readonly(#name, &of_stroke<&Stroke::name>, DOC(Stroke_##name))

void define_stroke() {
    auto stroke = declared<Stroke>();
    define_record(
        stroke, BACKSPRING_FIELD(Stroke, from_deg), BACKSPRING_FIELD(Stroke, to_deg),
        BACKSPRING_FIELD(Stroke, start_torque_nmm), BACKSPRING_FIELD(Stroke, peak_torque_nmm),
        BACKSPRING_FIELD(Stroke, peak_torque_angle_deg), BACKSPRING_FIELD(Stroke, crest_angle_deg),
        BACKSPRING_FIELD(Stroke, energy_up_mj), BACKSPRING_FIELD(Stroke, energy_released_mj),
        BACKSPRING_FIELD(Stroke, snap_energy_mj), BACKSPRING_FIELD(Stroke, closing_peak_torque_nmm),
        BACKSPRING_FIELD(Stroke, closing_peak_angle_deg),
        BACKSPRING_FIELD(Stroke, closing_start_torque_nmm));
    auto report = declared<StrokeReport>();
    define_record(
        report, BACKSPRING_FIELD(StrokeReport, from_position),
        BACKSPRING_FIELD(StrokeReport, to_position), BACKSPRING_FIELD(StrokeReport, stroke),
        BACKSPRING_FIELD(StrokeReport, start_pull_n), BACKSPRING_FIELD(StrokeReport, peak_pull_n),
        BACKSPRING_FIELD(StrokeReport, closing_start_pull_n),
        BACKSPRING_FIELD(StrokeReport, closing_peak_pull_n),
        BACKSPRING_FIELD(StrokeReport, snap_speed_rad_per_s),
        BACKSPRING_FIELD(StrokeReport, tip_speed_m_per_s));
    report.BACKSPRING_OF_STROKE(from_deg)
        .BACKSPRING_OF_STROKE(to_deg)
        .BACKSPRING_OF_STROKE(start_torque_nmm)
        .BACKSPRING_OF_STROKE(peak_torque_nmm)
        .BACKSPRING_OF_STROKE(peak_torque_angle_deg)
        .BACKSPRING_OF_STROKE(crest_angle_deg)
        .BACKSPRING_OF_STROKE(energy_up_mj)
        .BACKSPRING_OF_STROKE(energy_released_mj)
        .BACKSPRING_OF_STROKE(snap_energy_mj)
        .BACKSPRING_OF_STROKE(closing_peak_torque_nmm)
        .BACKSPRING_OF_STROKE(closing_peak_angle_deg)
        .BACKSPRING_OF_STROKE(closing_start_torque_nmm);
}

void define_result() {
    auto travel = declared<Travel>();
    define_record(
        travel, BACKSPRING_FIELD(Travel, peak_force_n),
        BACKSPRING_FIELD(Travel, peak_force_angle_deg), BACKSPRING_FIELD(Travel, peak_stress_mpa),
        BACKSPRING_FIELD(Travel, peak_stress_angle_deg),
        BACKSPRING_FIELD(Travel, peak_stress_station_mm), BACKSPRING_FIELD(Travel, yield_margin),
        BACKSPRING_FIELD(Travel, yield_margin_low), BACKSPRING_FIELD(Travel, yield_margin_high));
    auto target = declared<TargetResult>();
    define_record(target, BACKSPRING_FIELD(TargetResult, name),
                  BACKSPRING_FIELD(TargetResult, value), BACKSPRING_FIELD(TargetResult, low),
                  BACKSPRING_FIELD(TargetResult, high), BACKSPRING_FIELD(TargetResult, met),
                  BACKSPRING_FIELD(TargetResult, stated));
    auto closed = declared<ClosedBlade>();
    define_record(closed, BACKSPRING_FIELD(ClosedBlade, tip_mm),
                  BACKSPRING_FIELD(ClosedBlade, edge_gap_mm),
                  BACKSPRING_FIELD(ClosedBlade, edge_gap_at_mm));
    auto check = declared<Check>();
    auto other = declared<OtherBlade>();
    define_record(other, BACKSPRING_FIELD(OtherBlade, name), BACKSPRING_FIELD(OtherBlade, position),
                  BACKSPRING_FIELD(OtherBlade, force_low_n),
                  BACKSPRING_FIELD(OtherBlade, force_high_n));
    auto beside = declared<Beside>();
    define_record(beside, BACKSPRING_FIELD(Beside, others), BACKSPRING_FIELD(Beside, positions),
                  BACKSPRING_FIELD(Beside, strokes), BACKSPRING_FIELD(Beside, travel));
    auto twisted = declared<Twist>();
    define_record(twisted, BACKSPRING_FIELD(Twist, torque_nmm), BACKSPRING_FIELD(Twist, angle_deg),
                  BACKSPRING_FIELD(Twist, across_mm), BACKSPRING_FIELD(Twist, side),
                  BACKSPRING_FIELD(Twist, blade_angle_deg), BACKSPRING_FIELD(Twist, beside));
    auto bearing = declared<BladeContact>();
    define_record(bearing, BACKSPRING_FIELD(BladeContact, name),
                  BACKSPRING_FIELD(BladeContact, contact),
                  BACKSPRING_FIELD(BladeContact, moved_mm));
    define_record(check, BACKSPRING_FIELD(Check, blade), BACKSPRING_FIELD(Check, positions),
                  BACKSPRING_FIELD(Check, strokes), BACKSPRING_FIELD(Check, travel),
                  BACKSPRING_FIELD(Check, stiffness_n_per_mm),
                  BACKSPRING_FIELD(Check, closed_blade), BACKSPRING_FIELD(Check, stop_band),
                  BACKSPRING_FIELD(Check, verdict), BACKSPRING_FIELD(Check, targets),
                  BACKSPRING_FIELD(Check, notices), BACKSPRING_FIELD(Check, impossible),
                  BACKSPRING_FIELD(Check, beside), BACKSPRING_FIELD(Check, twist));
    auto along = declared<SpringAlong>();
    define_fields(along, BACKSPRING_FIELD(SpringAlong, station_mm),
                  BACKSPRING_FIELD(SpringAlong, thickness_mm),
                  BACKSPRING_FIELD(SpringAlong, face_mm),
                  BACKSPRING_FIELD(SpringAlong, deflection_mm),
                  BACKSPRING_FIELD(SpringAlong, back_stress_mpa),
                  BACKSPRING_FIELD(SpringAlong, belly_stress_mpa));
}

}  // namespace

void declare_design(py::module_& m) {
    py::class_<Targets>(m, "Targets", DOC(Targets));
    py::native_enum<End>(m, "End", "enum.Enum", DOC(End))
        .value("front", End::front, DOC(End_front))
        .value("rear", End::rear, DOC(End_rear))
        .finalize();
    py::native_enum<Stand>(m, "Stand", "enum.Enum", DOC(Stand))
        .value("closed", Stand::closed, DOC(Stand_closed))
        .value("half_stop", Stand::half_stop, DOC(Stand_half_stop))
        .value("open", Stand::open, DOC(Stand_open))
        .finalize();
    py::class_<Blade>(m, "Blade", DOC(Blade));
    py::class_<Design>(m, "Design", DOC(Design));
    py::class_<Position>(m, "Position", DOC(Position));
    py::class_<Stroke>(m, "Stroke", DOC(Stroke));
    py::class_<StrokeReport>(m, "StrokeReport", DOC(StrokeReport));
    py::class_<Travel>(m, "Travel", DOC(Travel));
    py::class_<TargetResult>(m, "TargetResult", DOC(TargetResult));
    py::class_<ClosedBlade>(m, "ClosedBlade", DOC(ClosedBlade));
    py::class_<OtherBlade>(m, "OtherBlade", DOC(OtherBlade));
    py::class_<Beside>(m, "Beside", DOC(Beside));
    py::class_<Twist>(m, "Twist", DOC(Twist));
    py::class_<BladeContact>(m, "BladeContact", DOC(BladeContact));
    py::class_<Check>(m, "Check", DOC(Check));
    py::class_<SpringAlong>(m, "SpringAlong", DOC(SpringAlong));
}

void define_design(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    define_input();
    define_position();
    define_stroke();
    define_result();
    m.def("faults", py::overload_cast<const Design&>(&faults), py::arg("design"), DOC(faults));
    m.def("seen_from", &seen_from, py::arg("design"), py::arg("blade"), DOC(seen_from));
    m.def("check", &check, py::arg("design"), NoGil(), DOC(check));
    m.def("check_blades", &check_blades, py::arg("design"), NoGil(), DOC(check_blades));
    m.def("worst_targets", &worst_targets, py::arg("judged"), DOC(worst_targets));
    m.def("contacts_at", &contacts_at, py::arg("design"), py::arg("blade_angles_deg"),
          DOC(contacts_at));
    m.def("cases", &cases, py::arg("design"), DOC(cases));
    m.def("sweep", py::overload_cast<const Design&, double, double, double>(&sweep),
          py::arg("design"), py::arg("step_deg") = 1.0, py::arg("from_deg") = 0.0,
          py::arg("to_deg") = 180.0, NoGil(), DOC(sweep));
    m.def("contact_at", py::overload_cast<const Design&, double>(&contact_at), py::arg("design"),
          py::arg("blade_angle_deg"), DOC(contact_at));
    m.def("permanent_set", &permanent_set, py::arg("design"), py::arg("yield_mpa") = py::none(),
          NoGil(), DOC(permanent_set));
    m.def("bearing_pressures", py::overload_cast<const Design&>(&bearing_pressures),
          py::arg("design"), NoGil(), DOC(bearing_pressures));
    m.def("spring_along", &spring_along, py::arg("design"), py::arg("blade_angle_deg"),
          py::arg("spacing_mm") = 0.1, NoGil(), DOC(spring_along));
}

}  // namespace backspring::python
