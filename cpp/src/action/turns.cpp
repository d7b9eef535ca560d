#include "backspring/action/turns.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "backspring/core/angle.hpp"
#include "backspring/core/interpolant.hpp"
#include "cut.hpp"
#include "place_curve.hpp"

namespace backspring {
namespace {

constexpr double kFirstLookDeg = 12.0;
constexpr int kMostTries = 80;
constexpr std::size_t kMostCuts = 500;
constexpr double kLeastGapDeg = 1e-3;

/// A turn on its way into a piece.
struct Node {
    std::size_t turn;
    double angle_deg;
    std::size_t kind;
    bool starts = false;   ///< a piece
    bool settled = false;  ///< the gap behind it
};

/// How closely turns are looked at.
struct Fineness {
    double cut_deg;
    double torque_doubt;  ///< torque between turns lacks so much of the largest at most, on average
    int looks;
};

constexpr Fineness kAlone{.cut_deg = 1e-10, .torque_doubt = 1e-5, .looks = 14};
// With others that seat anew a contact costs several times as much.
constexpr Fineness kBothEnds{.cut_deg = 1e-5, .torque_doubt = 1e-3, .looks = 4};
// What comes to bear beside begins with no force, so where it does matters with the square of this;
// and two flats that lie alike may take turns over less.
constexpr Fineness kBeside{.cut_deg = 1e-4, .torque_doubt = 1e-3, .looks = 4};

const Fineness& fineness(const Joint& joint) {
    return joint.alone() ? kAlone : joint.beside.empty() ? kBothEnds : kBeside;
}

class Maker {
  public:
    Maker(const Action& action, std::vector<Turn>& known)
        : action_(action), known_(known), unknown_(action.joint) {}

    [[nodiscard]] std::vector<Node> make(const std::vector<double>& marks_deg, TurnsAt at) {
        for (std::size_t i = 0; i + 1 < marks_deg.size(); ++i) {
            look(marks_deg[i], marks_deg[i + 1]);
        }
        bool added = at == TurnsAt::everywhere;
        for (int round = 0; added && round < fine_.looks; ++round) added = add_turns();
        return std::move(nodes_);
    }

  private:
    [[nodiscard]] Node work_out(double angle_deg, const PlaceCurve& way) {
        known_.push_back(turn_near(action_, angle_deg, way));
        const std::size_t kind = bearing_kind(known_.back().contact, action_.joint.pad);
        return {known_.size() - 1, angle_deg, kind};
    }

    void look(double from_deg, double to_deg) {
        nodes_.push_back(nodes_.empty() ? work_out(from_deg, unknown_) : nodes_.back());
        nodes_.back().starts = true;
        const int parts = static_cast<int>(std::ceil((to_deg - from_deg) / kFirstLookDeg));
        for (int i = 1; i <= parts; ++i) {
            const double angle = std::lerp(from_deg, to_deg, static_cast<double>(i) / parts);
            append(work_out(angle, way_before()));
        }
    }

    /// By the last nodes of the last piece.
    [[nodiscard]] PlaceCurve way_before() const {
        constexpr std::size_t most = 3;
        std::size_t first = nodes_.size() - 1;
        while (!nodes_[first].starts && nodes_.size() - first < most) --first;
        PlaceCurve way(action_.joint);
        for (std::size_t k = first; k < nodes_.size(); ++k) way.add(contact(nodes_[k]));
        return way;
    }

    /// Adds a turn, with both sides of every cut before it.
    void append(Node next) {
        while (nodes_.back().kind != next.kind && cuts_ < kMostCuts) {
            auto [left, right] = cut(next);
            right.starts = true;
            ++cuts_;
            if (left.turn != nodes_.back().turn) nodes_.push_back(left);
            nodes_.push_back(right);
            if (right.turn == next.turn) return;
        }
        next.starts = nodes_.back().kind != next.kind;
        nodes_.push_back(next);
    }

    /// The last turn that bears as the last known one does, and the first that does not.
    [[nodiscard]] std::pair<Node, Node> cut(const Node& next) {
        Node low = nodes_.back(), high = next;
        CutSearch search(action_.joint, fine_.cut_deg);
        std::optional<std::pair<std::size_t, std::size_t>> tried;
        for (int i = 0; i < kMostTries && high.angle_deg - low.angle_deg > fine_.cut_deg; ++i) {
            const std::optional kinds = std::pair{low.kind, high.kind};
            if (std::exchange(tried, kinds) != kinds) {
                search = CutSearch(action_.joint, fine_.cut_deg);
                if (const auto sides = straight_cut(low, high)) return *sides;
            }
            PlaceCurve way(action_.joint);
            way.add(contact(low));
            way.add(contact(high));
            const Node there = work_out(search.next_deg(contact(low), contact(high)), way);
            (there.kind == low.kind ? low : high) = there;
        }
        return {low, high};
    }

