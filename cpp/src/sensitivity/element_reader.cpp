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

    /// @param watched  of a design that differs a little
    [[nodiscard]] const Joint& like(const Watched& watched) {
        auto& joint = joints_[static_cast<std::size_t>(watched.kind)];
        if (!joint) joint = make_joint(design_, watched.kind, flexibility_);
        return *joint;
    }

  private:
    const Design& design_;
    Flexibility flexibility_;
    std::array<std::optional<Joint>, 3> joints_;
};

/// Integrals up to the dial, which most contacts share.
class DialIntegrals {
  public:
    explicit DialIntegrals(const Flexibility& flexibility) : flexibility_(flexibility) {}

    [[nodiscard]] const BendingIntegrals& operator()(double dial_mm) {
        if (dial_mm != dial_mm_) kept_ = bending_integrals(flexibility_, dial_mm);
        dial_mm_ = dial_mm;
        return kept_;
    }

  private:
    const Flexibility& flexibility_;
    std::optional<double> dial_mm_;
    BendingIntegrals kept_;
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
    unchanged_.elements = all_anew(design);
    if (worst_mm_) read_stress(unchanged_, design.spring);
}

Reading ElementReader::operator()(const Design& design, Moves moves) const {
    Reading reading = unchanged_;
    switch (moves) {
        case Moves::nothing:
            break;
        case Moves::friction:
            for (Elements& each : reading.elements) read_friction(each, design.friction);
            break;
        case Moves::joint:
            read_other_tang(reading.elements, design);
            break;
        case Moves::spring:
            read_other_spring(reading.elements, design);
            break;
        case Moves::all:
            reading.elements = all_anew(design);
            break;
    }
    const bool other_spring = moves == Moves::spring || moves == Moves::all;
    if (other_spring && worst_mm_) read_stress(reading, design.spring);
    return reading;
}

std::vector<Elements> ElementReader::all_anew(const Design& design) const {
    Joints joints(design, flexibility_from(stretches_, design));
    std::vector<Elements> elements;
    for (const Watched& watched : figures_.watched) {
        elements.push_back(read_elements(joints.like(watched), design.friction, watched.state,
                                         watched.joint.dial_mm));
    }
    return elements;
}

void ElementReader::read_other_spring(std::vector<Elements>& elements, const Design& design) const {
    const Flexibility flexibility = flexibility_from(stretches_, design);
    DialIntegrals upto(flexibility);
    // All that tells the tang of another spring is how the free face stands over it.
    const Joint fitted = backspring::on_other_spring(Joint{}, Flexibility{}, design.spring,
                                                     design.own().tang, design.own().fit);
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const Watched& watched = figures_.watched[i];
        // A spring without its rear pin only turns, whatever it is like.
        if (watched.kind == JointKind::unloaded) continue;
        read_spring(elements[i], flexibility, watched.state, upto(watched.joint.dial_mm));
        elements[i][element::face] = fitted.face_mm;
        elements[i][element::face_slope] = fitted.face_slope;
    }
}

void ElementReader::read_other_tang(std::vector<Elements>& elements, const Design& design) const {
    const Blade& own = design.own();
    // What is read of it does not look at its spring.
    Joint joint = with_clearances(make_joint(Flexibility{}, own.pad, own.tang, own.fit),
                                  design.spring, own.tang);
    const double loaded_mm = joint.face_mm, loaded_slope = joint.face_slope;
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const Watched& watched = figures_.watched[i];
        const bool loaded = watched.kind != JointKind::unloaded;
        // Without its rear pin the spring leans on the open tang as it ever does.
        joint.face_mm = loaded ? loaded_mm : joint.open_mm;
        joint.face_slope = loaded ? loaded_slope : watched.joint.face_slope;
        const bool at_pivot = watched.kind == JointKind::stiffness;
        read_tang(elements[i], joint, watched.state, at_pivot ? joint.pivot_mm : joint.dial_mm);
    }
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
