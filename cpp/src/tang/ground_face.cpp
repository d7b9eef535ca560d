#include "ground_face.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace backspring {
namespace {

constexpr double kTurn = 2.0 * kPi;
constexpr double kSameRad = 1e-9;
constexpr double kSameMm = 1e-9;
// The far side of a face, but not where another face has its edges: these would be joined.
constexpr double kAround = kPi - 0.3;

/// One side of a face: its arcs up to the face's normal, the nearest last.
class FaceSide {
  public:
    /// @param towards  +1 where normals rise towards the face's
    FaceSide(std::vector<Arc> arcs, double normal_rad, double towards)
        : arcs_(std::move(arcs)), normal_(normal_rad), out_(normal_rad), towards_(towards) {}

    [[nodiscard]] double reach_mm() const { return reach_of(edge_on(arcs_.back(), normal_)); }

    /// @param crowned  the face is an arc, which lies on both sides
    std::vector<Arc> with_end(double distance_mm, bool crowned) && {
        const double beyond = distance_mm - reach_mm();
        if (beyond < -kSameMm) {
            cut_to(distance_mm);
        } else if (beyond > kSameMm) {
            crowned&& arcs_.size() > 1 ? raise_crown(beyond) : raise_flat(beyond);
        } else if (arcs_.back().radius_mm > 0.0) {
            add_edge(edge_on(arcs_.back(), normal_), normal_);
        }
        return std::move(arcs_);
    }

  private:
    double Arc::*near() const { return towards_ > 0.0 ? &Arc::to_rad : &Arc::from_rad; }
    double Arc::*far() const { return towards_ > 0.0 ? &Arc::from_rad : &Arc::to_rad; }

    [[nodiscard]] double reach_of(const Arc& point) const {
        return out_.reach_mm(point.u_mm, point.w_mm);
    }

    void add_edge(Arc edge, double far_rad) {
        edge.*far() = far_rad;
        edge.*near() = normal_;
        arcs_.push_back(edge);
    }

    void cut_to(double distance_mm) {
        for (;;) {
            Arc& last = arcs_.back();
            const Arc begin = edge_on(last, last.*far());
            if (last.radius_mm > 0.0 && reach_of(begin) < distance_mm) {
                const double left = (distance_mm - reach_of(last)) / last.radius_mm;
                last.*near() = normal_ - towards_ * std::acos(std::clamp(left, -1.0, 1.0));
                return add_edge(edge_on(last, last.*near()), last.*near());
            }
            if (arcs_.size() == 1) return add_edge(begin, begin.from_rad);
            arcs_.pop_back();
            const Arc before = edge_on(arcs_.back(), arcs_.back().*near());
            if (reach_of(before) >= distance_mm) continue;
            const double share =
                (distance_mm - reach_of(before)) / (reach_of(begin) - reach_of(before));
            Arc edge = before;
            edge.u_mm += share * (begin.u_mm - before.u_mm);
            edge.w_mm += share * (begin.w_mm - before.w_mm);
            return add_edge(edge, begin.*far());
        }
    }

    void raise_flat(double by_mm) { lead_onto(raised(edge_on(arcs_.back(), normal_), by_mm)); }

    /// A crowned side keeps its arc.
    void raise_crown(double by_mm) {
        const Arc crown = raised(arcs_.back(), by_mm);
        arcs_.pop_back();
        lead_onto(edge_on(crown, crown.*far()));
        arcs_.back().*near() = crown.*far();
        arcs_.push_back(crown);
    }

    [[nodiscard]] Arc raised(Arc arc, double by_mm) const {
        arc.u_mm += by_mm * out_.u;
        arc.w_mm += by_mm * out_.w;
        return arc;
    }

