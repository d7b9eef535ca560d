#pragma once

#include <algorithm>
#include <map>
#include <string>

#include "backspring/check/check.hpp"

/// Results of a check by the names that gradients have.
inline std::map<std::string, double> figures_of(const backspring::Design& design) {
    const backspring::Check check = backspring::check(design);
    std::map<std::string, double> figures;
    double torque = 0.0;
    for (const auto& report : check.strokes) {
        torque = std::max(torque, report.stroke.peak_torque_nmm);
    }
    figures["peak_torque_nmm"] = torque;
    if (design.own().blade.nail_nick_mm)
        figures["peak_pull_n"] = torque / *design.own().blade.nail_nick_mm;
    figures["stiffness_n_per_mm"] = check.stiffness_n_per_mm;
    figures["travel_peak_stress_mpa"] = check.travel.peak_stress_mpa;
    figures["yield_margin"] = check.travel.yield_margin.value();
    for (const auto& position : check.positions) {
        if (position.name == "open") continue;
        figures["reading_loaded_" + position.name + "_mm"] = position.reading_loaded_mm;
        figures["reading_unloaded_" + position.name + "_mm"] = position.reading_unloaded_mm.value();
    }
    return figures;
}
