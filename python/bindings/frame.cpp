#include "backspring/check/frame_effect.hpp"
#include "backspring/design/joint_of.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_frame(py::module_& m) {
    py::native_enum<LinerMetal>(m, "LinerMetal", "enum.Enum", DOC(LinerMetal))
        .value("brass", LinerMetal::brass, DOC(LinerMetal_brass))
        .value("nickel_silver", LinerMetal::nickel_silver, DOC(LinerMetal_nickel_silver))
        .value("stainless", LinerMetal::stainless, DOC(LinerMetal_stainless))
        .value("steel", LinerMetal::steel, DOC(LinerMetal_steel))
        .value("titanium", LinerMetal::titanium, DOC(LinerMetal_titanium))
        .finalize();
    py::native_enum<HeldBy>(m, "HeldBy", "enum.Enum", DOC(HeldBy))
        .value("liners", HeldBy::liners, DOC(HeldBy_liners))
        .value("pin_clearance", HeldBy::pin_clearance, DOC(HeldBy_pin_clearance))
        .value("pivot_clearance", HeldBy::pivot_clearance, DOC(HeldBy_pivot_clearance))
        .finalize();
    py::class_<Frame>(m, "Frame", DOC(Frame));
    py::class_<PinSeat>(m, "PinSeat", DOC(PinSeat));
    py::class_<FramePins>(m, "FramePins", DOC(FramePins));
    py::class_<LinerBeam>(m, "LinerBeam", DOC(LinerBeam));
    py::class_<FrameGive>(m, "FrameGive", DOC(FrameGive));
    py::class_<JointFrame>(m, "JointFrame", DOC(JointFrame));
    py::class_<FrameEffect>(m, "FrameEffect", DOC(FrameEffect));
    py::class_<UsualEffect>(m, "UsualEffect", DOC(UsualEffect));
}

namespace {

void define_frame_parts(py::module_& m) {
    auto frame = declared<Frame>();
    define_record(
        frame, BACKSPRING_FIELD(Frame, liner_metal), BACKSPRING_FIELD(Frame, liner_thickness_mm),
        BACKSPRING_FIELD(Frame, liner_height_mm), BACKSPRING_FIELD(Frame, liner_modulus_mpa),
        BACKSPRING_FIELD(Frame, scale_thickness_mm), BACKSPRING_FIELD(Frame, scale_modulus_mpa),
        BACKSPRING_FIELD(Frame, seat_mm_per_n));
    auto pin = declared<PinSeat>();
    define_record(pin, BACKSPRING_FIELD(PinSeat, x_mm), BACKSPRING_FIELD(PinSeat, diameter_mm),
                  BACKSPRING_FIELD(PinSeat, depth_mm));
    auto pins = declared<FramePins>();
    define_record(pins, BACKSPRING_FIELD(FramePins, middle), BACKSPRING_FIELD(FramePins, rear),
                  BACKSPRING_FIELD(FramePins, pivot), BACKSPRING_FIELD(FramePins, far_pivot));
    auto beam = declared<LinerBeam>();
    define_record(beam, BACKSPRING_FIELD(LinerBeam, start_mm), BACKSPRING_FIELD(LinerBeam, end_mm),
                  BACKSPRING_FIELD(LinerBeam, bending_nmm2), BACKSPRING_FIELD(LinerBeam, shear_n));
    auto give = declared<FrameGive>();
    define_record(
        give, BACKSPRING_FIELD(FrameGive, middle_mm_per_n),
        BACKSPRING_FIELD(FrameGive, rear_mm_per_n), BACKSPRING_FIELD(FrameGive, cross_mm_per_n),
        BACKSPRING_FIELD(FrameGive, pivot_mm_per_n),
        BACKSPRING_FIELD(FrameGive, far_pivot_mm_per_n), BACKSPRING_FIELD(FrameGive, liners));
    auto joint = declared<JointFrame>();
    define_record(joint, BACKSPRING_FIELD(JointFrame, give), BACKSPRING_FIELD(JointFrame, span_mm));
    m.def("make_frame_give", &make_frame_give, py::arg("frame"), py::arg("pins"),
          DOC(make_frame_give));
    m.def("seat_mm_per_n", &seat_mm_per_n, py::arg("give"), py::arg("span_mm"), py::arg("pivot_mm"),
          DOC(seat_mm_per_n));
    m.def("frame_of", &frame_of, py::arg("design"), DOC(frame_of));
}

}  // namespace

void define_frame(py::module_& m) {
    define_frame_parts(m);
    auto effect = declared<FrameEffect>();
    define_record(effect, BACKSPRING_FIELD(FrameEffect, pull_share),
                  BACKSPRING_FIELD(FrameEffect, half_stop_mm),
                  BACKSPRING_FIELD(FrameEffect, closed_mm));
    auto usual = declared<UsualEffect>();
    define_record(usual, BACKSPRING_FIELD(UsualEffect, what), BACKSPRING_FIELD(UsualEffect, least),
                  BACKSPRING_FIELD(UsualEffect, most));
    m.def("frame_effect", py::overload_cast<const Design&, const Design&>(&frame_effect),
          py::arg("design"), py::arg("changed"), py::call_guard<py::gil_scoped_release>(),
          DOC(frame_effect));
    m.def("stiff_liners", &stiff_liners, py::arg("design"), DOC(stiff_liners));
    m.def("slender_liners", &slender_liners, py::arg("design"), DOC(slender_liners));
    m.def("usual_effects", py::overload_cast<const Design&>(&usual_effects), py::arg("design"),
          py::call_guard<py::gil_scoped_release>(), DOC(usual_effects));
}

}  // namespace backspring::python
