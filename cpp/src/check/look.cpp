#include "backspring/check/look.hpp"

#include "backspring/core/require.hpp"
#include "backspring/design/joint_of.hpp"

namespace backspring {

Action make_action(const Design& design) {
    if (std::vector<Fault> broken = faults(design); !broken.empty()) {
        throw InvalidInput(std::move(broken));
    }
    return make_action(design.spring, make_joint(design), make_stress_probe(design),
                       design.friction);
}

Contact contact_at(const Design& design, double blade_angle_deg) {
    return contact_at(make_action(design).joint, blade_angle_deg);
}

std::vector<BladeContact> contacts_at(const Design& design,
                                      const std::vector<double>& blade_angles_deg) {
    Requirements rules;
    const std::size_t count = design.blades.size();
    rules.require(blade_angles_deg.size() == count, "blade_angles_deg", [&] {
        return "must be one for each blade, " + std::to_string(count) + ", got " +
               std::to_string(blade_angles_deg.size());
    });
    rules.throw_if_any();
    Joint joint = make_action(design).joint;
    const std::vector<std::size_t> places = blades_in_joint(design);
    for (std::size_t i = 1; i < count; ++i) {
        const bool here = i <= joint.beside.size();
        Neighbour& neighbour =
            here ? joint.beside[i - 1] : joint.far_end->blades[i - 1 - joint.beside.size()];
        neighbour.standing = {blade_angles_deg[places[i]], 0.0};
    }
    const Contact own = contact_at(joint, blade_angles_deg[0]);
    std::vector<BladeContact> found(count);
    const std::vector<Contact> blades = blades_of(joint, own);
    for (std::size_t i = 0; i < count; ++i) {
        const Blade& blade = design.blades[places[i]];
        const bool here = i <= joint.beside.size();
        const double dial = here ? blade.fit.dial_mm : -joint.far_end->span_mm - blade.fit.dial_mm;
        found[places[i]] = {blade.name, blades[i], back_mm(joint, own, dial)};
    }
    return found;
}

}  // namespace backspring
