#pragma once

#include <pybind11/functional.h>
#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>

#include <cstdint>
#include <functional>
#include <optional>

#include "backspring/many/batch.hpp"

namespace backspring::python {

namespace py = pybind11;

/// Told the number of rows done.
using ReportRows = std::optional<std::function<void(std::int64_t)>>;

/// Tells the rows done, and stops for Ctrl-C; called without the interpreter's lock.
inline std::function<bool(std::int64_t)> keep_going(const ReportRows& report) {
    return [&report](std::int64_t done) {
        const py::gil_scoped_acquire hold;
        try {
            if (report) (*report)(done);
            if (PyErr_CheckSignals() != 0) throw py::error_already_set();
        } catch (py::error_already_set& error) {
            // What is done is returned; other errors are the caller's.
            if (!error.matches(PyExc_KeyboardInterrupt)) throw;
            return false;
        }
        return true;
    };
}

/// Statuses as an array of their codes.
inline py::array_t<std::uint8_t> status_codes(const Batch& batch) {
    static_assert(sizeof(RowStatus) == sizeof(std::uint8_t));
    return py::array_t<std::uint8_t>(static_cast<py::ssize_t>(batch.status.size()),
                                     reinterpret_cast<const std::uint8_t*>(batch.status.data()));
}

}  // namespace backspring::python
