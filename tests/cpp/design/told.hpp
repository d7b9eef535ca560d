#pragma once

#include <string>

#include "backspring/design/design.hpp"

/// All that is said of a design, a line each.
inline std::string told(const backspring::Design& design) {
    std::string all;
    for (const backspring::Fault& fault : backspring::faults(design)) {
        all += fault.key + ": " + backspring::message(fault) + "\n";
    }
    return all;
}
