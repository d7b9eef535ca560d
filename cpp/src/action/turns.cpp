#include "backspring/action/turns.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "backspring/core/angle.hpp"
#include "chebyshev.hpp"
#include "cut.hpp"
#include "fineness.hpp"
#include "place_curve.hpp"

namespace backspring {
namespace {

constexpr int kMostTries = 80;
constexpr std::size_t kMostCuts = 500;
constexpr double kLeastWayDeg = 1e-3;

/// A turn on its way into a piece.
struct Node {
    std::size_t turn;
    double angle_deg;
    std::size_t kind;
    bool starts = false;  ///< a piece
};

/// A piece on its way, at Chebyshev's places.
using Nodes = std::vector<Node>;

class Maker {
  public:
    Maker(const Action& action, std::vector<Turn>& known) : action_(action), known_(known) {}

    [[nodiscard]] Nodes make(const std::vector<double>& marks_deg) {
        PlaceCurve way(action_.joint);
        way_deg_ = marks_deg.back() - marks_deg.front();
        Nodes marks;
        for (const double mark : marks_deg) {
            marks.push_back(work_out(mark, way));
            if (!action_.joint.alone()) way.add(contact(marks.back()));
        }
        for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
            tell_between(marks[i], marks[i + 1], {&marks[i], 2}, fine_.halvings);
        }
        return std::move(nodes_);
    }

  private:
    [[nodiscard]] Node work_out(double angle_deg, const PlaceCurve& way) {
        known_.push_back(turn_near(action_, angle_deg, way));
        most_nmm_ = std::max(most_nmm_, std::abs(known_.back().contact.torque_nmm));
        const std::size_t kind = bearing_kind(known_.back().contact, action_.joint.pad);
        return {known_.size() - 1, angle_deg, kind};
    }

    /// Pieces from one node to another, cut wherever known ones between them bear in other ways.
    void tell_between(const Node& low,
                      const Node& high,
                      std::span<const Node> known,
                      int halvings) {
        Node start = low, from = known.front();
        // The nearest last.
        Nodes ahead(known.rbegin(), known.rend() - 1);
        while (!ahead.empty()) {
            if (from.kind == ahead.back().kind || cuts_ >= kMostCuts) {
                from = ahead.back();
                ahead.pop_back();
                continue;
            }
            const auto [left, right] = cut(from, ahead);
            ++cuts_;
            tell(start, left, halvings);
            start = from = right;
            if (right.turn == ahead.back().turn) ahead.pop_back();
        }
        tell(start, high, halvings);
    }

    /// A piece between two nodes that bear alike, at as many places as tell it.
    void tell(const Node& low, const Node& high, int halvings) {
        if (low.turn == high.turn) return add({low});
        Nodes piece{low, high};
        const double length = high.angle_deg - low.angle_deg;
        PlaceCurve way(action_.joint);
        way.add(contact(low));
        way.add(contact(high));
        std::size_t parts = kFewestParts;
        while (2 * parts <= fine_.parts && length > static_cast<double>(parts) * fine_.look_deg)
            parts *= 2;
        bool told = length < kLeastWayDeg;
        for (; !told && parts <= fine_.parts; parts *= 2) {
            if (const auto other = refine(piece, parts, way)) {
                const auto known = std::span(piece).subspan(*other - 1);
                return tell_between(low, high, known, halvings);
            }
            told = adds_up(piece);
        }
        if (told || halvings == 0) return add(piece);
        const Node middle = piece[piece.size() / 2];
        tell(low, middle, halvings - 1);
        tell(middle, high, halvings - 1);
    }

    void add(const Nodes& piece) {
        nodes_.insert(nodes_.end(), piece.begin(), piece.end());
        nodes_[nodes_.size() - piece.size()].starts = true;
    }

    /// Cuts a piece into more parts.
    ///
    /// @returns  the first node found that bears in another way than the piece, if any
    [[nodiscard]] std::optional<std::size_t> refine(Nodes& piece,
                                                    std::size_t parts,
                                                    PlaceCurve& way) {
        const Node low = piece.front(), high = piece.back();
        const std::size_t every = parts / (piece.size() - 1);
        Nodes finer;
        finer.reserve(parts + 1);
        for (std::size_t k = 0; k <= parts; ++k) {
            if (k % every == 0) {
                finer.push_back(piece[k / every]);
                continue;
            }
            const double share = chebyshev_share(parts, k);
            finer.push_back(work_out(std::lerp(low.angle_deg, high.angle_deg, share), way));
            way.add(contact(finer.back()));
        }
        piece = std::move(finer);
        if (cuts_ >= kMostCuts) return std::nullopt;
        const auto other = [&](const Node& node) { return node.kind != low.kind; };
        const auto found = std::find_if(piece.begin(), piece.end() - 1, other);
        if (found + 1 == piece.end()) return std::nullopt;
        return static_cast<std::size_t>(found - piece.begin());
    }

