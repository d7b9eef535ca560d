"""
The compiled core: mm, N, MPa, degrees; same names as in C++.
"""
from __future__ import annotations
from backspring.errors import Error
from backspring.errors import InvalidInput
from backspring.errors import NoConvergence
from backspring.errors import OutOfRange
import collections.abc
import enum
import numpy
import numpy.typing
import typing
__all__: list[str] = ['Arc', 'Band', 'BendingIntegrals', 'Blade', 'Check', 'Contact', 'Design', 'Elastic', 'Error', 'Fault', 'FibreStress', 'Fit', 'Flexibility', 'Friction', 'Hole', 'InvalidInput', 'Kick', 'Load', 'NoConvergence', 'Notice', 'OutOfRange', 'Outline', 'Pad', 'PeakStress', 'PinForces', 'Position', 'Section', 'Spring', 'SpringAlong', 'Station', 'Strength', 'StressProbe', 'Stroke', 'StrokeReport', 'Support', 'SupportKind', 'Sweep', 'Tang', 'TargetResult', 'Targets', 'Touch', 'Travel', 'angular_speed_rad_per_s', 'bending_integrals', 'bending_moment_nmm', 'check', 'contact_at', 'deflection_per_force', 'faults', 'fibre_stress', 'friction_torque_nmm', 'inertia_kg_mm2', 'make_flexibility', 'make_outline', 'make_section', 'make_stress_probe', 'outer_stress_per_moment', 'peak_stress', 'pin_forces', 'rear_reach_mm', 'round_end_radius_mm', 'section_at', 'shear_modulus_mpa', 'slope_per_force', 'spring_along', 'strength_from_hardness', 'sweep', 'swept_radius_mm', 'tensile_astm_mpa', 'tensile_din_mpa', 'tensile_mpa', 'thickness_mm', 'vickers_hv']
class Fault:
    """
    One broken rule: which key, and what is wrong with its value.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, str]:
        ...
    def __init__(self, *, key: str = '', message: str = '') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, str]) -> None:
        ...
    @property
    def key(self) -> str:
        """
        name of the value in a design file, as "spring.width"
        """
    @property
    def message(self) -> str:
        """
        rule and value, as "must be greater than 0 mm, got -2.3 mm"
        """
class Band:
    """
    A number that is only known within limits.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, value: typing.SupportsFloat | typing.SupportsIndex = 0.0, low: typing.SupportsFloat | typing.SupportsIndex = 0.0, high: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def high(self) -> float:
        """
        upper limit
        """
    @property
    def low(self) -> float:
        """
        lower limit
        """
    @property
    def value(self) -> float:
        """
        most likely value
        """
class Elastic:
    """
    What the steel does below its elastic limit.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, youngs_modulus_mpa: typing.SupportsFloat | typing.SupportsIndex = 205000.0, poisson: typing.SupportsFloat | typing.SupportsIndex = 0.29) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def poisson(self) -> float:
        """
        Poisson's ratio
        """
    @property
    def youngs_modulus_mpa(self) -> float:
        """
        Young's modulus [MPa]
        """
class Strength:
    """
    What the steel carries at its temper.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Band, Band]:
        ...
    def __init__(self, *, yield_mpa: Band = ..., tensile_mpa: Band = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Band, Band]) -> None:
        ...
    @property
    def tensile_mpa(self) -> Band:
        """
        tensile strength [MPa]
        """
    @property
    def yield_mpa(self) -> Band:
        """
        0.2 % proof stress [MPa]
        """
class SupportKind(enum.Enum):
    """
    How the spring is held at and behind the middle pin.
    """
    clamped = ...
    root_stiffness = ...
    two_pins = ...
class Station:
    """
    Thickness at one station.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    @typing.overload
    def __init__(self, *, x_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, thickness_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    @typing.overload
    def __init__(self, pair: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def thickness_mm(self) -> float:
        """
        in the plane that bends [mm]
        """
    @property
    def x_mm(self) -> float:
        """
        along the spring from the middle pin, + towards the pivot [mm]
        """
class Hole:
    """
    A round pin hole across the spring.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, center_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, diameter_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, offset_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def center_mm(self) -> float:
        """
        station of the centre [mm]
        """
    @property
    def diameter_mm(self) -> float:
        """
        [mm]
        """
    @property
    def offset_mm(self) -> float:
        """
        centre from the mid-line, + towards the back [mm]
        """
class Support:
    """
    The root of the spring.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[SupportKind, float, float]:
        ...
    def __init__(self, *, kind: SupportKind = ..., rear_pin_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, root_stiffness_nmm_per_rad: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[SupportKind, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def kind(self) -> SupportKind:
        """
        how it is held
        """
    @property
    def rear_pin_mm(self) -> float:
        """
        middle pin to rear pin, with two pins [mm]
        """
    @property
    def root_stiffness_nmm_per_rad(self) -> float:
        """
        with a root stiffness [N mm/rad]
        """
class Pad:
    """
    The face of the spring that can touch the tang.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, start_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, end_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def end_mm(self) -> float:
        """
        front edge, the spring's end [mm]
        """
    @property
    def start_mm(self) -> float:
        """
        rear edge [mm]
        """
