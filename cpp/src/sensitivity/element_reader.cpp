#include "element_reader.hpp"

#include <array>
#include <cmath>

#include "backspring/design/joint_of.hpp"

namespace backspring {
namespace {

/// A design's joints, each made when first asked for.
class Joints {
  public:
    Joints(const Design& design, Flexibility flexibility)
        : design_(design), flexibility_(std::move(flexibility)) {}

    [[nodiscard]] const Joint& of(JointKind kind) {
        auto& joint = joints_[static_cast<std::size_t>(kind)];
        if (!joint) joint = make_joint(design_, kind, flexibility_);
        return *joint;
    }

  private:
    const Design& design_;
    Flexibility flexibility_;
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
    return key.starts_with("spring.") || design.frame.stated() ? Moves::spring : Moves::joint;
}

ElementReader::ElementReader(const Design& design, const Figures& figures)
    : design_(design), figures_(figures) {
    for (const Figure& figure : figures.all) {
        if (figure.worst) worst_mm_ = figure.worst->x_mm;
    }
    unchanged_ = (*this)(design, Moves::spring);
}

Reading ElementReader::operator()(const Design& design, Moves moves) const {
    Reading reading = unchanged_;
    if (moves == Moves::nothing) return reading;
    if (moves != Moves::spring) {
        reading.elements = on_same_spring(design, moves);
        return reading;
    }
    reading.elements = on_other_spring(design);
    if (worst_mm_) read_stress(reading, design.spring);
    return reading;
}

std::vector<Elements> ElementReader::on_other_spring(const Design& design) const {
    Joints joints(design, make_flexibility(design));
    std::vector<Elements> elements;
    for (const Watched& watched : figures_.watched) {
        elements.push_back(read_elements(joints.of(watched.kind), design.friction, watched.state,
                                         watched.joint.dial_mm));
    }
    return elements;
}

std::vector<Elements> ElementReader::on_same_spring(const Design& design, Moves moves) const {
    // What is read anew of a joint does not look at its spring.
    Joints joints(design, Flexibility{});
    std::vector<Elements> elements = unchanged_.elements;
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const Watched& watched = figures_.watched[i];
        const Joint& joint = moves == Moves::friction ? watched.joint : joints.of(watched.kind);
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