    /// Straight from the outline to an edge that stands out of it.
    void lead_onto(const Arc& top) {
        for (;;) {
            Arc& last = arcs_.back();
            const double u = top.u_mm - last.u_mm, w = top.w_mm - last.w_mm;
            const double flank = std::acos(std::min(last.radius_mm / std::hypot(u, w), 1.0));
            const double away = std::remainder(std::atan2(w, u) - normal_, kTurn);
            const double at = normal_ + away - towards_ * flank;
            if (arcs_.size() == 1 || towards_ * (at - last.*far()) > kSameRad) {
                last.*near() = at;
                return add_edge(top, at);
            }
            arcs_.pop_back();
        }
    }

    std::vector<Arc> arcs_;
    double normal_;
    Direction2 out_;
    double towards_;
};

bool same_circle(const Arc& a, const Arc& b) {
    return a.u_mm == b.u_mm && a.w_mm == b.w_mm && a.radius_mm == b.radius_mm;
}

Arc with_range(Arc arc, double from_rad, double to_rad) {
    arc.from_rad = from_rad;
    arc.to_rad = to_rad;
    return arc;
}

}  // namespace

detail::Direction2::Direction2(double normal_rad)
    : u(std::cos(normal_rad)), w(std::sin(normal_rad)) {}

Arc detail::edge_on(const Arc& arc, double normal_rad) {
    const Direction2 out(normal_rad);
    return {arc.u_mm + arc.radius_mm * out.u, arc.w_mm + arc.radius_mm * out.w, 0.0, normal_rad,
            normal_rad};
}

std::vector<Arc> detail::started_at(const std::vector<Arc>& arcs, double start_rad) {
    const double first = arcs.front().from_rad;
    const double turns = std::ceil((first - kSameRad - start_rad) / kTurn) * kTurn;
    const double start = start_rad + turns;
    const auto split = std::find_if(arcs.begin(), arcs.end(),
                                    [&](const Arc& a) { return a.to_rad > start + kSameRad; });
    std::vector<Arc> begun;
    for (auto i = split; i != arcs.end(); ++i) {
        begun.push_back(with_range(*i, i->from_rad - turns, i->to_rad - turns));
    }
    const std::size_t seam = begun.size();
    for (auto i = arcs.begin(); i != split; ++i) {
        begun.push_back(with_range(*i, i->from_rad - turns + kTurn, i->to_rad - turns + kTurn));
    }
    if (split->from_rad < start - kSameRad) {
        begun.push_back(with_range(*split, split->from_rad - turns + kTurn, start_rad + kTurn));
    }
    begun.front().from_rad = start_rad;
    begun.back().to_rad = start_rad + kTurn;
    // Where the turn began before, one arc may lie on both sides.
    if (seam < begun.size() && same_circle(begun[seam - 1], begun[seam])) {
        begun[seam - 1].to_rad = begun[seam].to_rad;
        begun.erase(begun.begin() + static_cast<std::ptrdiff_t>(seam));
    }
    return begun;
}

std::vector<Arc> detail::with_face(const std::vector<Arc>& arcs,
                                   double normal_rad,
                                   double distance_mm) {
    const std::vector<Arc> turned = started_at(arcs, normal_rad - kAround);
    std::vector<Arc> behind, ahead;
    for (const Arc& arc : turned) {
        if (arc.from_rad < normal_rad - kSameRad || (ahead.empty() && behind.empty())) {
            behind.push_back(arc);
            behind.back().to_rad = std::min(arc.to_rad, normal_rad);
        }
        if (arc.to_rad > normal_rad + kSameRad) {
            ahead.push_back(arc);
            ahead.back().from_rad = std::max(arc.from_rad, normal_rad);
        }
    }
    behind.back().to_rad = ahead.front().from_rad = normal_rad;
    std::reverse(ahead.begin(), ahead.end());
    const bool crowned = behind.back().radius_mm > 0.0 && same_circle(behind.back(), ahead.back());
    behind = FaceSide(std::move(behind), normal_rad, 1.0).with_end(distance_mm, crowned);
    ahead = FaceSide(std::move(ahead), normal_rad, -1.0).with_end(distance_mm, crowned);
    behind.insert(behind.end(), ahead.rbegin(), ahead.rend());
    return behind;
}

}  // namespace backspring