class Spring:
    """
    The spring as a beam: shape, hold and stiffness of its steel.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[list[Station], float, Support, list[Hole], Pad, Elastic]:
        ...
    def __init__(self, *, thickness: collections.abc.Sequence[Station] = ..., width_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, support: Support = ..., holes: collections.abc.Sequence[Hole] = ..., pad: Pad = ..., elastic: Elastic = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[Station], typing.SupportsFloat | typing.SupportsIndex, Support, collections.abc.Sequence[Hole], Pad, Elastic]) -> None:
        ...
    @property
    def elastic(self) -> Elastic:
        """
        Young's modulus and Poisson's ratio
        """
    @property
    def holes(self) -> list[Hole]:
        """
        pin holes
        """
    @property
    def pad(self) -> Pad:
        """
        face that can touch the tang
        """
    @property
    def support(self) -> Support:
        """
        how it is held
        """
    @property
    def thickness(self) -> list[Station]:
        """
        thickness by station
        """
    @property
    def width_mm(self) -> float:
        """
        across the liners, constant [mm]
        """
class Section:
    """
    Net section across the spring, about its own centroid.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float]:
        ...
    def __init__(self, *, area_mm2: typing.SupportsFloat | typing.SupportsIndex = 0.0, inertia_mm4: typing.SupportsFloat | typing.SupportsIndex = 0.0, back_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, belly_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def area_mm2(self) -> float:
        """
        [mm2]
        """
    @property
    def back_mm(self) -> float:
        """
        centroid to the back's outer fibre [mm]
        """
    @property
    def belly_mm(self) -> float:
        """
        centroid to the belly's outer fibre [mm]
        """
    @property
    def inertia_mm4(self) -> float:
        """
        second moment of area [mm4]
        """
class BendingIntegrals:
    """
    Integrals from the middle pin to a station, the whole memory of the shape that bending needs.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float]:
        ...
    def __init__(self, *, a0: typing.SupportsFloat | typing.SupportsIndex = 0.0, a1: typing.SupportsFloat | typing.SupportsIndex = 0.0, a2: typing.SupportsFloat | typing.SupportsIndex = 0.0, shear: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def a0(self) -> float:
        """
        int ds/(E I) [1/(N mm)]
        """
    @property
    def a1(self) -> float:
        """
        int s ds/(E I) [1/N]
        """
    @property
    def a2(self) -> float:
        """
        int s^2 ds/(E I) [mm/N]
        """
    @property
    def shear(self) -> float:
        """
        int ds/(kappa G A) [mm/N]
        """
class Flexibility:
    """
    The spring's deflection per force, reduced so that every question costs the same few operations.
    """
    @property
    def root_rotation_rad_per_nmm(self) -> float:
        """
        R, rotation at the middle pin per moment
        """
class Load:
    """
    A force of the tang on the spring.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, x_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, force_n: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def force_n(self) -> float:
        """
        outward [N]
        """
    @property
    def x_mm(self) -> float:
        """
        station [mm], ahead of the middle pin
        """
class PinForces:
    """
    Forces of the pins on the spring.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, middle_n: typing.SupportsFloat | typing.SupportsIndex = 0.0, rear_n: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def middle_n(self) -> float:
        """
        inward, towards the pivot [N]
        """
    @property
    def rear_n(self) -> float:
        """
        outward [N]
        """
class FibreStress:
    """
    Outer-fibre stress at one station, tension positive.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, back_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, belly_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def back_mpa(self) -> float:
        """
        on the back [MPa]
        """
    @property
    def belly_mpa(self) -> float:
        """
        on the belly [MPa]
        """
class PeakStress:
    """
    Largest bending stress and where it is.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, stress_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, station_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def station_mm(self) -> float:
        """
        [mm]
        """
    @property
    def stress_mpa(self) -> float:
        """
        magnitude in the outer fibre [MPa]
        """
class StressProbe:
    """
    Where peak stress can lie, found once for a spring.
    """
class Kick:
    """
    The nose on the closed side that sets how deep the blade sits.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, distance_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, height_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, radius_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def distance_mm(self) -> float:
        """
        nose ahead of the pivot, blade open [mm]
        """
    @property
    def height_mm(self) -> float:
        """
        nose beyond the closed face [mm]
        """
    @property
    def radius_mm(self) -> float:
        """
        of the nose [mm]
        """
class Tang:
    """
    The blade's tang: pivot centre to each working face, and its corners.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float | None, float, float, float, float, float | None, Kick | None]:
        ...
    def __init__(self, *, pivot_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, open_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, half_stop_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, closed_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, corner_open_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, corner_closed_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, front_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, round_end_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, kick: Kick | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, Kick | None]) -> None:
        ...
    @property
    def closed_mm(self) -> float:
        """
        pivot to the closed face [mm]
        """
    @property
    def corner_closed_mm(self) -> float:
        """
        radius of the corner behind the closed face [mm]
        """
    @property
    def corner_open_mm(self) -> float:
        """
        radius of the corner behind the open face [mm]
        """
    @property
    def front_mm(self) -> float:
        """
        open face's reach ahead of the pivot [mm]
        """
    @property
    def half_stop_mm(self) -> float | None:
        """
        pivot to the half-stop face; none: round end [mm]
        """
    @property
    def kick(self) -> Kick | None:
        """
        nose on the closed side
        """
    @property
    def open_mm(self) -> float:
        """
        pivot to the open face [mm]
        """
    @property
    def pivot_mm(self) -> float:
        """
        middle pin to pivot, along the spring [mm]
        """
    @property
    def round_end_mm(self) -> float | None:
        """
        pivot to a round end; none: from the corners [mm]
        """
class Arc:
    """
    An arc of the tang's outline; radius 0 is a sharp edge.

    Coordinates are fixed to the blade, origin at the pivot; open, u runs along the spring and w
    outward. An arc reaches over all directions of its outward normal between two angles.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float, float]:
        ...
    def __init__(self, *, u_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, w_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, radius_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, from_rad: typing.SupportsFloat | typing.SupportsIndex = 0.0, to_rad: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def from_rad(self) -> float:
        """
        first normal direction, from +u towards +w [rad]
        """
    @property
    def radius_mm(self) -> float:
        """
        [mm]
        """
    @property
    def to_rad(self) -> float:
        """
        last normal direction [rad]
        """
    @property
    def u_mm(self) -> float:
        """
        centre along [mm]
        """
    @property
    def w_mm(self) -> float:
        """
        centre outward [mm]
        """
class Outline:
    """
    The tang's outline: arcs in turn with flats between their ends, and a kick standing proud of it.

    The body is convex, so each direction of the normal belongs to one arc or one flat.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[list[Arc], Arc | None]:
        ...
    def __init__(self, *, body: collections.abc.Sequence[Arc] = ..., kick: Arc | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[Arc], Arc | None]) -> None:
        ...
    @property
    def body(self) -> list[Arc]:
        """
        from the open face's front edge round the rear to the closed face's
        """
    @property
    def kick(self) -> Arc | None:
        """
        nose of the kick
        """
class Fit:
    """
    How spring and tang are fitted to each other.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, preload_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, dial_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def dial_mm(self) -> float:
        """
        station the indicator touches [mm]
        """
    @property
    def preload_mm(self) -> float:
        """
        interference at the pivot station with both pins in [mm]
        """
class Blade:
    """
    The blade as a body that turns; pull and snap need what they name.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float | None, float | None, float | None, float | None, float | None, float | None]:
        ...
    def __init__(self, *, nail_nick_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, inertia_kg_mm2: typing.SupportsFloat | typing.SupportsIndex | None = None, mass_g: typing.SupportsFloat | typing.SupportsIndex | None = None, length_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, height_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, edge_clearance_mm: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def edge_clearance_mm(self) -> float | None:
        """
        edge to the spring's belly when closed [mm]
        """
    @property
    def height_mm(self) -> float | None:
        """
        [mm]
        """
    @property
    def inertia_kg_mm2(self) -> float | None:
        """
        about the pivot [kg mm2]
        """
    @property
    def length_mm(self) -> float | None:
        """
        tang included [mm]
        """
    @property
    def mass_g(self) -> float | None:
        """
        [g]
        """
    @property
    def nail_nick_mm(self) -> float | None:
        """
        pivot to nail nick [mm]
        """
class Friction:
    """
    Coulomb friction where the blade turns.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, spring: typing.SupportsFloat | typing.SupportsIndex = 0.0, pivot: typing.SupportsFloat | typing.SupportsIndex = 0.0, pivot_pin_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def pivot(self) -> float:
        """
        coefficient, blade on pivot pin
        """
    @property
    def pivot_pin_mm(self) -> float:
        """
        diameter of the pivot pin [mm]
        """
    @property
    def spring(self) -> float:
        """
        coefficient, tang on spring
        """
class Touch:
    """
    One place where the tang bears on the spring.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float]:
        ...
    def __init__(self, *, x_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, height_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, slope: typing.SupportsFloat | typing.SupportsIndex = 0.0, force_n: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def force_n(self) -> float:
        """
        on the spring, outward [N]
        """
    @property
    def height_mm(self) -> float:
        """
        above the pivot, outward [mm]
        """
    @property
    def slope(self) -> float:
        """
        of the face the force stands square to
        """
    @property
    def x_mm(self) -> float:
        """
        station [mm]
        """
class Contact:
    """
    The joint at one blade angle.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, typing.Annotated[list[Touch], "FixedSize(2)"], int, float, float, float]:
        ...
    def __init__(self, *, blade_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, touches: typing.Annotated[collections.abc.Sequence[Touch], "FixedSize(2)"] = ..., count: typing.SupportsInt | typing.SupportsIndex = 0, force_n: typing.SupportsFloat | typing.SupportsIndex = 0.0, energy_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0, torque_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.Annotated[collections.abc.Sequence[Touch], "FixedSize(2)"], typing.SupportsInt | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def blade_angle_deg(self) -> float:
        """
        [deg]
        """
    @property
    def count(self) -> int:
        """
        0 lifted off, 1, or 2 with a kick
        """
    @property
    def energy_nmm(self) -> float:
        """
        strain energy [N mm]
        """
    @property
    def force_n(self) -> float:
        """
        total on the spring [N]
        """
    @property
    def torque_nmm(self) -> float:
        """
        dU/dtheta, + resists opening [N mm]
        """
    @property
    def touches(self) -> typing.Annotated[list[Touch], "FixedSize(2)"]:
        """
        the first `count` are real
        """
class Sweep:
    """
    A sweep as columns, one entry a step.
    """
    def __getstate__(self) -> tuple[typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]]:
        ...
    def __setstate__(self, arg0: tuple[typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"]]) -> None:
        ...
    @property
    def blade_angle_deg(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        0 closed, 180 open [deg]
        """
    @property
    def closing_torque_nmm(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        left when closing; same sign, + resists opening [N mm]
        """
    @property
    def energy_mj(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        strain energy [mJ]
        """
    @property
    def force_n(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        of the tang on the spring [N]
        """
    @property
    def opening_torque_nmm(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        to open against, friction included [N mm]
        """
    @property
    def peak_stress_mpa(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        worst along the spring, net section [MPa]
        """
    @property
    def peak_stress_station_mm(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        where that is [mm]
        """
class Targets:
    """
    What a check judges a design against; what is left out is not judged.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float | None, float | None, float | None, float | None]:
        ...
    def __init__(self, *, pull_low_n: typing.SupportsFloat | typing.SupportsIndex | None = None, pull_high_n: typing.SupportsFloat | typing.SupportsIndex | None = None, yield_margin: typing.SupportsFloat | typing.SupportsIndex | None = None, reading_mm: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def pull_high_n(self) -> float | None:
        """
        greatest peak pull, opening [N]
        """
    @property
    def pull_low_n(self) -> float | None:
        """
        least peak pull, opening [N]
        """
    @property
    def reading_mm(self) -> float | None:
        """
        largest distance from flush, loaded [mm]
        """
    @property
    def yield_margin(self) -> float | None:
        """
        least yield stress over worst stress of the travel
        """
class Design:
    """
    A slip joint on paper: the blade's tang, the spring, and how they are fitted.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Spring, Strength, Tang, Fit, Blade, Friction, Targets]:
        ...
    def __init__(self, *, spring: Spring = ..., strength: Strength = ..., tang: Tang = ..., fit: Fit = ..., blade: Blade = ..., friction: Friction = ..., targets: Targets = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Spring, Strength, Tang, Fit, Blade, Friction, Targets]) -> None:
        ...
    @property
    def blade(self) -> Blade:
        """
        for pull and snap
        """
    @property
    def fit(self) -> Fit:
        """
        preload and dial
        """
    @property
    def friction(self) -> Friction:
        """
        at spring and pivot
        """
    @property
    def spring(self) -> Spring:
        """
        the beam
        """
    @property
    def strength(self) -> Strength:
        """
        of the spring's steel at its temper
        """
    @property
    def tang(self) -> Tang:
        """
        faces and corners
        """
    @property
    def targets(self) -> Targets:
        """
        what to judge against
        """
class Position:
    """
    The joint in one position.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, float, float, list[float], float, float, float, float, float | None, float | None, float, float | None]:
        ...
    def __init__(self, *, name: str = '', blade_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, force_n: typing.SupportsFloat | typing.SupportsIndex = 0.0, contacts_mm: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex] = ..., energy_mj: typing.SupportsFloat | typing.SupportsIndex = 0.0, torque_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_stress_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_stress_station_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, yield_margin: typing.SupportsFloat | typing.SupportsIndex | None = None, yield_margin_low: typing.SupportsFloat | typing.SupportsIndex | None = None, reading_loaded_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, reading_unloaded_mm: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex], typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def blade_angle_deg(self) -> float:
        """
        where the blade rests [deg]
        """
    @property
    def contacts_mm(self) -> list[float]:
        """
        places it bears, from the pivot, + ahead [mm]
        """
    @property
    def energy_mj(self) -> float:
        """
        strain energy [mJ]
        """
    @property
    def force_n(self) -> float:
        """
        of the tang on the spring [N]
        """
    @property
    def name(self) -> str:
        """
        "open", "half_stop" or "closed"
        """
    @property
    def peak_stress_mpa(self) -> float:
        """
        worst along the spring [MPa]
        """
    @property
    def peak_stress_station_mm(self) -> float:
        """
        where [mm]
        """
    @property
    def reading_loaded_mm(self) -> float:
        """
        pins in, relative to open, + proud [mm]
        """
    @property
    def reading_unloaded_mm(self) -> float | None:
        """
        rear pin out; none if it does not rest [mm]
        """
    @property
    def torque_nmm(self) -> float:
        """
        + resists opening; 0 where free to seat [N mm]
        """
    @property
    def yield_margin(self) -> float | None:
        """
        yield over peak stress; none without stress
        """
    @property
    def yield_margin_low(self) -> float | None:
        """
        with the lower limit of the yield stress
        """
class Stroke:
    """
    The way from one position to the next, opening.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float, float, float, float, float, float, float, float, float]:
        ...
    def __init__(self, *, from_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, to_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, start_torque_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_torque_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_torque_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, crest_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, energy_up_mj: typing.SupportsFloat | typing.SupportsIndex = 0.0, energy_released_mj: typing.SupportsFloat | typing.SupportsIndex = 0.0, snap_energy_mj: typing.SupportsFloat | typing.SupportsIndex = 0.0, closing_peak_torque_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0, closing_peak_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, closing_start_torque_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def closing_peak_angle_deg(self) -> float:
        """
        [deg]
        """
    @property
    def closing_peak_torque_nmm(self) -> float:
        """
        largest against closing, friction included [N mm]
        """
    @property
    def closing_start_torque_nmm(self) -> float:
        """
        to break away from the stroke's end, closing [N mm]
        """
    @property
    def crest_angle_deg(self) -> float:
        """
        torque changes sign; beyond it the blade snaps [deg]
        """
    @property
    def energy_released_mj(self) -> float:
        """
        strain energy, crest to the next rest [mJ]
        """
    @property
    def energy_up_mj(self) -> float:
        """
        strain energy, rest to crest; closing gives it back [mJ]
        """
    @property
    def from_deg(self) -> float:
        """
        rest it starts from [deg]
        """
    @property
    def peak_torque_angle_deg(self) -> float:
        """
        [deg]
        """
    @property
    def peak_torque_nmm(self) -> float:
        """
        largest against opening, friction included [N mm]
        """
    @property
    def snap_energy_mj(self) -> float:
        """
        released less friction, from where it runs away [mJ]
        """
    @property
    def start_torque_nmm(self) -> float:
        """
        to break away from the rest [N mm]
        """
    @property
    def to_deg(self) -> float:
        """
        rest it ends in [deg]
        """
class StrokeReport:
    """
    The way between two positions as the hand feels it.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, str, Stroke, float | None, float | None, float | None, float | None, float | None, float | None]:
        ...
    def __init__(self, *, from_position: str = '', to_position: str = '', stroke: Stroke = ..., start_pull_n: typing.SupportsFloat | typing.SupportsIndex | None = None, peak_pull_n: typing.SupportsFloat | typing.SupportsIndex | None = None, closing_start_pull_n: typing.SupportsFloat | typing.SupportsIndex | None = None, closing_peak_pull_n: typing.SupportsFloat | typing.SupportsIndex | None = None, snap_speed_rad_per_s: typing.SupportsFloat | typing.SupportsIndex | None = None, tip_speed_m_per_s: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, str, Stroke, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def closing_peak_angle_deg(self) -> float:
        """
        [deg]
        """
    @property
    def closing_peak_pull_n(self) -> float | None:
        """
        largest, closing [N]
        """
    @property
    def closing_peak_torque_nmm(self) -> float:
        """
        largest against closing, friction included [N mm]
        """
    @property
    def closing_start_pull_n(self) -> float | None:
        """
        to break away, closing [N]
        """
    @property
    def closing_start_torque_nmm(self) -> float:
        """
        to break away from the stroke's end, closing [N mm]
        """
    @property
    def crest_angle_deg(self) -> float:
        """
        torque changes sign; beyond it the blade snaps [deg]
        """
    @property
    def energy_released_mj(self) -> float:
        """
        strain energy, crest to the next rest [mJ]
        """
    @property
    def energy_up_mj(self) -> float:
        """
        strain energy, rest to crest; closing gives it back [mJ]
        """
    @property
    def from_deg(self) -> float:
        """
        rest it starts from [deg]
        """
    @property
    def from_position(self) -> str:
        """
        position it starts from
        """
    @property
    def peak_pull_n(self) -> float | None:
        """
        largest, opening [N]
        """
    @property
    def peak_torque_angle_deg(self) -> float:
        """
        [deg]
        """
    @property
    def peak_torque_nmm(self) -> float:
        """
        largest against opening, friction included [N mm]
        """
    @property
    def snap_energy_mj(self) -> float:
        """
        released less friction, from where it runs away [mJ]
        """
    @property
    def snap_speed_rad_per_s(self) -> float | None:
        """
        blade speed as it comes home [rad/s]
        """
    @property
    def start_pull_n(self) -> float | None:
        """
        to break away, at the nail nick [N]
        """
    @property
    def start_torque_nmm(self) -> float:
        """
        to break away from the rest [N mm]
        """
    @property
    def stroke(self) -> Stroke:
        """
        torque, crest and energy
        """
    @property
    def tip_speed_m_per_s(self) -> float | None:
        """
        of the blade's tip [m/s]
        """
    @property
    def to_deg(self) -> float:
        """
        rest it ends in [deg]
        """
    @property
    def to_position(self) -> str:
        """
        position it ends in
        """
class Travel:
    """
    The worst of the whole travel from closed to open.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float, float, float | None, float | None, float | None]:
        ...
    def __init__(self, *, peak_force_n: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_force_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_stress_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_stress_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_stress_station_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, yield_margin: typing.SupportsFloat | typing.SupportsIndex | None = None, yield_margin_low: typing.SupportsFloat | typing.SupportsIndex | None = None, yield_margin_high: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def peak_force_angle_deg(self) -> float:
        """
        [deg]
        """
    @property
    def peak_force_n(self) -> float:
        """
        largest force on the spring [N]
        """
    @property
    def peak_stress_angle_deg(self) -> float:
        """
        [deg]
        """
    @property
    def peak_stress_mpa(self) -> float:
        """
        largest bending stress, net section [MPa]
        """
    @property
    def peak_stress_station_mm(self) -> float:
        """
        [mm]
        """
    @property
    def yield_margin(self) -> float | None:
        """
        yield over peak stress; none without stress
        """
    @property
    def yield_margin_high(self) -> float | None:
        """
        with the upper limit
        """
    @property
    def yield_margin_low(self) -> float | None:
        """
        with the lower limit of the yield stress
        """
class TargetResult:
    """
    One target and whether the design meets it.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, float, float | None, float | None, bool]:
        ...
    def __init__(self, *, name: str = '', value: typing.SupportsFloat | typing.SupportsIndex = 0.0, low: typing.SupportsFloat | typing.SupportsIndex | None = None, high: typing.SupportsFloat | typing.SupportsIndex | None = None, met: bool = False) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, bool]) -> None:
        ...
    @property
    def high(self) -> float | None:
        """
        greatest allowed
        """
    @property
    def low(self) -> float | None:
        """
        least allowed
        """
    @property
    def met(self) -> bool:
        """
        inside
        """
    @property
    def name(self) -> str:
        """
        key in the design file's [targets]
        """
    @property
    def value(self) -> float:
        """
        what the design does
        """
class Notice:
    """
    A finding that is no error: what a maker should know about this design.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, str]:
        ...
    def __init__(self, *, code: str = '', message: str = '') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, str]) -> None:
        ...
    @property
    def code(self) -> str:
        """
        short and fixed, as "yields"
        """
    @property
    def message(self) -> str:
        """
        one sentence for the bench
        """
class Check:
    """
    Everything one check says.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[list[Position], list[StrokeReport], Travel, float, list[TargetResult], list[Notice]]:
        ...
    def __init__(self, *, positions: collections.abc.Sequence[Position] = ..., strokes: collections.abc.Sequence[StrokeReport] = ..., travel: Travel = ..., stiffness_n_per_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, targets: collections.abc.Sequence[TargetResult] = ..., notices: collections.abc.Sequence[Notice] = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[Position], collections.abc.Sequence[StrokeReport], Travel, typing.SupportsFloat | typing.SupportsIndex, collections.abc.Sequence[TargetResult], collections.abc.Sequence[Notice]]) -> None:
        ...
    @property
    def notices(self) -> list[Notice]:
        """
        what a maker should know
        """
    @property
    def positions(self) -> list[Position]:
        """
        open, half_stop (where there is one), closed
        """
    @property
    def stiffness_n_per_mm(self) -> float:
        """
        at the pivot station [N/mm]
        """
    @property
    def strokes(self) -> list[StrokeReport]:
        """
        opening, in turn
        """
    @property
    def targets(self) -> list[TargetResult]:
        """
        those the design states
        """
    @property
    def travel(self) -> Travel:
        """
        the worst between closed and open
        """
