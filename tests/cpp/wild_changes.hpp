#pragma once

#include <random>
#include <vector>

#include "backspring/design/dimension.hpp"
#include "backspring/many/batch.hpp"
#include "designs.hpp"

namespace designs {

/// Wide changes about a design, some of which break it: the same ones every time.
inline std::vector<backspring::Change> wild_changes(const backspring::Design& design,
                                                    unsigned start,
                                                    int rows) {
    using backspring::Change;
    std::mt19937 draw(start);
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(draw()) / 4294967296.0);
    };
    std::vector<Change> changes;
    const auto add = [&](const char* key, double low, double high) {
        if (!backspring::has_dimension(design, key)) return;
        Change change{.key = key, .values = Eigen::ArrayXd(rows)};
        for (double& value : change.values) value = between(low, high);
        changes.push_back(change);
    };
    add("fit.preload", 0.0, 1.6);
    add("spring.thickness_scale", 0.7, 1.3);
    add("spring.thickness_offset", -0.1, 0.1);
    add("spring.width", 1.5, 3.5);
    add("spring.rear_pin", 28.0, 40.0);
    add("tang.pivot", 30.0, 34.0);
    add("tang.open", 4.2, 4.8);
    add("tang.half_stop", 4.3, 4.9);
    add("tang.closed", 4.3, 4.9);
    add("tang.corner_radius", 0.0, 2.8);
    add("tang.kick.height", 0.05, 0.4);
    add("friction.spring", 0.0, 0.3);
    return changes;
}

/// The design of one row.
inline backspring::Design row_of(backspring::Design design,
                                 const std::vector<backspring::Change>& changes,
                                 Eigen::Index row) {
    for (const backspring::Field& dimension : backspring::dimensions()) {
        for (const backspring::Change& change : changes) {
            if (change.key == dimension.key) {
                design = with_dimension(design, change.key, change.values[row]);
            }
        }
    }
    return design;
}

}  // namespace designs
