#include "backspring/grind/grind.hpp"

#include "backspring/grind/grind_depth.hpp"
#include "backspring/grind/grind_flush.hpp"
#include "backspring/grind/grind_table.hpp"
#include "backspring/grind/grind_ways.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

void define_grind_input() {
    auto region = declared<GrindRegion>();
    define_record(region, BACKSPRING_FIELD(GrindRegion, from_mm),
                  BACKSPRING_FIELD(GrindRegion, to_mm));
    auto cut = declared<Cut>();
    define_record(cut, BACKSPRING_FIELD(Cut, face), BACKSPRING_FIELD(Cut, depth_mm),
                  BACKSPRING_FIELD(Cut, region));
    auto line = declared<LinerLine>();
    define_record(
        line, BACKSPRING_FIELD(LinerLine, rear_mm), BACKSPRING_FIELD(LinerLine, rear_height_mm),
        BACKSPRING_FIELD(LinerLine, front_mm), BACKSPRING_FIELD(LinerLine, front_height_mm));
}

void define_grind_result() {
    auto row = declared<GrindRow>();
    define_record(
        row, BACKSPRING_FIELD(GrindRow, removed_mm), BACKSPRING_FIELD(GrindRow, preload_mm),
        BACKSPRING_FIELD(GrindRow, stiffness_n_per_mm), BACKSPRING_FIELD(GrindRow, peak_torque_nmm),
        BACKSPRING_FIELD(GrindRow, peak_pull_n), BACKSPRING_FIELD(GrindRow, travel_peak_stress_mpa),
        BACKSPRING_FIELD(GrindRow, travel_peak_stress_station_mm),
        BACKSPRING_FIELD(GrindRow, yield_margin), BACKSPRING_FIELD(GrindRow, yield_margin_low),
        BACKSPRING_FIELD(GrindRow, reading_loaded_half_stop_mm),
        BACKSPRING_FIELD(GrindRow, reading_loaded_closed_mm),
        BACKSPRING_FIELD(GrindRow, reading_loaded_open_mm), BACKSPRING_FIELD(GrindRow, targets));
    auto way = declared<GrindWay>();
    define_record(way, BACKSPRING_FIELD(GrindWay, face), BACKSPRING_FIELD(GrindWay, region),
                  BACKSPRING_FIELD(GrindWay, after), BACKSPRING_FIELD(GrindWay, refused));
    auto pass = declared<FlushPass>();
    define_record(pass, BACKSPRING_FIELD(FlushPass, proud_mm), BACKSPRING_FIELD(FlushPass, after));
    auto flush = declared<Flush>();
    define_record(flush, BACKSPRING_FIELD(Flush, before), BACKSPRING_FIELD(Flush, at_start),
                  BACKSPRING_FIELD(Flush, passes), BACKSPRING_FIELD(Flush, left_proud_mm),
                  BACKSPRING_FIELD(Flush, removed), BACKSPRING_FIELD(Flush, design));
}

}  // namespace

void declare_grind(py::module_& m) {
    py::native_enum<GrindFace>(m, "GrindFace", "enum.Enum", DOC(GrindFace))
        .value("back", GrindFace::back, DOC(GrindFace_back))
        .value("belly", GrindFace::belly, DOC(GrindFace_belly))
        .value("pad", GrindFace::pad, DOC(GrindFace_pad))
        .finalize();
    py::class_<GrindRegion>(m, "GrindRegion", DOC(GrindRegion));
    py::class_<Cut>(m, "Cut", DOC(Cut));
    py::class_<LinerLine>(m, "LinerLine", DOC(LinerLine));
    py::class_<GrindRow>(m, "GrindRow", DOC(GrindRow));
    py::class_<GrindWay>(m, "GrindWay", DOC(GrindWay));
    py::class_<FlushPass>(m, "FlushPass", DOC(FlushPass));
    py::class_<Flush>(m, "Flush", DOC(Flush));
}

void define_grind(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    define_grind_input();
    define_grind_result();
    m.def("whole_face", &whole_face, py::arg("design"), py::arg("face"), DOC(whole_face));
    m.def("grind", &grind, py::arg("design"), py::arg("cut"), DOC(grind));
    m.def("grind_table", &grind_table, py::arg("design"), py::arg("cut"), py::arg("step_mm"),
          NoGil(), DOC(grind_table));
    m.def("grind_passes", &grind_passes, py::arg("depth_mm"), py::arg("pass_mm"),
          DOC(grind_passes));
    m.def("depth_for_pull", &depth_for_pull, py::arg("design"), py::arg("face"), py::arg("region"),
          py::arg("pull_n"), NoGil(), DOC(depth_for_pull));
    m.def("ways_to_pull", &ways_to_pull, py::arg("design"), py::arg("pull_n"), NoGil(),
          DOC(ways_to_pull));
    m.def("grind_flush", &grind_flush, py::arg("design"), py::arg("liners") = py::none(),
          py::arg("pass_mm") = 0.05, NoGil(), DOC(grind_flush));
}

}  // namespace backspring::python
