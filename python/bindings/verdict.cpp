#include "backspring/check/verdict.hpp"

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_verdict(py::module_& m) {
    py::class_<Surface>(m, "Surface", DOC(Surface));
    py::class_<Pins>(m, "Pins", DOC(Pins));
    py::class_<Hardness>(m, "Hardness", DOC(Hardness));
    py::native_enum<MarginGroup>(m, "MarginGroup", "enum.Enum", DOC(MarginGroup))
        .value("holds", MarginGroup::holds)
        .value("lasts", MarginGroup::lasts)
        .value("wears", MarginGroup::wears)
        .value("feels", MarginGroup::feels)
        .finalize();
    py::native_enum<MarginWord>(m, "MarginWord", "enum.Enum", DOC(MarginWord))
        .value("fails", MarginWord::fails, DOC(MarginWord_fails))
        .value("close", MarginWord::close, DOC(MarginWord_close))
        .value("holds", MarginWord::holds, DOC(MarginWord_holds))
        .value("note", MarginWord::note, DOC(MarginWord_note))
        .finalize();
    m.attr("CLOSE_MARGIN") = kCloseMargin;
    py::native_enum<MarginKind> kind(m, "MarginKind", "enum.Enum", DOC(MarginKind));
    for (const MarginName& each : kMarginNames) {
        kind.value(identifier(each.name).c_str(), each.kind);
    }
    kind.finalize();
    py::class_<Margin>(m, "Margin", DOC(Margin));
}

void define_verdict(py::module_&) {
    auto surface = declared<Surface>();
    define_record(
        surface, BACKSPRING_FIELD(Surface, finish), BACKSPRING_FIELD(Surface, hole_finish),
        BACKSPRING_FIELD(Surface, kink_radius_mm), BACKSPRING_FIELD(Surface, curve_radius_mm),
        BACKSPRING_FIELD(Surface, steel), BACKSPRING_FIELD(Surface, residual_mpa),
        BACKSPRING_FIELD(Surface, hole_residual_mpa), BACKSPRING_FIELD(Surface, soft_skin_mm));
    auto pins = declared<Pins>();
    define_record(pins, BACKSPRING_FIELD(Pins, middle_mm), BACKSPRING_FIELD(Pins, rear_mm),
                  BACKSPRING_FIELD(Pins, liner_mm), BACKSPRING_FIELD(Pins, yield_mpa));
    auto hardness = declared<Hardness>();
    define_record(hardness, BACKSPRING_FIELD(Hardness, spring_hrc));
    auto margin = declared<Margin>();
    define_record(margin, BACKSPRING_FIELD(Margin, kind), BACKSPRING_FIELD(Margin, group),
                  BACKSPRING_FIELD(Margin, word), BACKSPRING_FIELD(Margin, value),
                  BACKSPRING_FIELD(Margin, limit), BACKSPRING_FIELD(Margin, quantity),
                  BACKSPRING_FIELD(Margin, margin), BACKSPRING_FIELD(Margin, margin_low),
                  BACKSPRING_FIELD(Margin, station_mm), BACKSPRING_FIELD(Margin, blade_angle_deg),
                  BACKSPRING_FIELD(Margin, parameters), BACKSPRING_FIELD(Margin, names),
                  BACKSPRING_FIELD(Margin, sources));
    margin.def_property_readonly(
        "name", [](const Margin& self) { return name_of(self.kind); },
        "The fixed name of its kind, as \"hole-edge\".");
}

}  // namespace backspring::python
