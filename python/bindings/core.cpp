#include "backspring/core/band.hpp"
#include "backspring/core/error.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

/// The library's exceptions are Python classes, so that they have types and texts there.
py::object exception(const char* name) {
    return py::module_::import("backspring.errors").attr(name);
}

/// InvalidInput carries its faults to Python.
void set_invalid_input(const InvalidInput& error) {
    const py::object type = exception("InvalidInput");
    const py::object value = type(error.what(), py::tuple(py::cast(error.faults())));
    PyErr_SetObject(type.ptr(), value.ptr());
}

void set_plain(const char* name, const Error& error) {
    PyErr_SetString(exception(name).ptr(), error.what());
}

/// What was found goes along, so that Python writes the sentence.
void set_explained(const char* name, const Explained& error) {
    if (!error.notice()) return set_plain(name, error);
    const py::object type = exception(name);
    const py::object value = type(py::cast(*error.notice()));
    PyErr_SetObject(type.ptr(), value.ptr());
}

void declare_notice(py::module_& m) {
    py::native_enum<NoticeCode> code(m, "NoticeCode", "enum.Enum", DOC(NoticeCode));
    for (const NoticeName& each : kNoticeNames) {
        code.value(identifier(each.name).c_str(), each.code);
    }
    code.finalize();
    py::class_<Parameter>(m, "Parameter", DOC(Parameter));
    py::class_<Notice>(m, "Notice", DOC(Notice));
}

void translate(std::exception_ptr pointer) {
    try {
        if (pointer) std::rethrow_exception(pointer);
    } catch (const InvalidInput& error) {
        set_invalid_input(error);
    } catch (const OutOfRange& error) {
        set_explained("OutOfRange", error);
    } catch (const NoConvergence& error) {
        set_explained("NoConvergence", error);
    } catch (const Error& error) {
        set_plain("Error", error);
    }
}

}  // namespace

void declare_core(py::module_& m) {
    for (const char* name : {"Error", "InvalidInput", "OutOfRange", "NoConvergence"}) {
        m.attr(name) = exception(name);
    }
    py::register_local_exception_translator(translate);
    py::native_enum<Quantity>(m, "Quantity", "enum.Enum", DOC(Quantity))
        .value("length", Quantity::length, DOC(Quantity_length))
        .value("force", Quantity::force, DOC(Quantity_force))
        .value("stress", Quantity::stress, DOC(Quantity_stress))
        .value("torque", Quantity::torque, DOC(Quantity_torque))
        .value("energy", Quantity::energy, DOC(Quantity_energy))
        .value("angle", Quantity::angle, DOC(Quantity_angle))
        .value("ratio", Quantity::ratio, DOC(Quantity_ratio))
        .value("count", Quantity::count, DOC(Quantity_count))
        .value("hardness", Quantity::hardness, DOC(Quantity_hardness))
        .value("temperature", Quantity::temperature, DOC(Quantity_temperature))
        .value("time", Quantity::time, DOC(Quantity_time))
        .value("mass", Quantity::mass, DOC(Quantity_mass))
        .value("inertia", Quantity::inertia, DOC(Quantity_inertia))
        .value("stiffness", Quantity::stiffness, DOC(Quantity_stiffness))
        .value("root_stiffness", Quantity::root_stiffness, DOC(Quantity_root_stiffness))
        .value("speed", Quantity::speed, DOC(Quantity_speed))
        .value("angular_speed", Quantity::angular_speed, DOC(Quantity_angular_speed))
        .value("compliance", Quantity::compliance, DOC(Quantity_compliance))
        .finalize();
    declare_notice(m);
    py::class_<Fault>(m, "Fault", DOC(Fault));
    py::class_<Band>(m, "Band", DOC(Band));
}

void define_core(py::module_& m) {
    auto fault = declared<Fault>();
    define_record(fault, BACKSPRING_FIELD(Fault, key), BACKSPRING_FIELD(Fault, text),
                  BACKSPRING_FIELD(Fault, rule), BACKSPRING_FIELD(Fault, limits),
                  BACKSPRING_FIELD(Fault, values), BACKSPRING_FIELD(Fault, quantity));
    fault.def_property_readonly("message", &message, DOC(message));
    auto parameter = declared<Parameter>();
    define_record(parameter, BACKSPRING_FIELD(Parameter, name), BACKSPRING_FIELD(Parameter, value),
                  BACKSPRING_FIELD(Parameter, quantity));
    auto notice = declared<Notice>();
    define_record(notice, BACKSPRING_FIELD(Notice, code), BACKSPRING_FIELD(Notice, parameters),
                  BACKSPRING_FIELD(Notice, names));
    auto band = declared<Band>();
    define_record(band, BACKSPRING_FIELD(Band, value), BACKSPRING_FIELD(Band, low),
                  BACKSPRING_FIELD(Band, high));
    m.def("unit_of", &unit_of, py::arg("quantity"), DOC(unit_of));
    m.def("name_of", py::overload_cast<NoticeCode>(&name_of), py::arg("code"),
          "The fixed name of a code, as \"not-held-open\".");
}

}  // namespace backspring::python
