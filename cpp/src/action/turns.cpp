#include "backspring/action/turns.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

#include "adds_up.hpp"
#include "cut.hpp"
#include "fineness.hpp"
#include "goes_over.hpp"
#include "neighbours.hpp"
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

    [[nodiscard]] Nodes make(std::vector<Contact> contacts) {
        way_deg_ = contacts.back().blade_angle_deg - contacts.front().blade_angle_deg;
        Nodes marks;
        for (Contact& mark : contacts) marks.push_back(keep(std::move(mark)));
        for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
            tell_between(marks[i], marks[i + 1], {&marks[i], 2}, fine_.halvings);
        }
        return std::move(nodes_);
    }

  private:
    [[nodiscard]] Node keep(Contact contact) {
        known_.emplace_back().contact = std::move(contact);
        return keep_last();
    }

    /// The contact of the last turn is there.
    [[nodiscard]] Node keep_last() {
        Turn& turn = known_.back();
        const Contact& contact = turn.contact;
        add_friction(action_, turn);
        most_nmm_ = std::max(most_nmm_, std::abs(contact.torque_nmm));
        const std::size_t kind = bearing_kind(contact, action_.joint.pad);
        return {known_.size() - 1, contact.blade_angle_deg, kind};
    }

    /// Pieces from one node to another, cut wherever known ones between them bear in other ways.
    void tell_between(const Node& low,
                      const Node& high,
                      std::span<const Node> known,
                      int halvings) {
        const auto other = [&](const Node& node) { return node.kind != low.kind; };
        if (std::ranges::none_of(known, other)) return tell(low, high, halvings);
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
        Nodes piece;
        piece.reserve(2 * kFewestParts + 1);
        piece = {low, high};
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
        const std::size_t known = piece.size() - 1, every = parts / known;
        piece.resize(parts + 1);
        for (std::size_t k = known; k > 0; --k) piece[k * every] = piece[k];
        std::array<double, kMostPlaces> angles;
        std::size_t count = 0;
        for (std::size_t k = 1; k < parts; ++k) {
            if (k % every == 0) continue;
            angles[count++] = std::lerp(low.angle_deg, high.angle_deg, chebyshev_share(parts, k));
        }
        const auto abreast = way.abreast(std::span(angles).first(count));
        for (std::size_t k = 1, i = 0; k < parts; ++k) {
            if (k % every == 0) continue;
            Contact& contact = known_.emplace_back().contact;
            if (!abreast || !abreast->tell(i, contact)) contact = way.contact_at(angles[i]);
            piece[k] = keep_last();
            way.add(contact);
            ++i;
        }
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
                if (auto over = goes_over(action_.joint, contact(low), contact(high))) {
                    const Node before = keep(std::move(over->low));
                    const auto sides = between(low, high, before, keep(std::move(over->high)));
                    if (sides) return *sides;
                }
            }
            if (!bears) {
                bears = comes_to_bear_deg(action_.joint, contact(low), contact(high));
                const auto sides = bears ? sides_of(low, high, *bears) : std::nullopt;
                if (sides) return *sides;
            }
            const double angle = search.next_deg(contact(low), contact(high));
            const bool near_low = angle - low.angle_deg < high.angle_deg - angle;
            PlaceCurve way(action_.joint);
            way.add(contact(near_low ? high : low));
            way.add(contact(near_low ? low : high));
            const Node there = keep(way.contact_at(angle));
            (there.kind == low.kind ? low : high) = there;
            if (there.kind != low.kind) ahead.push_back(there);
        }
        return {low, high};
    }

    using Sides = std::optional<std::pair<Node, Node>>;

    /// Both sides of a cut, if it is where it is told to be.
    [[nodiscard]] Sides sides_of(const Node& low, const Node& high, double angle_deg) {
        const auto at = [&](double by) {
            return keep(contact_at(action_.joint, angle_deg + by * fine_.cut_deg));
        };
        const Node before = at(-0.4);
        return between(low, high, before, at(0.4));
    }

    /// Both, if a cut is between them.
    [[nodiscard]] Sides between(const Node& low,
                                const Node& high,
                                const Node& before,
                                const Node& after) const {
        const bool inside = before.angle_deg > low.angle_deg && after.angle_deg < high.angle_deg;
        if (!inside || before.kind != low.kind || after.kind == low.kind) return std::nullopt;
        return std::pair(before, after);
    }

    [[nodiscard]] const Contact& contact(const Node& node) const {
        return known_[node.turn].contact;
    }

    [[nodiscard]] bool adds_up(const Nodes& piece) const {
        std::array<const Contact*, kMostPlaces> contacts;
        for (std::size_t k = 0; k < piece.size(); ++k) contacts[k] = &contact(piece[k]);
        const std::span all(contacts.data(), piece.size());
        return detail::adds_up(all, fine_.torque_doubt, most_nmm_, way_deg_);
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

Turns::Turns(const Action& action, std::vector<Contact> marks) : action_(&action) {
    constexpr std::size_t usual_turns = 128;
    known_.reserve(usual_turns);
    const Nodes nodes = Maker(action, known_).make(std::move(marks));
    order_.reserve(nodes.size());
    for (const Node& node : nodes) order_.push_back(&known_[node.turn]);
    for (std::size_t first = 0; first < nodes.size();) {
        std::size_t end = first + 1;
        while (end < nodes.size() && !nodes[end].starts) ++end;
        pieces_.push_back(Piece(order_).subspan(first, end - first));
        first = end;
    }
}

}  // namespace backspring
