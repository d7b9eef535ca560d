#include "element_reader.hpp"

#include <array>
#include <cmath>

#include "backspring/design/joint_of.hpp"

namespace backspring {
namespace {

/// A design's joints, each made when first asked for.
class Joints {
  public:
    /// @param same_tang  as well as pad and fit
    Joints(const Design& design, Flexibility flexibility, bool same_tang)
        : design_(design), flexibility_(std::move(flexibility)), same_tang_(same_tang) {}

    /// @param watched  of a design that differs a little
    [[nodiscard]] const Joint& like(const Watched& watched) {
        auto& joint = joints_[static_cast<std::size_t>(watched.kind)];
        if (joint) return *joint;
        const Blade& own = design_.own();
        joint = same_tang_ ? backspring::on_other_spring(watched.joint, flexibility_,
                                                         design_.spring, own.tang, own.fit)
                           : make_joint(design_, watched.kind, flexibility_);
        return *joint;
    }

  private:
    const Design& design_;
    Flexibility flexibility_;
    bool same_tang_;
    std::array<std::optional<Joint>, 3> joints_;
};

/// Where the worst place goes when a hole it lies in grows or moves.
double carried(const Spring& from, const Spring& to, double x_mm) {
    for (std::size_t i = 0; i < from.holes.size(); ++i) {
        const Hole &old = from.holes[i], &now = to.holes[i];
        const double share = (x_mm - old.center_mm) / old.diameter_mm;
        if (std::abs(share) <= 0.5) return now.center_mm + share * now.diameter_mm;
    }
    return x_mm;
}

}  // namespace

Moves detail::moves_of(const Design& design, std::string_view key) {
    if (key == "spring.yield" || key == "blade.nail_nick") return Moves::nothing;
    if (key.starts_with("friction.")) return Moves::friction;
    if (design.frame.stated()) return Moves::all;
    return key.starts_with("spring.") ? Moves::spring : Moves::joint;
}

ElementReader::ElementReader(const Design& design, const Figures& figures)
    : design_(design), figures_(figures), stretches_(whole_stretches(design.spring)) {
    for (const Figure& figure : figures.all) {
        if (figure.worst) worst_mm_ = figure.worst->x_mm;
    }
    unchanged_ = (*this)(design, Moves::all);
}

Reading ElementReader::operator()(const Design& design, Moves moves) const {
    Reading reading = unchanged_;
    if (moves == Moves::nothing) return reading;
    if (moves == Moves::friction || moves == Moves::joint) {
        reading.elements = on_same_spring(design, moves);
        return reading;
    }
    reading.elements = on_other_spring(design, moves);
    if (worst_mm_) read_stress(reading, design.spring);
    return reading;
}

std::vector<Elements> ElementReader::on_other_spring(const Design& design, Moves moves) const {
    const bool same_tang = moves == Moves::spring;
    Joints joints(design, flexibility_from(stretches_, design), same_tang);
    std::vector<Elements> elements = unchanged_.elements;
    elements.resize(figures_.watched.size());
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const Watched& watched = figures_.watched[i];
        // A spring without its rear pin only turns, whatever it is like.
        if (same_tang && watched.kind == JointKind::unloaded) continue;
        elements[i] = read_elements(joints.like(watched), design.friction, watched.state,
                                    watched.joint.dial_mm);
    }
    return elements;
}

std::vector<Elements> ElementReader::on_same_spring(const Design& design, Moves moves) const {
    // What is read anew of a joint does not look at its spring.
    Joints joints(design, Flexibility{}, false);
    std::vector<Elements> elements = unchanged_.elements;
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const Watched& watched = figures_.watched[i];
        const Joint& joint = moves == Moves::friction ? watched.joint : joints.like(watched);
        elements[i] = read_elements_anew(elements[i], joint, design.friction, watched.state);
    }
    return elements;
}

void ElementReader::read_stress(Reading& reading, const Spring& spring) const {
    // Behind the middle pin places move with the rear pin, so the worst is found anew.
    if (*worst_mm_ < 0.0) {
        reading.stress_per_moment = make_stress_probe(spring).behind.stress_per_moment;
        return;
    }
    reading.worst_mm = carried(design_.spring, spring, *worst_mm_);
    reading.stress_per_moment = outer_stress_per_moment(section_at(spring, reading.worst_mm));
}

}  // namespace backspring
