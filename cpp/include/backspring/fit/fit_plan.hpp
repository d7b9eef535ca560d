#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/check/check.hpp"
#include "backspring/fit/fit_model.hpp"

namespace backspring {

/// What the dial showed.
struct Measured {
    FitState state = FitState::loaded;   ///< state of the knife
    std::optional<double> half_stop_mm;  ///< reading; none without a half-stop [mm]
    double closed_mm = 0.0;              ///< reading [mm]
};

/// Where the closed reading is brought down on a tang with a kick.
///
/// Grinding one of both moves the tip by several times what comes off, so a plan keeps it level
/// unless asked otherwise: that costs little steel, and a tip that stands out of the handle cannot
/// be got back in without a low reading.
enum class ClosedGrind {
    level,   ///< both, so that the tip stays where it is
    least,   ///< the closed face or the kick, whichever takes less steel
    closed,  ///< the closed face near the pivot: raises the tip
    kick,    ///< the kick: drops the tip
};

/// Steel that may still come off each face; none: what the design allows.
///
/// Without a number the half-stop and closed faces may go down to 0.5 mm below the open face, the
/// kick down to the closed face, the open face until the preload is used up.
struct Material {
    std::optional<double> open_mm;       ///< [mm]
    std::optional<double> half_stop_mm;  ///< [mm]
    std::optional<double> closed_mm;     ///< [mm]
    std::optional<double> kick_mm;       ///< [mm]
};

/// How to plan.
struct PlanRules {
    double target_mm = 0.0254;      ///< loaded reading wanted, -1 to 1 [mm]
    double repeatability_mm = 0.0;  ///< standard deviation of one reading, 0 to 0.2 [mm]
    double least_off_mm = 0.0;      ///< less than that stays on a face, 0 to 0.2 [mm]
    double reserve = 1.0 / 3.0;     ///< share of what is to go that a pass leaves, 0 to 0.8
    ClosedGrind closed_by = ClosedGrind::level;  ///< where the closed reading is brought down
    std::optional<double> tip_mm;                ///< move of the tip wanted, + out, 0 level [mm]
    double tip_allowance_mm = 0.5;               ///< a plan that moves the tip by more says so [mm]
    Material material;                           ///< steel that may come off
    bool spares_open = false;  ///< but for a low reading nothing comes off the open face, unless
                               ///< material names it
};

/// One face ground once.
struct FitStep {
    std::string blade;                          ///< whose face
    int step = 0;                               ///< from 1
    int pass_number = 0;                        ///< measure again after each pass
    TangFace face = TangFace::open;             ///< which face
    double remove_mm = 0.0;                     ///< depth to take off [mm]
    std::optional<double> half_stop_mm;         ///< expected after it, state as measured [mm]
    double closed_mm = 0.0;                     ///< expected after it, state as measured [mm]
    std::optional<double> half_stop_loaded_mm;  ///< pins in, where it is lowest [mm]
    double closed_loaded_mm = 0.0;              ///< pins in, where it is lowest [mm]
    std::optional<double> tip_mm;  ///< blade's tip against where it stands now, + out [mm]
};

/// What to take off which face, in what order.
struct FitPlan {
    std::vector<FitStep> steps;                 ///< none when the fit is done
    int passes = 0;                             ///< passes in the plan
    double aim_mm = 0.0;                        ///< loaded reading the last pass aims at [mm]
    std::optional<double> half_stop_loaded_mm;  ///< pins in, lowest, as it stands [mm]
    double closed_loaded_mm = 0.0;              ///< pins in, lowest, as it stands [mm]
    FaceDepths removed;                         ///< in all
    FaceDepths left_standing;                   ///< too little to be ordered off
    std::optional<double> tip_mm;               ///< move of the tip in all, + out [mm]
    std::optional<TangFace> tip_runs_out;       ///< face for which the tip is not as wanted
    std::optional<FaceDepths> level_removed;    ///< in all for a tip kept level, where the plan
                                                ///< moves it by more than the allowance unasked
    Design now;                                 ///< the knife as it stands, by the readings
    Design done;                                ///< the knife when the plan is carried out
    std::vector<Notice> notices;                ///< what to know before starting
};

/// The design with its half-stop face and closed side moved so that it reads as measured.
///
/// A kick moves with the closed face.
///
/// @throws InvalidInput   with every broken rule
/// @throws NoConvergence  no tang of this design reads so
[[nodiscard]] Design as_measured(const Design& design,
                                 const Measured& measured,
                                 const FitUnknowns& unknowns = {});

/// Plans the least removal that brings a knife to its target, proud rather than low.
///
/// The aim is a hair above the target: 0.001 mm, or three quarters of the repeatability. A pass
/// takes off all but the reserve; a face with 0.0254 mm or less to go is taken to the aim in one,
/// if ten repeatabilities are less than that. Done: within 0.0015 mm above the target, or within
/// one repeatability. No depth is planned to bring a reading nearer than that.
///
/// A share of less than rules.least_off_mm stays on its face until it is enough with what a later
/// pass takes; but for the open face, which what else goes counts on. What comes off is never put
/// back, so a face left so stands proud.
///
/// With a kick the tip stays where it is, or moves as wanted, to about 0.01 mm at the end of the
/// plan; between the steps of a pass it moves up and down. Where a face runs out the readings
/// count and the tip comes as near as it can. The open face is ground for the tip only as far as
/// rules.material says it may.
///
/// A reading that is low can only be met by lowering the open face, which raises the others and
/// costs preload; a notice says what that does.
///
/// Of several blades this plans the own one, so that its readings end at the target in that case of
/// the others where they are lowest, and are no lower in any.
///
/// @param now    as it stands, from as_measured() or a fitting log
/// @param state  state that the dial's readings are expected in
/// @throws InvalidInput   with every broken rule
/// @throws NoConvergence  a face's steel runs out before the target is met: says which
[[nodiscard]] FitPlan fit_plan(const Design& now,
                               FitState state,
                               const PlanRules& rules = {},
                               const FitUnknowns& unknowns = {});

/// Plans from measured readings: fit_plan() of as_measured().
[[nodiscard]] FitPlan fit_plan(const Design& design,
                               const Measured& measured,
                               const PlanRules& rules = {},
                               const FitUnknowns& unknowns = {});

}  // namespace backspring