    /// Both sides of a cut between neighbouring parts of a blade alone.
    [[nodiscard]] std::optional<std::pair<Node, Node>> straight_cut(const Node& low,
                                                                    const Node& high) {
        const auto over = goes_over_deg(action_.joint, contact(low), contact(high));
        if (!over) return std::nullopt;
        const Node before = work_out(*over - 0.4 * fine_.cut_deg, unknown_);
        const Node after = work_out(*over + 0.4 * fine_.cut_deg, unknown_);
        const bool inside = before.angle_deg > low.angle_deg && after.angle_deg < high.angle_deg;
        if (!inside || before.kind != low.kind || after.kind == low.kind) return std::nullopt;
        return std::pair(before, after);
    }

    [[nodiscard]] const Contact& contact(const Node& node) const {
        return known_[node.turn].contact;
    }

    /// Whether torque adds up to the energy between a node and the next.
    [[nodiscard]] bool adds_up(std::size_t first,
                               std::size_t last,
                               std::size_t i,
                               double most_nmm) const {
        Interpolant torque;
        const std::size_t from = std::max(first + 2, i) - 2, to = std::min(i + 3, last);
        for (std::size_t k = from; k <= to; ++k) {
            torque.add(radians(nodes_[k].angle_deg), contact(nodes_[k]).torque_nmm);
        }
        const double low = radians(nodes_[i].angle_deg), high = radians(nodes_[i + 1].angle_deg);
        const double gained = contact(nodes_[i + 1]).energy_nmm - contact(nodes_[i]).energy_nmm;
        const double missed = std::abs(gained - torque.integral(low, high));
        return missed <= fine_.torque_doubt * most_nmm * (high - low);
    }

    [[nodiscard]] double most_torque_nmm(std::size_t first, std::size_t last) const {
        double most = 0.0;
        for (std::size_t i = first; i <= last; ++i) {
            most = std::max(most, std::abs(contact(nodes_[i]).torque_nmm));
        }
        return most;
    }

    /// A turn in the middle of every gap that does not add up.
    bool add_turns() {
        // Where the kick's flank runs into the pad's end torque is beyond all the rest.
        constexpr double of_all = 0.01;
        const double least = of_all * most_torque_nmm(0, nodes_.size() - 1);
        bool added = false;
        for (std::size_t first = 0; first < nodes_.size();) {
            std::size_t last = first;
            while (last + 1 < nodes_.size() && !nodes_[last + 1].starts) ++last;
            const double most = std::max(most_torque_nmm(first, last), least);
            for (std::size_t i = first; i < last; ++i) {
                const double gap = nodes_[i + 1].angle_deg - nodes_[i].angle_deg;
                Node& node = nodes_[i];
                if (!node.settled)
                    node.settled = gap < kLeastGapDeg || adds_up(first, last, i, most);
                added |= !node.settled;
            }
            nodes_[last].settled = true;
            first = last + 1;
        }
        if (added) halve_gaps();
        return added;
    }

    void halve_gaps() {
        std::vector<Node> coarse;
        coarse.reserve(2 * nodes_.size());
        coarse.swap(nodes_);
        for (std::size_t i = 0; i < coarse.size(); ++i) {
            if (i == 0 || coarse[i].starts) {
                nodes_.push_back(coarse[i]);
            } else {
                append(coarse[i]);
            }
            if (coarse[i].settled) continue;
            const double middle = 0.5 * (coarse[i].angle_deg + coarse[i + 1].angle_deg);
            append(work_out(middle, way_between(coarse, i)));
        }
    }

    /// By two nodes of the piece on either side of a gap.
    [[nodiscard]] PlaceCurve way_between(const std::vector<Node>& nodes, std::size_t i) const {
        PlaceCurve way(action_.joint);
        if (!nodes[i].starts) way.add(contact(nodes[i - 1]));
        if (i + 2 < nodes.size() && !nodes[i + 2].starts) way.add(contact(nodes[i + 2]));
        way.add(contact(nodes[i]));
        way.add(contact(nodes[i + 1]));
        return way;
    }

    const Action& action_;
    const Fineness fine_ = fineness(action_.joint);
    std::vector<Turn>& known_;
    const PlaceCurve unknown_;
    std::vector<Node> nodes_;
    std::size_t cuts_ = 0;
};

}  // namespace

Turns::Turns(const Action& action, const std::vector<double>& marks_deg, TurnsAt at)
    : action_(&action) {
    constexpr std::size_t usual_turns = 128;
    known_.reserve(usual_turns);
    const std::vector<Node> nodes = Maker(action, known_).make(marks_deg, at);
    order_.reserve(nodes.size());
    for (const Node& node : nodes) order_.push_back(&known_[node.turn]);
    for (std::size_t first = 0; first < nodes.size();) {
        std::size_t end = first + 1;
        while (end < nodes.size() && !nodes[end].starts) ++end;
        pieces_.push_back(Piece(order_).subspan(first, end - first));
        first = end;
    }
}

std::span<const Piece> Turns::pieces(double from_deg, double to_deg) const {
    const auto first = std::ranges::find_if(
        pieces_, [&](const Piece& piece) { return angle_of(piece.front()) >= from_deg; });
    // A way ends at its mark also where a cut lies so near to it that the mark is a piece by
    // itself.
    const auto end = std::find_if(first, pieces_.end(), [&](const Piece& piece) {
        const double angle = angle_of(piece.front());
        return angle > to_deg || (angle == to_deg && piece.size() > 1);
    });
    return {first, end};
}

}  // namespace backspring