class SpringAlong:
    """
    The loaded spring from its rearmost pin, or the middle pin, to its end.
    """
    def __getstate__(self) -> tuple[typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]]:
        ...
    def __setstate__(self, arg0: tuple[typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"]]) -> None:
        ...
    @property
    def back_stress_mpa(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        bending stress on the back, tension positive [MPa]
        """
    @property
    def belly_stress_mpa(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        bending stress on the belly, tension positive [MPa]
        """
    @property
    def deflection_mm(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        outward, 0 behind the middle pin [mm]
        """
    @property
    def face_mm(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        free working face above the pivot's height [mm]
        """
    @property
    def station_mm(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        [mm]
        """
    @property
    def thickness_mm(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        [mm]
        """
def angular_speed_rad_per_s(energy_mj: typing.SupportsFloat | typing.SupportsIndex, inertia_kg_mm2: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Angular speed from energy, omega = sqrt(2 U / J).

    Parameters
    ----------
    energy_mj
        [mJ], >= 0
    inertia_kg_mm2
        about the pivot [kg mm2], > 0

    Returns
    -------
    [rad/s]

    Source
    ------
    energy of rotation
    """
def bending_integrals(flexibility: Flexibility, x_mm: typing.SupportsFloat | typing.SupportsIndex) -> BendingIntegrals:
    """
    Integrals from the middle pin to a station; beyond the end the end's thickness goes on.

    Parameters
    ----------
    x_mm
        station [mm], >= 0

    Raises
    ------
    OutOfRange
        behind the middle pin
    """
def bending_moment_nmm(spring: Spring, loads: collections.abc.Sequence[Load], x_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Bending moment at a station.

    M = sum P_k max(x_k - x, 0) ahead of the middle pin; behind it M falls in a straight line to
    nothing at the rear pin, or is inside the hold (0) when there is no rear pin.

    Returns
    -------
    [N mm], + bends the pad outward

    Source
    ------
    statics
    """
def check(design: Design, step_deg: typing.SupportsFloat | typing.SupportsIndex = 1.0) -> Check:
    """
    Checks a design: three positions, the strokes between them, the worst of the travel, readings.

    Parameters
    ----------
    step_deg
        grid on which peaks are first looked for [deg], 0.05 to 5

    Raises
    ------
    InvalidInput
        with every broken rule
    """
def contact_at(design: Design, blade_angle_deg: typing.SupportsFloat | typing.SupportsIndex) -> Contact:
    """
    Where the tang bears on the spring at a blade angle, and how hard.

    The tang's body and its kick bear with at most one point force each. The places make the strain
    energy stationary, which on a smooth face means that outline and deformed face have one slope
    (shear: the mean of both sides of the force); otherwise the force acts at an edge of the pad.
    Found to rounding error, never on a grid, so that torque is dU/dtheta.

    Parameters
    ----------
    blade_angle_deg
        0 closed, 180 open; -45 to 225

    Raises
    ------
    OutOfRange
        outside that range

    Source
    ------
    unilateral contact as least complementary energy

    Notes
    -----
    on a flat, shear spreads the pressure over about half a thickness: under 0.0002 mm in
    readings and 0.02 % in force against one point force on an ordinary spring

    The joint of a design at one blade angle.

    Raises
    ------
    InvalidInput
        with every broken rule
    OutOfRange
        for an angle outside the model
    """
def deflection_per_force(flexibility: Flexibility, x_mm: typing.SupportsFloat | typing.SupportsIndex, xi_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Deflection at x for a unit force at xi, both ahead of the middle pin.

    C = x xi A0 - (x + xi) A1 + A2 + S + x xi R, integrals taken to min(x, xi).

    Parameters
    ----------
    x_mm
        where it moves [mm], >= 0
    xi_mm
        where the force acts [mm], >= 0

    Returns
    -------
    [mm/N]

    Raises
    ------
    OutOfRange
        behind the middle pin

    Source
    ------
    unit-load theorem; shear after Timoshenko, kappa = 5/6
    """
def faults(design: Design) -> list[Fault]:
    """
    Every broken rule of a design, by the keys of a design file.
    """
def fibre_stress(spring: Spring, loads: collections.abc.Sequence[Load], x_mm: typing.SupportsFloat | typing.SupportsIndex) -> FibreStress:
    """
    Nominal bending stress on back and belly at a station, net section.

    Returns
    -------
    [MPa], tension positive

    Notes
    -----
    no notch factor: see the limits in README
    """
def friction_torque_nmm(contact: Contact, friction: Friction, pivot_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Torque that friction takes, whichever way the blade turns.

    mu sum P |w - s X| at the spring (X, w: contact from the pivot) and mu_p N d/2 at the pin, N the
    resultant of the contact forces.

    Returns
    -------
    [N mm], >= 0

    Source
    ------
    Coulomb friction; thin-pin form

    Notes
    -----
    friction's own effect on bending is left out (order mu x slope)
    """
def inertia_kg_mm2(blade: Blade, tang: Tang) -> float | None:
    """
    Inertia about the pivot: as given, or of a plate of the blade's mass, length and height whose
    pivot is on its centre line, as far from its end as the tang reaches behind the pivot.

    J = m [(L^2 + h^2)/12 + (L/2 - reach)^2].

    Returns
    -------
    [kg mm2]; nothing when neither is given

    Source
    ------
    parallel-axis theorem
    """
def make_flexibility(spring: Spring) -> Flexibility:
    """
    Reduces a spring to its flexibility.

    Straight stretches are integrated in closed form, pierced ones by quadrature to rounding error.
    Root: R = (1/L_r^2) [int (s + L_r)^2/(E I) ds + int ds/(kappa G A)] over the rear span for two
    pins, 0 clamped, 1/k for a root stiffness k.

    Source
    ------
    unit-load theorem; shear after Timoshenko, kappa = 5/6
    """
def make_outline(tang: Tang, reach_mm: typing.SupportsFloat | typing.SupportsIndex) -> Outline:
    """
    Outline of a tang.

    With a half-stop: open, half-stop and closed faces with both rear corners rounded. Without: a
    disc about the pivot cut by the open and closed faces, corners rounded from inside.

    Parameters
    ----------
    tang
        checked by the design's rules
    reach_mm
        how far the closed face goes ahead of the pivot [mm]
    """
def make_section(width_mm: typing.SupportsFloat | typing.SupportsIndex, thickness_mm: typing.SupportsFloat | typing.SupportsIndex, chord_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, offset_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> Section:
    """
    Rectangle with a slot where a pin hole passes.

    A = b (t - c); ybar = -b c e / A;
    I = b t^3/12 + b t ybar^2 - [b c^3/12 + b c (e - ybar)^2].

    Parameters
    ----------
    width_mm
        across the liners [mm], > 0
    thickness_mm
        [mm], > 0
    chord_mm
        taken away by the hole [mm], 0 to less than the thickness
    offset_mm
        hole's centre from the mid-line, + towards the back [mm]

    Source
    ------
    parallel-axis theorem
    """
def make_stress_probe(spring: Spring) -> StressProbe:
    """
    Finds the places once, so that the worst stress at every blade angle is cheap.
    """
def outer_stress_per_moment(section: Section) -> float:
    """
    Bending stress in the outer fibre farther from the centroid, for a unit moment.

    Returns
    -------
    [MPa / (N mm)]
    """
def peak_stress(probe: StressProbe, loads: collections.abc.Sequence[Load]) -> PeakStress:
    """
    Worst bending stress along the spring under a contact's forces.

    Largest nominal bending stress along the whole spring, both sides.

    On a straight taper the worst place has twice the thickness that the taper would have where the
    moment vanishes; across holes it is taken from close stations (within 0.02 % of the stress).

    Parameters
    ----------
    loads
        at most two, ahead of the middle pin
    """
def pin_forces(spring: Spring, loads: collections.abc.Sequence[Load]) -> PinForces:
    """
    Pin forces that hold the spring, with two pins.

    rear = M(0) / L_r; middle = sum P + rear.

    Source
    ------
    statics
    """
def rear_reach_mm(tang: Tang) -> float:
    """
    How far the tang reaches behind the pivot when the blade is open.

    Returns
    -------
    [mm]
    """
def round_end_radius_mm(tang: Tang) -> float:
    """
    Radius about the pivot of a round end.

    As given, or else the circle that touches from outside the corners a square end would have at
    (open + closed)/2 behind the pivot: max over both of hypot(h - r, d - r) + r.

    Returns
    -------
    [mm]
    """
def section_at(spring: Spring, x_mm: typing.SupportsFloat | typing.SupportsIndex) -> Section:
    """
    Net section at a station.
    """
def shear_modulus_mpa(elastic: Elastic) -> float:
    """
    Shear modulus, G = E / (2 (1 + nu)).

    Returns
    -------
    [MPa]
    """
def slope_per_force(flexibility: Flexibility, x_mm: typing.SupportsFloat | typing.SupportsIndex, xi_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Slope of the deflected face at x for a unit force at xi.

    Shear makes the slope jump under the force; there it is the mean of both sides.

    Parameters
    ----------
    x_mm
        where the slope is taken [mm], >= 0
    xi_mm
        where the force acts [mm], >= 0

    Returns
    -------
    [rad/N]

    Raises
    ------
    OutOfRange
        behind the middle pin

    Source
    ------
    unit-load theorem; shear after Timoshenko, kappa = 5/6
    """
def spring_along(design: Design, blade_angle_deg: typing.SupportsFloat | typing.SupportsIndex, spacing_mm: typing.SupportsFloat | typing.SupportsIndex = 0.1) -> SpringAlong:
    """
    Shape and stress along the spring at one blade angle.

    Parameters
    ----------
    spacing_mm
        between stations; every kink, step and hole edge is added [mm], > 0

    Returns
    -------
    columns of one length

    Raises
    ------
    InvalidInput
        with every broken rule

    Notes
    -----
    the small bulge between the pins is left out of the deflection (about 0.03 mm)
    """
def strength_from_hardness(hardness_hrc: typing.SupportsFloat | typing.SupportsIndex, yield_ratio: Band) -> Strength:
    """
    Strength from hardness and the steel's ratio of yield to tensile strength.

    yield = ratio x tensile, each end of the band with its own end of the ratio's band.

    Parameters
    ----------
    hardness_hrc
        Rockwell C, 35 to 57.8
    yield_ratio
        0.2 % proof over tensile strength, with its band

    Raises
    ------
    OutOfRange
        hardness outside the conversion tables

    Source
    ------
    astm-e140, din-50150
    """
def sweep(design: Design, step_deg: typing.SupportsFloat | typing.SupportsIndex = 1.0, from_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, to_deg: typing.SupportsFloat | typing.SupportsIndex = 180.0) -> Sweep:
    """
    Steps at equal angles from one angle to another, both included.

    The last step is shorter when the span is no multiple of the step.

    Raises
    ------
    InvalidInput
        step not greater than 0, or more than a million steps

    Sweeps a design over blade angles.

    Parameters
    ----------
    step_deg
        [deg], > 0
    from_deg
        first angle [deg], at least -45
    to_deg
        last angle [deg], at most 225

    Returns
    -------
    columns of one length

    Raises
    ------
    InvalidInput
        with every broken rule
    OutOfRange
        for an angle outside the model
    """
def swept_radius_mm(outline: Outline) -> float:
    """
    Largest distance of the rear outline or the kick from the pivot.

    Returns
    -------
    [mm]
    """
def tensile_astm_mpa(hardness_hrc: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Tensile strength from Rockwell C by the American table.

    Parameters
    ----------
    hardness_hrc
        35 to 59

    Returns
    -------
    [MPa]

    Raises
    ------
    OutOfRange
        outside the table

    Source
    ------
    astm-e140
    """
def tensile_din_mpa(hardness_hrc: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Tensile strength from Rockwell C by the German table.

    Parameters
    ----------
    hardness_hrc
        20.3 to 57.8

    Returns
    -------
    [MPa]

    Raises
    ------
    OutOfRange
        outside the table

    Source
    ------
    din-50150
    """
def tensile_mpa(hardness_hrc: typing.SupportsFloat | typing.SupportsIndex) -> Band:
    """
    Tensile strength from Rockwell C with its band: both tables, which part by 4 to 5 % at 48 to 55
    HRC.

    The value is the mean of the two, the band reaches from the lower to the higher.

    Parameters
    ----------
    hardness_hrc
        35 to 57.8, where both tables have rows

    Returns
    -------
    [MPa]

    Raises
    ------
    OutOfRange
        outside either table

    Source
    ------
    astm-e140, din-50150
    """
def thickness_mm(profile: collections.abc.Sequence[Station], x_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Thickness at a station; at a step the one ahead of it, beyond the ends the end's.

    Parameters
    ----------
    profile
        at least one station, rising
    x_mm
        station [mm]

    Returns
    -------
    [mm]
    """
def vickers_hv(hardness_hrc: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Vickers hardness from Rockwell C.

    Parameters
    ----------
    hardness_hrc
        20 to 68

    Returns
    -------
    HV

    Raises
    ------
    OutOfRange
        outside the table

    Source
    ------
    astm-e140
    """
__version__: str = '0.1.0'