    /// The last turn that bears as a known one does, and the first that does not.
    ///
    /// @param ahead  the nearest last; what is seen beyond the cut is added
    [[nodiscard]] std::pair<Node, Node> cut(Node low, Nodes& ahead) {
        Node high = ahead.back();
        CutSearch search(action_.joint, fine_.cut_deg);
        std::optional<std::pair<std::size_t, std::size_t>> tried;
        std::optional<double> bears;
        for (int i = 0; i < kMostTries && high.angle_deg - low.angle_deg > fine_.cut_deg; ++i) {
            const std::optional kinds = std::pair{low.kind, high.kind};
            if (std::exchange(tried, kinds) != kinds) {
                search = CutSearch(action_.joint, fine_.cut_deg);
                bears.reset();
                const auto over = goes_over_deg(action_.joint, contact(low), contact(high));
                if (const auto sides = sides_of(over, low, high)) return *sides;
            }
            if (!bears) {
                bears = comes_to_bear_deg(action_.joint, contact(low), contact(high));
                if (const auto sides = sides_of(bears, low, high)) return *sides;
            }
            const double angle = search.next_deg(contact(low), contact(high));
            const bool near_low = angle - low.angle_deg < high.angle_deg - angle;
            PlaceCurve way(action_.joint);
            way.add(contact(near_low ? high : low));
            way.add(contact(near_low ? low : high));
            const Node there = work_out(angle, way);
            (there.kind == low.kind ? low : high) = there;
            if (there.kind != low.kind) ahead.push_back(there);
        }
        return {low, high};
    }

    /// Both sides of a cut, if it is where it is told to be.
    [[nodiscard]] std::optional<std::pair<Node, Node>> sides_of(const std::optional<double>& over,
                                                                const Node& low,
                                                                const Node& high) {
        if (!over) return std::nullopt;
        const PlaceCurve unknown(action_.joint);
        const Node before = work_out(*over - 0.4 * fine_.cut_deg, unknown);
        const Node after = work_out(*over + 0.4 * fine_.cut_deg, unknown);
        const bool inside = before.angle_deg > low.angle_deg && after.angle_deg < high.angle_deg;
        if (!inside || before.kind != low.kind || after.kind == low.kind) return std::nullopt;
        return std::pair(before, after);
    }

    [[nodiscard]] const Contact& contact(const Node& node) const {
        return known_[node.turn].contact;
    }

    /// Whether torque adds up to the energy in every part of a piece.
    [[nodiscard]] bool adds_up(const Nodes& piece) const {
        // Where the kick's flank runs into the pad's end torque is beyond all the rest.
        constexpr double of_all = 0.01, rounding = 1e-14;
        // What a short part lacks is little of the whole.
        constexpr double of_way = 0.01;
        std::vector<double> torques;
        double most = of_all * most_nmm_;
        for (const Node& node : piece) {
            torques.push_back(contact(node).torque_nmm);
            most = std::max(most, std::abs(torques.back()));
        }
        const double length = radians(piece.back().angle_deg - piece.front().angle_deg);
        for (std::size_t i = 0; i + 1 < piece.size(); ++i) {
            const double stored = contact(piece[i]).energy_nmm;
            const double gained = contact(piece[i + 1]).energy_nmm - stored;
            const double missed = std::abs(gained - length * integral_between(torques, i));
            const double part = piece[i + 1].angle_deg - piece[i].angle_deg;
            const double way = radians(std::max(part, of_way * way_deg_));
            if (missed > fine_.torque_doubt * most * way + rounding * stored) return false;
        }
        return true;
    }

    const Action& action_;
    const Fineness fine_ = fineness(action_.joint);
    std::vector<Turn>& known_;
    Nodes nodes_;
    std::size_t cuts_ = 0;
    double way_deg_ = 0.0;   ///< the whole
    double most_nmm_ = 0.0;  ///< torque of all turns
};

}  // namespace

Turns::Turns(const Action& action, const std::vector<double>& marks_deg) : action_(&action) {
    constexpr std::size_t usual_turns = 128;
    known_.reserve(usual_turns);
    const Nodes nodes = Maker(action, known_).make(marks_deg);
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
