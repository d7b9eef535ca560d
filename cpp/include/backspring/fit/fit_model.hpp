#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backspring/action/reading.hpp"
#include "backspring/design/design.hpp"

namespace backspring {

/// A face of the tang that is ground while fitting.
enum class TangFace {
    open,       ///< blade out: the datum of every reading
    half_stop,  ///< blade square to the handle
    closed,     ///< the closed face near the pivot; a kick's nose stays where it is
    kick,       ///< the nose of the kick
};

/// A face's name as design files spell it.
[[nodiscard]] std::string name_of(TangFace face);

/// Depth taken off each face of the tang.
struct FaceDepths {
    double open_mm = 0.0;       ///< off the open face [mm]
    double half_stop_mm = 0.0;  ///< off the half-stop face [mm]
    double closed_mm = 0.0;     ///< off the closed face near the pivot [mm]
    double kick_mm = 0.0;       ///< off the nose of the kick [mm]

    /// The depth of one face.
    [[nodiscard]] double of(TangFace face) const;
    double& of(TangFace face);
};

/// The design with some tang taken off; less than nothing puts it on.
///
/// The open face is ground so that the pad lies flat on it again, which takes the preload down by
/// the same depth. A kick that is ground down to the closed face is gone. A round end keeps its
/// radius, whichever face is ground; only a closed face put far beyond the drawing takes along an
/// end whose radius the design does not give.
///
/// @note  after the open face the blade opens depth/a_p further: 0.2 deg for 0.1 mm at 32 mm
[[nodiscard]] Design take_off(const Design& design, const FaceDepths& depths);
[[nodiscard]] Blade take_off(Blade blade, const FaceDepths& depths);

/// What a drawing cannot know about one knife on the bench.
struct FitUnknowns {
    double pad_tilt_rad = 0.0;   ///< of the pad on the open face, + gapes towards the rear [rad]
    double pivot_play_mm = 0.0;  ///< diametral clearance of pivot and bushing [mm]
    double extra_root_rad_per_nmm = 0.0;  ///< rotation at the root beyond the model's [rad/(N mm)]
    double loaded_offset_mm = 0.0;  ///< of every loaded reading, by what the model leaves out [mm]
};

/// Which state of the knife readings are taken in.
enum class FitState {
    loaded,    ///< both pins in, or on a fixture that holds the spring
    unloaded,  ///< rear pin out
};

/// The design as its own blade is read: other blades at its own end of the spring stand open, those
/// at the other end as they stand, which is closed where nothing else is said.
///
/// Whichever tang at one end is proudest holds the spring up there: beside a closed one that does,
/// a reading says nothing of this blade's faces.
[[nodiscard]] Design as_read(Design design);

/// The cases that the own blade's loaded readings are judged in: as_read() with the blades at the
/// other end in each of their positions, all closed first. A blade alone has one.
[[nodiscard]] std::vector<Design> reading_cases(const Design& design);

/// Both readings in both states.
struct FitReadings {
    Readings loaded;                         ///< both pins in, as_read()
    Readings unloaded;                       ///< rear pin out
    std::optional<double> closed_angle_deg;  ///< where the blade rests closed, loaded [deg]
};

/// Readings of a design as it stands, loaded and unloaded; none where the blade does not rest, or
/// the reading is impossible, see is_possible().
///
/// Tilt turns the free working face about the pivot's station. Root rotation adds to the spring's
/// own. Play: under load the pin is pressed to one side in every position alike; with the rear pin
/// out the hand holds the blade, and only the stop at open pushes it away from the spring, so that
/// both readings come out higher by half the play times dial/a_p.
///
/// @throws InvalidInput  with every broken rule of the design
/// @note  the model of play is common practice's picture of it, no source
[[nodiscard]] FitReadings fit_readings(const Design& design, const FitUnknowns& unknowns = {});

/// The loaded readings, each in that one of reading_cases() where it is lowest.
///
/// @throws InvalidInput  with every broken rule of the design
[[nodiscard]] Readings lowest_readings(const Design& design, const FitUnknowns& unknowns = {});

/// The readings of one state alone, as fit_readings() has them.
///
/// @throws InvalidInput  with every broken rule of the design
[[nodiscard]] Readings readings_in(FitState state,
                                   const Design& design,
                                   const FitUnknowns& unknowns = {});

/// Height of the blade's tip in the handle against blade angle 0, + out of it.
///
/// @returns  [mm]; nothing where the design does not tell the tip's place, see blade_tip()
[[nodiscard]] std::optional<double> tip_height_mm(const Design& design, double closed_angle_deg);

}  // namespace backspring
