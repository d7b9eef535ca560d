#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "backspring/tang/drawn_outline.hpp"
#include "designs.hpp"

// Outlines of tangs for the tests; all are invented.
namespace shapes {

using backspring::Arc;
using backspring::OutlinePoint;
using backspring::Tang;

inline constexpr double kSpiralFrom = 0.5 * std::numbers::pi;

/// Rows of arcs in turn, as a drawing has them.
inline std::vector<OutlinePoint> rows_of(const std::vector<Arc>& arcs) {
    std::vector<OutlinePoint> rows;
    for (const Arc& arc : arcs) {
        const auto place = [&](double normal, double bulge) {
            rows.push_back({arc.u_mm + arc.radius_mm * std::cos(normal),
                            arc.w_mm + arc.radius_mm * std::sin(normal), bulge});
        };
        if (arc.radius_mm > 0.0) place(arc.from_rad, std::tan(0.25 * (arc.to_rad - arc.from_rad)));
        place(arc.to_rad, 0.0);
    }
    const auto same = [](const OutlinePoint& a, const OutlinePoint& b) {
        return std::hypot(a.u_mm - b.u_mm, a.w_mm - b.w_mm) < 1e-12;
    };
    std::vector<OutlinePoint> kept;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (!same(rows[i], rows[(i + 1) % rows.size()])) kept.push_back(rows[i]);
    }
    return kept;
}

/// A usual tang's outline as rows, without its kick.
inline std::vector<OutlinePoint> rows_of(Tang tang) {
    tang.kick.reset();
    return rows_of(backspring::make_outline(tang, 10.0).body);
}

/// A square tang with three faces and two corners.
inline std::vector<OutlinePoint> square_rows(double open, double others, double radius) {
    const double quarter = std::tan(std::numbers::pi / 8.0);
    return {{5.0, open, 0.0},
            {-others + radius, open, quarter},
            {-others, open - radius, 0.0},
            {-others, radius - others, quarter},
            {-others + radius, -others, 0.0},
            {10.0, -others, 0.0}};
}

/// Corners at random on an ellipse about the pivot, some of them rounded from inside.
inline std::vector<OutlinePoint> random_rows(int seed) {
    std::mt19937 random(static_cast<unsigned>(seed));
    std::uniform_real_distribution<double> share(0.0, 1.0);
    const int count = 6 + static_cast<int>(8.0 * share(random));
    const double wide = 4.6 + 0.6 * share(random), high = 4.4 + 0.5 * share(random);
    std::vector<designs::Point> corners;
    for (int i = 0; i < count; ++i) {
        const double at = 2.0 * std::numbers::pi * (i + 0.7 * share(random)) / count;
        corners.push_back({wide * std::cos(at), high * std::sin(at)});
    }
    std::vector<OutlinePoint> rows;
    for (int i = 0; i < count; ++i) {
        const auto at = [&](int k) {
            return corners[static_cast<std::size_t>((k + count) % count)];
        };
        const auto [x, y] = at(i);
        const double in_u = x - at(i - 1).x, in_w = y - at(i - 1).y;
        const double out_u = at(i + 1).x - x, out_w = at(i + 1).y - y;
        const double in = std::hypot(in_u, in_w), out = std::hypot(out_u, out_w);
        const double cut = share(random) < 0.25 ? 0.0 : 0.45 * share(random) * std::min(in, out);
        const double turn = std::atan2(in_u * out_w - in_w * out_u, in_u * out_u + in_w * out_w);
        if (cut == 0.0) {
            rows.push_back({x, y, 0.0});
            continue;
        }
        rows.push_back({x - cut * in_u / in, y - cut * in_w / in, std::tan(0.25 * turn)});
        rows.push_back({x + cut * out_u / out, y + cut * out_w / out, 0.0});
    }
    return rows;
}

/// Where the reach of a spiral has its cosine and sine: what the first arc's centre lies at.
inline designs::Point spiral_centre(double first_mm, double rate) {
    // At the first normal the reach is the radius plus the centre's own, and so is its rate.
    const double c = std::cos(kSpiralFrom), s = std::sin(kSpiralFrom);
    const double start_u = -0.6, start_w = 4.4;  // where the spiral begins
    const double reach = start_u * c + start_w * s, across = -start_u * s + start_w * c;
    const double p = reach - first_mm, q = across - rate;
    return {p * c - q * s, p * s + q * c};
}

/// A cam whose radius of curvature grows evenly from just behind the open face to the closed one.
inline std::vector<OutlinePoint> spiral_rows(double first_mm, double rate, int count) {
    const double to = 1.5 * std::numbers::pi, step = (to - kSpiralFrom) / count;
    const double c = std::cos(kSpiralFrom), s = std::sin(kSpiralFrom);
    double radius = first_mm + 0.5 * rate * step;
    double u = -0.6 - radius * c, w = 4.4 - radius * s;
    std::vector<OutlinePoint> rows;
    for (int i = 0; i < count; ++i) {
        const double normal = kSpiralFrom + i * step;
        rows.push_back(
            {u + radius * std::cos(normal), w + radius * std::sin(normal), std::tan(0.25 * step)});
        const double next = radius + rate * step;
        u += (radius - next) * std::cos(normal + step);
        w += (radius - next) * std::sin(normal + step);
        radius = next;
    }
    radius -= rate * step;
    u += rate * step * std::cos(to);
    w += rate * step * std::sin(to);
    rows.push_back({u + radius * std::cos(to), w + radius * std::sin(to), 0.0});
    rows.push_back({10.0, rows.back().w_mm, 0.0});
    // The open face, in line with the beginning of the spiral.
    rows.push_back({6.0, 4.4 - 6.6 * c / s, 0.0});
    return rows;
}

}  // namespace shapes
