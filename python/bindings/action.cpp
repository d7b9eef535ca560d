#include <pybind11/eigen.h>

#include "backspring/action/friction.hpp"
#include "backspring/action/snap.hpp"
#include "backspring/action/sweep_columns.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_action(py::module_& m) {
    py::native_enum<StopPlace>(m, "StopPlace", "enum.Enum", DOC(StopPlace))
        .value("unstated", StopPlace::unstated, DOC(StopPlace_unstated))
        .value("back", StopPlace::back, DOC(StopPlace_back))
        .value("middle", StopPlace::middle, DOC(StopPlace_middle))
        .value("belly", StopPlace::belly, DOC(StopPlace_belly))
        .value("height", StopPlace::height, DOC(StopPlace_height))
        .finalize();
    py::class_<Stop>(m, "Stop", DOC(Stop));
    py::class_<StopForce>(m, "StopForce", DOC(StopForce));
    py::class_<Fit>(m, "Fit", DOC(Fit));
    py::class_<BladePoint>(m, "BladePoint", DOC(BladePoint));
    py::class_<BladeBody>(m, "BladeBody", DOC(BladeBody));
    py::class_<Friction>(m, "Friction", DOC(Friction));
    py::class_<Part>(m, "Part", DOC(Part));
    py::class_<Touch>(m, "Touch", DOC(Touch));
    py::class_<Others>(m, "Others", DOC(Others));
    py::class_<Contact>(m, "Contact", DOC(Contact));
    py::class_<Sweep>(m, "Sweep", DOC(Sweep));
}

void define_action(py::module_& m) {
    auto fit = declared<Fit>();
    define_record(fit, BACKSPRING_FIELD(Fit, preload_mm), BACKSPRING_FIELD(Fit, dial_mm),
                  BACKSPRING_FIELD(Fit, stop));
    auto stop = declared<Stop>();
    define_record(stop, BACKSPRING_FIELD(Stop, place), BACKSPRING_FIELD(Stop, height_mm),
                  BACKSPRING_FIELD(Stop, face_mm), BACKSPRING_FIELD(Stop, friction));
    auto stop_force = declared<StopForce>();
    define_record(stop_force, BACKSPRING_FIELD(StopForce, force_n),
                  BACKSPRING_FIELD(StopForce, lever_mm));
    auto point = declared<BladePoint>();
    define_record(point, BACKSPRING_FIELD(BladePoint, u_mm), BACKSPRING_FIELD(BladePoint, w_mm));
    auto blade = declared<BladeBody>();
    define_record(blade, BACKSPRING_FIELD(BladeBody, nail_nick_mm),
                  BACKSPRING_FIELD(BladeBody, inertia_kg_mm2), BACKSPRING_FIELD(BladeBody, mass_g),
                  BACKSPRING_FIELD(BladeBody, length_mm), BACKSPRING_FIELD(BladeBody, height_mm),
                  BACKSPRING_FIELD(BladeBody, edge_clearance_mm), BACKSPRING_FIELD(BladeBody, edge),
                  BACKSPRING_FIELD(BladeBody, tip), BACKSPRING_FIELD(BladeBody, well_mm));
    auto friction = declared<Friction>();
    define_record(friction, BACKSPRING_FIELD(Friction, spring), BACKSPRING_FIELD(Friction, pivot),
                  BACKSPRING_FIELD(Friction, pivot_pin_mm), BACKSPRING_FIELD(Friction, bends));
    auto touch = declared<Touch>();
    define_record(touch, BACKSPRING_FIELD(Touch, x_mm), BACKSPRING_FIELD(Touch, height_mm),
                  BACKSPRING_FIELD(Touch, slope), BACKSPRING_FIELD(Touch, force_n),
                  BACKSPRING_FIELD(Touch, part));
    auto part = declared<Part>();
    define_record(part, BACKSPRING_FIELD(Part, blade), BACKSPRING_FIELD(Part, arc),
                  BACKSPRING_FIELD(Part, flat), BACKSPRING_FIELD(Part, kick));
    auto others = declared<Others>();
    define_record(others, BACKSPRING_FIELD(Others, beside), BACKSPRING_FIELD(Others, far),
                  BACKSPRING_FIELD(Others, angles_deg), BACKSPRING_FIELD(Others, root_turn_rad),
                  BACKSPRING_FIELD(Others, far_root_turn_rad),
                  BACKSPRING_FIELD(Others, root_lift_mm),
                  BACKSPRING_FIELD(Others, far_root_lift_mm), BACKSPRING_FIELD(Others, all_rest),
                  BACKSPRING_FIELD(Others, taken_along));
    auto contact = declared<Contact>();
    define_record(contact, BACKSPRING_FIELD(Contact, blade_angle_deg),
                  BACKSPRING_FIELD(Contact, touches), BACKSPRING_FIELD(Contact, count),
                  BACKSPRING_FIELD(Contact, force_n), BACKSPRING_FIELD(Contact, energy_nmm),
                  BACKSPRING_FIELD(Contact, torque_nmm), BACKSPRING_FIELD(Contact, others),
                  BACKSPRING_FIELD(Contact, stop));
    auto sweep = declared<Sweep>();
    define_fields(sweep, BACKSPRING_FIELD(Sweep, blade_angle_deg), BACKSPRING_FIELD(Sweep, force_n),
                  BACKSPRING_FIELD(Sweep, opening_torque_nmm),
                  BACKSPRING_FIELD(Sweep, closing_torque_nmm), BACKSPRING_FIELD(Sweep, energy_mj),
                  BACKSPRING_FIELD(Sweep, peak_stress_mpa),
                  BACKSPRING_FIELD(Sweep, peak_stress_station_mm));
    m.def("friction_torque_nmm", &friction_torque_nmm, py::arg("contact"), py::arg("friction"),
          py::arg("pivot_mm"), DOC(friction_torque_nmm));
    m.def("preload_lost_mm", &preload_lost_mm, py::arg("spring"), py::arg("tang"),
          DOC(preload_lost_mm));
    m.def("inertia_kg_mm2", &inertia_kg_mm2, py::arg("blade"), py::arg("tang"),
          DOC(inertia_kg_mm2));
    m.def("angular_speed_rad_per_s", &angular_speed_rad_per_s, py::arg("energy_mj"),
          py::arg("inertia_kg_mm2"), DOC(angular_speed_rad_per_s));
}

}  // namespace backspring::python
