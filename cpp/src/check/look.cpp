#include "backspring/check/look.hpp"

namespace backspring {

Action make_action(const Design& design) {
    if (std::vector<Fault> broken = faults(design); !broken.empty()) {
        throw InvalidInput(std::move(broken));
    }
    return {
        .joint = make_joint(design.spring, design.own().pad, design.own().tang, design.own().fit),
        .probe = make_stress_probe(design.spring),
        .friction = design.friction};
}

Contact contact_at(const Design& design, double blade_angle_deg) {
    return contact_at(make_action(design).joint, blade_angle_deg);
}

}  // namespace backspring
