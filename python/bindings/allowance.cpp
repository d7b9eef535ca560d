#include "backspring/fit/allowance.hpp"

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_allowance(py::module_& m) {
    py::native_enum<TangFace>(m, "TangFace", "enum.Enum", DOC(TangFace))
        .value("open", TangFace::open)
        .value("half_stop", TangFace::half_stop)
        .value("closed", TangFace::closed)
        .value("kick", TangFace::kick)
        .finalize();
    py::native_enum<FitState>(m, "FitState", "enum.Enum", DOC(FitState))
        .value("loaded", FitState::loaded)
        .value("unloaded", FitState::unloaded)
        .finalize();
    py::class_<FaceDepths>(m, "FaceDepths", DOC(FaceDepths));
    py::class_<FitUnknowns>(m, "FitUnknowns", DOC(FitUnknowns));
    py::class_<Readings>(m, "Readings", DOC(Readings));
    py::class_<FitReadings>(m, "FitReadings", DOC(FitReadings));
    py::class_<Allowance>(m, "Allowance", DOC(Allowance));
    py::class_<BackGrindReadings>(m, "BackGrindReadings", DOC(BackGrindReadings));
}

void define_allowance(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    auto depths = declared<FaceDepths>();
    define_record(depths, BACKSPRING_FIELD(FaceDepths, open_mm),
                  BACKSPRING_FIELD(FaceDepths, half_stop_mm),
                  BACKSPRING_FIELD(FaceDepths, closed_mm), BACKSPRING_FIELD(FaceDepths, kick_mm));
    auto unknowns = declared<FitUnknowns>();
    define_record(unknowns, BACKSPRING_FIELD(FitUnknowns, pad_tilt_rad),
                  BACKSPRING_FIELD(FitUnknowns, pivot_play_mm),
                  BACKSPRING_FIELD(FitUnknowns, extra_root_rad_per_nmm),
                  BACKSPRING_FIELD(FitUnknowns, loaded_offset_mm));
    auto readings = declared<Readings>();
    define_record(readings, BACKSPRING_FIELD(Readings, closed_mm),
                  BACKSPRING_FIELD(Readings, half_stop_mm));
    auto both = declared<FitReadings>();
    define_record(both, BACKSPRING_FIELD(FitReadings, loaded),
                  BACKSPRING_FIELD(FitReadings, unloaded),
                  BACKSPRING_FIELD(FitReadings, closed_angle_deg));
    auto left = declared<Allowance>();
    define_record(left, BACKSPRING_FIELD(Allowance, target_mm),
                  BACKSPRING_FIELD(Allowance, half_stop_mm), BACKSPRING_FIELD(Allowance, closed_mm),
                  BACKSPRING_FIELD(Allowance, tang));
    auto ground = declared<BackGrindReadings>();
    define_record(ground, BACKSPRING_FIELD(BackGrindReadings, before),
                  BACKSPRING_FIELD(BackGrindReadings, after),
                  BACKSPRING_FIELD(BackGrindReadings, allowance_before),
                  BACKSPRING_FIELD(BackGrindReadings, allowance_after));

    m.def("take_off", py::overload_cast<const Design&, const FaceDepths&>(&take_off),
          py::arg("design"), py::arg("depths"), DOC(take_off));
    m.def("fit_readings", &fit_readings, py::arg("design"), argument("unknowns", FitUnknowns{}),
          NoGil(), DOC(fit_readings));
    m.def("readings_in", &readings_in, py::arg("state"), py::arg("design"),
          argument("unknowns", FitUnknowns{}), NoGil(), DOC(readings_in));
    m.def("tip_height_mm", &tip_height_mm, py::arg("design"), py::arg("closed_angle_deg"),
          DOC(tip_height_mm));
    m.def("allowance", &allowance, py::arg("design"), py::arg("target_mm") = 0.0254,
          argument("unknowns", FitUnknowns{}), NoGil(), DOC(allowance));
    m.def("allowances", &allowances, py::arg("design"), py::arg("target_mm") = 0.0254, NoGil(),
          DOC(allowances));
    m.def("lowest_readings", &lowest_readings, py::arg("design"),
          argument("unknowns", FitUnknowns{}), NoGil(), DOC(lowest_readings));
    m.def("readings_after_back_grind", &readings_after_back_grind, py::arg("design"),
          py::arg("depth_mm"), py::arg("target_mm") = 0.0254, NoGil(),
          DOC(readings_after_back_grind));
}

}  // namespace backspring::python
