#include "all_bear.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "bearing_set.hpp"
#include "following.hpp"
#include "neighbours.hpp"

namespace backspring {
namespace {

constexpr int kMostChanging = 4;

/// As the other end moves its root.
Indenter moved(Indenter indenter, const RootMove& root) {
    indenter.face_mm += root.lift_mm;
    indenter.face_slope += root.turn_rad;
    return indenter;
}

double highest_mm(const TurnedOutline& outline) {
    double highest = -std::numeric_limits<double>::infinity();
    for (int arc = 0; arc < outline.count(); ++arc) {
        const double low = outline.lowest_slope(arc), high = outline.highest_slope(arc);
        if (low > 0.0 || high < 0.0) continue;
        highest = std::max(highest, outline.at_slope(arc, 0.0).y_mm);
    }
    return highest;
}

/// What bears at one end of the spring, and what does not.
class End {
  public:
    End(const Joint& joint, const Following& all, bool far)
        : flexibility_(far ? joint.far_end->flexibility : joint.flexibility) {
        const RootMove& root = all.root(far);
        for (std::size_t blade = 0; blade < all.angles_deg().size(); ++blade) {
            // One that stands where it lets go is clear by next to nothing.
            if (all.is_far(blade) != far || all.is_loose_on_kick(blade)) continue;
            for (const Indenter& indenter : all.indenters(blade)) {
                own_.push_back(&indenter);
                moved_.push_back(moved(indenter, root));
            }
        }
        for (const AnyTouch& each : all.touches()) {
            if (each.far == far) borne_.push_back({moved_one(each.indenter), each.touch});
        }
    }

    /// What bears besides, about where.
    [[nodiscard]] std::optional<Touch> besides() const {
        std::vector<const Indenter*> doubtful;
        for (const Indenter& indenter : moved_) {
            if (!bears(indenter) && !surely_clear(indenter)) doubtful.push_back(&indenter);
        }
        if (doubtful.empty()) return std::nullopt;
        if (borne_.empty()) {
            const std::vector<Borne> all = bear(flexibility_, moved_);
            return all.empty() ? std::nullopt : std::optional(all.front().touch);
        }
        BearingSet set(flexibility_, doubtful);
        set.start(borne_);
        if (!set.add_one()) return std::nullopt;
        const auto added = [&](const Borne& b) { return !bears(*b.indenter); };
        return std::ranges::find_if(set.borne(), added)->touch;
    }

    /// What bears instead, where flats of two blades do in each other's place.
    [[nodiscard]] std::optional<std::vector<Touch>> instead() const {
        if (!flats_side_by_side(borne_)) return std::nullopt;
        const std::vector<Borne> again = bear(flexibility_, moved_, borne_);
        if (is_same(again)) return std::nullopt;
        std::vector<Touch> touches;
        for (const Borne& b : again) touches.push_back(b.touch);
        return touches;
    }

  private:
    [[nodiscard]] const Indenter* moved_one(const Indenter* own) const {
        return &moved_[static_cast<std::size_t>(std::ranges::find(own_, own) - own_.begin())];
    }

    [[nodiscard]] bool bears(const Indenter& indenter) const {
        return std::ranges::any_of(borne_, [&](const Borne& b) { return b.indenter == &indenter; });
    }

    /// Below the face wherever that is bent least.
    [[nodiscard]] bool surely_clear(const Indenter& indenter) const {
        double bent = 0.0;
        for (const Borne& b : borne_) {
            bent += b.touch.force_n *
                    deflection_per_force(flexibility_, indenter.pad.start_mm, b.touch.x_mm);
        }
        const double face = std::min(indenter.face_at_mm(indenter.pad.start_mm),
                                     indenter.face_at_mm(indenter.pad.end_mm));
        return highest_mm(indenter.outline) < face + bent;
    }

    [[nodiscard]] bool is_same(const std::vector<Borne>& again) const {
        constexpr double same_mm = 1e-7;
        return again.size() == borne_.size() && std::ranges::all_of(borne_, [&](const Borne& b) {
                   return std::ranges::any_of(again, [&](const Borne& a) {
                       return a.indenter == b.indenter &&
                              std::abs(a.touch.x_mm - b.touch.x_mm) < same_mm;
                   });
               });
    }

    const Flexibility& flexibility_;
    std::vector<const Indenter*> own_;
    std::vector<Indenter> moved_;
    std::vector<Borne> borne_;
};

/// What does not bear as it was followed.
struct Changed {
    std::optional<Touch> comes{};  ///< besides
    std::vector<Touch> instead{};  ///< of all at its end

    [[nodiscard]] bool nothing() const { return !comes && instead.empty(); }
};

Changed changed_at_either_end(const Joint& joint, const Following& all) {
    const End own(joint, all, false);
    if (auto touch = own.besides()) return {touch, {}};
    std::optional<End> far;
    if (joint.far_end) far.emplace(joint, all, true);
    if (auto touch = far ? far->besides() : std::nullopt) return {touch, {}};
    if (auto touches = own.instead()) return {{}, *std::move(touches)};
    if (auto touches = far ? far->instead() : std::nullopt) return {{}, *std::move(touches)};
    return {};
}

Contact contact_of(const Joint& joint, const Following& all) {
    Contact contact;
    contact.blade_angle_deg = all.angles_deg()[0];
    Others& others = contact.others;
    others.angles_deg.assign(all.angles_deg().begin() + 1, all.angles_deg().end());
    for (const AnyTouch& each : all.touches()) {
        if (each.touch.part.blade == 0) {
            add_touch(contact, *each.indenter, each.touch);
            continue;
        }
        contact.energy_nmm += 0.5 * each.touch.force_n * each.indenter->overlap_mm(each.touch);
        if (static_cast<std::size_t>(each.touch.part.blade) == all.taken_along())
            contact.torque_nmm += each.touch.force_n * each.lever_mm();
        if (each.far) {
            others.far.push_back(seen_from_own(joint, each.touch));
        } else {
            others.beside.push_back(each.touch);
        }
    }
    others.taken_along = static_cast<int>(all.taken_along());
    others.root_turn_rad = all.root(false).turn_rad;
    others.root_lift_mm = all.root(false).lift_mm;
    others.far_root_turn_rad = all.root(true).turn_rad;
    others.far_root_lift_mm = all.root(true).lift_mm;
    return contact;
}

}  // namespace

std::optional<Contact> detail::all_bear_as(const Joint& joint,
                                           double blade_angle_deg,
                                           std::span<const Contact* const> near) {
    if (joint.flexibility.rigid() || !near.front()->others.all_rest) return std::nullopt;
    Following all(joint, blade_angle_deg, near);
    bool found = all.found();
    for (int changes = 0; found; ++changes) {
        const Changed changed = changed_at_either_end(joint, all);
        if (changed.nothing()) return contact_of(joint, all);
        found = changes < kMostChanging && (changed.comes ? all.found_with(*changed.comes)
                                                          : all.found_instead(changed.instead));
    }
    return std::nullopt;
}

}  // namespace backspring
