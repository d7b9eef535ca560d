#pragma once

#include <optional>
#include <string>

#include "backspring/action/fit.hpp"
#include "backspring/action/snap.hpp"
#include "backspring/spring/spring.hpp"
#include "backspring/tang/tang.hpp"

namespace backspring {

/// The end of the spring that a blade bears on.
enum class End {
    front,  ///< ahead of the middle pin
    rear,   ///< behind the pins
};

/// Where a blade stands while another one is turned.
enum class Stand {
    closed,     ///< at its closed rest
    half_stop,  ///< at its half-stop
    open,       ///< against its stop
};

/// A blade and how it is fitted to the spring.
///
/// Stations are its own: from the pin next to it, + towards its own pivot.
struct Blade {
    std::string name = "main";           ///< tells it from the others
    End end = End::front;                ///< of the spring
    Pad pad;                             ///< face of the spring that its tang can touch
    Tang tang;                           ///< faces and corners
    Fit fit;                             ///< preload and dial
    BladeBody blade;                     ///< for pull and snap
    std::optional<double> hardness_hrc;  ///< of the tang, Rockwell C
    bool stainless = false;              ///< whether the blade's steel is known to be stainless
    Stand stands = Stand::closed;        ///< while another blade is turned
};

}  // namespace backspring
