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
__all__: list[str] = ['Allowance', 'Arc', 'BackGrindReadings', 'Band', 'Batch', 'BatchChance', 'BatchColumn', 'Bearer', 'BearingPressure', 'BendingIntegrals', 'BentSpring', 'Beside', 'Blade', 'Change', 'Check', 'ClosedGrind', 'Contact', 'Criterion', 'CurvatureFactors', 'CurvedSection', 'CurvedStress', 'Cut', 'Design', 'DesignMap', 'Dimension', 'Elastic', 'EnduranceFactors', 'Error', 'FaceDepths', 'FaceShift', 'Fatigue', 'FatigueInput', 'FatigueMargin', 'FatigueStrength', 'Fault', 'FibreStress', 'Finish', 'Fit', 'FitPlan', 'FitReadings', 'FitState', 'FitStep', 'FitUnknowns', 'Flexibility', 'Flush', 'FlushPass', 'Friction', 'GALLING_GAP_HRC', 'Gradient', 'GrindFace', 'GrindRegion', 'GrindRow', 'Hardness', 'Heat', 'HeatEffect', 'Hold', 'Hole', 'Influence', 'InvalidInput', 'Kick', 'Kink', 'LifeBand', 'LimitedStress', 'LineContact', 'LinerLine', 'Load', 'Loading', 'LocalSpread', 'LocalStress', 'Margin', 'Material', 'Measured', 'NoConvergence', 'Notice', 'OutOfRange', 'Outline', 'Overtravel', 'Pad', 'PeakStress', 'PeakTorques', 'PinForces', 'PinInput', 'PinStress', 'Pins', 'PlanRules', 'PlasticSection', 'PlasticSet', 'PlasticZone', 'Position', 'Rap', 'Readings', 'ResidualStress', 'ResultSpread', 'RowStatus', 'SampleSummary', 'SecondBlade', 'Section', 'SectionBend', 'Shoulder', 'SizeAnswer', 'SizeBounds', 'SizeDimension', 'SizeResult', 'SizeTarget', 'SlidingStress', 'SnLine', 'Spread', 'SpreadKind', 'Spring', 'SpringAllowable', 'SpringAlong', 'SpringSteel', 'Station', 'Strength', 'StressBelow', 'StressCycle', 'StressProbe', 'StressRange', 'Stroke', 'StrokeReport', 'Support', 'SupportKind', 'Surface', 'Sweep', 'Tang', 'TangFace', 'Taper', 'TargetResult', 'TargetShare', 'Targets', 'TemperFit', 'TemperPoint', 'TemperTable', 'Tolerance', 'ToleranceRows', 'Touch', 'TradeMargin', 'Travel', 'TwoBlades', 'TwoCheck', 'TwoContacts', 'VarianceShare', 'WorstPinForces', 'allowance', 'angular_speed_rad_per_s', 'as_measured', 'batch_chance', 'batch_columns', 'bearing_pressures', 'bend_by_force', 'bend_by_hold', 'bend_section', 'bending_integrals', 'bending_moment_nmm', 'check', 'check_many', 'check_two', 'contact_at', 'contact_modulus_mpa', 'cross_rotation_rad_per_nmm', 'curvature_factors', 'curved_stress', 'cycle_between', 'cycles_to_failure', 'deflection_per_force', 'depth_for_pull', 'design_endurance_mpa', 'design_map', 'dimension_value', 'dimensions', 'equivalent_diameter_mm', 'farthest', 'fatigue', 'fatigue_notch_factor', 'fatigue_strength_mpa', 'faults', 'fibre_stress', 'find_kinks', 'find_shoulders', 'first_yield_factor', 'first_yield_pressure_mpa', 'first_yield_pressure_of_hardness_mpa', 'fit_plan', 'fit_readings', 'friction_torque_nmm', 'galling_caution', 'gradient', 'grind', 'grind_flush', 'grind_passes', 'grind_table', 'groove_factor', 'hardness_after_heat', 'hardness_after_temper', 'has_dimension', 'hole_edge_stress', 'hole_tension_factor', 'inertia_kg_mm2', 'influence', 'kink_factor', 'least_corner_radius_mm', 'line_contact', 'loading_factor', 'local_spreads', 'local_stress', 'make_curved_section', 'make_flexibility', 'make_outline', 'make_plastic_section', 'make_section', 'make_sn_line', 'make_stress_probe', 'mean_endurance_mpa', 'neuber_root_length', 'notch_sensitivity', 'one_sided_groove_factor', 'one_sided_shoulder_factor', 'outer_stress_per_moment', 'peak_stress', 'permanent_set', 'pin_forces', 'pin_stress', 'propose_taper', 'quantiles', 'quasi_random', 'readings_after_back_grind', 'readings_in', 'rear_reach_mm', 'relative_radius_mm', 'reliability_factor', 'require_spreads', 'residual_curvature_per_mm', 'residual_stress', 'reversed_stress_mpa', 'round_end_radius_mm', 'safety_factor', 'second_end', 'section_at', 'share_at_thousand', 'shear_modulus_mpa', 'shoulder_factor', 'size', 'size_bounds', 'size_factor', 'size_of', 'sliding_stress', 'slope_per_force', 'sobol_bits', 'spring_allowables', 'spring_along', 'spring_along_two', 'standard_deviation', 'strength_from_hardness', 'stress_below', 'sum_up', 'summarise', 'surface_factor', 'sweep', 'swept_radius_mm', 'take_off', 'temper_for_hardness', 'temper_parameter', 'temperature_factor', 'tensile_astm_mpa', 'tensile_din_mpa', 'tensile_mpa', 'thickness_mm', 'tip_height_mm', 'tolerance_columns', 'tolerance_rows', 'two_contacts_at', 'two_faults', 'variance_shares', 'vickers_hv', 'walker_exponent', 'whole_face', 'with_dimension', 'yielded_depth_mm']
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
class Heat:
    """
    A stay at one temperature.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, temperature_c: typing.SupportsFloat | typing.SupportsIndex = 0.0, time_h: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def temperature_c(self) -> float:
        """
        [C]
        """
    @property
    def time_h(self) -> float:
        """
        [h]
        """
class HeatEffect:
    """
    Hardness after a later heat.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Band, bool]:
        ...
    def __init__(self, *, hardness_hrc: Band = ..., extrapolated_in_time: bool = False) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Band, bool]) -> None:
        ...
    @property
    def extrapolated_in_time(self) -> bool:
        """
        the heat was shorter than any that was fitted
        """
    @property
    def hardness_hrc(self) -> Band:
        """
        what is left [HRC]
        """
class TemperFit:
    """
    Hardness of a hardened steel after tempering, fitted to published experiments.

    P = T (C + log10 t) / 1000, T in kelvin and t in hours; x = (P - mean) / deviation;
    HRC = c0 + c1 x + c2 x^2 + c3 x^3. The limits are those of the points that were fitted.

    Source
    ------
    hollomon-jaffe-1945
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, typing.Annotated[list[float], "FixedSize(4)"], float, float, float, float, float, float]:
        ...
    def __init__(self, *, time_constant: typing.SupportsFloat | typing.SupportsIndex = 18.0, mean: typing.SupportsFloat | typing.SupportsIndex = 0.0, deviation: typing.SupportsFloat | typing.SupportsIndex = 1.0, coefficients: typing.Annotated[collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex], "FixedSize(4)"] = ..., spread_hrc: typing.SupportsFloat | typing.SupportsIndex = 0.0, coolest_c: typing.SupportsFloat | typing.SupportsIndex = 195.0, hottest_c: typing.SupportsFloat | typing.SupportsIndex = 620.0, shortest_h: typing.SupportsFloat | typing.SupportsIndex = 0.16666666666666666, longest_h: typing.SupportsFloat | typing.SupportsIndex = 24.0, softest_hrc: typing.SupportsFloat | typing.SupportsIndex = 25.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.Annotated[collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex], "FixedSize(4)"], typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def coefficients(self) -> typing.Annotated[list[float], "FixedSize(4)"]:
        """
        c0, c1, c2, c3 [HRC]
        """
    @property
    def coolest_c(self) -> float:
        """
        [C]
        """
    @property
    def deviation(self) -> float:
        """
        standard deviation of P over the points
        """
    @property
    def hottest_c(self) -> float:
        """
        [C]
        """
    @property
    def longest_h(self) -> float:
        """
        [h]
        """
    @property
    def mean(self) -> float:
        """
        mean of P over the points
        """
    @property
    def shortest_h(self) -> float:
        """
        600 s [h]
        """
    @property
    def softest_hrc(self) -> float:
        """
        [HRC]
        """
    @property
    def spread_hrc(self) -> float:
        """
        half width of the answer's band: rms error or more [HRC]
        """
    @property
    def time_constant(self) -> float:
        """
        C
        """
class TemperPoint:
    """
    One row of a published temper table.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, Band]:
        ...
    def __init__(self, *, temper_c: typing.SupportsFloat | typing.SupportsIndex = 0.0, hardness_hrc: Band = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, Band]) -> None:
        ...
    @property
    def hardness_hrc(self) -> Band:
        """
        [HRC]
        """
    @property
    def temper_c(self) -> float:
        """
        [C]
        """
class TemperTable:
    """
    Hardness after tempering at one hold, row by row; between rows it is interpolated.

    A table knows no other time. Half the hold to four times the hold is taken as the same: in
    carbon steel doubling the time is worth 0.5 to 1 HRC at spring hardness.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[list[TemperPoint], float | None]:
        ...
    def __init__(self, *, points: collections.abc.Sequence[TemperPoint] = ..., hold_h: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[TemperPoint], typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def hold_h(self) -> float | None:
        """
        the table's hold, none when it states none [h]
        """
    @property
    def points(self) -> list[TemperPoint]:
        """
        two or more, temper rising, hardness never rising
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
class Overtravel:
    """
    How far a closing blade runs past its closed rest.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, stored_mj: typing.SupportsFloat | typing.SupportsIndex = 0.0, friction_work_mj: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def angle_deg(self) -> float:
        """
        past the rest, >= 0 [deg]
        """
    @property
    def friction_work_mj(self) -> float:
        """
        taken by friction on the way [mJ]
        """
    @property
    def stored_mj(self) -> float:
        """
        taken up by the spring [mJ]
        """
class Rap:
    """
    What closing with a snap does to the edge.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, Overtravel | None, float | None, float | None]:
        ...
    def __init__(self, *, energy_mj: typing.SupportsFloat | typing.SupportsIndex = 0.0, past: Overtravel | None = None, edge_dip_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, clearance_left_mm: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, Overtravel | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def clearance_left_mm(self) -> float | None:
        """
        below 0: the edge strikes; where it is given [mm]
        """
    @property
    def edge_dip_mm(self) -> float | None:
        """
        edge towards the spring's belly [mm]
        """
    @property
    def energy_mj(self) -> float:
        """
        of the blade at its closed rest [mJ]
        """
    @property
    def past(self) -> Overtravel | None:
        """
        none: not stopped before -45 deg
        """
class Finish(enum.Enum):
    """
    How the surface was finished, the outer fibre being where cracks begin.
    """
    as_forged = ...
    ground = ...
    hot_rolled = ...
    machined = ...
    polished = ...
class Loading(enum.Enum):
    """
    What kind of stress turns.
    """
    axial = ...
    bending = ...
    torsion = ...
class Criterion(enum.Enum):
    """
    How a mean stress is held to shorten life.

    With Sa what is borne without mean stress, sa amplitude and sm mean:
    goodman sa/Sa + sm/Sut = 1, cautious; gerber sa/Sa + (sm/Sut)^2 = 1, a mean through tests;
    elliptic (sa/Sa)^2 + (sm/Sy)^2 = 1; swt Sa = sqrt(smax sa), sound for hard steel;
    walker Sa = smax^(1-g) sa^g, g falling with strength.
    """
    elliptic = ...
    gerber = ...
    goodman = ...
    swt = ...
    walker = ...
class SpringSteel(enum.Enum):
    """
    The kinds of steel that the spring trade's tables keep apart, as far as knife springs use them.
    """
    carbon = ...
    stainless = ...
class EnduranceFactors:
    """
    What is left of the endurance limit, factor by factor.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float, float]:
        ...
    def __init__(self, *, surface: typing.SupportsFloat | typing.SupportsIndex = 1.0, size: typing.SupportsFloat | typing.SupportsIndex = 1.0, loading: typing.SupportsFloat | typing.SupportsIndex = 1.0, temperature: typing.SupportsFloat | typing.SupportsIndex = 1.0, reliability: typing.SupportsFloat | typing.SupportsIndex = 1.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def loading(self) -> float:
        """
        bending
        """
    @property
    def reliability(self) -> float:
        """
        part of all springs that must last
        """
    @property
    def size(self) -> float:
        """
        section
        """
    @property
    def surface(self) -> float:
        """
        finish
        """
    @property
    def temperature(self) -> float:
        """
        at work
        """
class StressCycle:
    """
    A stress that goes up and down, as amplitude about a mean.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, amplitude_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, mean_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def amplitude_mpa(self) -> float:
        """
        half the range, >= 0 [MPa]
        """
    @property
    def mean_mpa(self) -> float:
        """
        tension positive [MPa]
        """
class FatigueStrength:
    """
    What the steel bears, for the criteria.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, reversed_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, tensile_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, yield_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def reversed_mpa(self) -> float:
        """
        amplitude borne without mean stress: endurance limit, or the
        fatigue strength at a number of cycles [MPa]
        """
    @property
    def tensile_mpa(self) -> float:
        """
        tensile strength [MPa]
        """
    @property
    def yield_mpa(self) -> float:
        """
        0.2 % proof stress [MPa]
        """
class SnLine:
    """
    Strength against cycles: straight in logarithms from the tensile strength at one cycle to f
    times it at 10^3, and on to the endurance limit at 10^6; level beyond.
    """
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def endurance_mpa(self) -> float:
        """
        at 10^6 cycles and beyond [MPa]
        """
    @property
    def share_at_thousand(self) -> float:
        """
        f, of the tensile strength at 10^3 cycles
        """
    @property
    def tensile_mpa(self) -> float:
        """
        at one cycle [MPa]
        """
class SpringAllowable:
    """
    Greatest bending stress the spring trade allows, over tensile strength.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, float, str, str]:
        ...
    def __init__(self, *, stated_for: str = '', fraction: typing.SupportsFloat | typing.SupportsIndex = 0.0, source: str = '', confidence: str = '') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, typing.SupportsFloat | typing.SupportsIndex, str, str]) -> None:
        ...
    @property
    def confidence(self) -> str:
        """
        "read" or "memory"
        """
    @property
    def fraction(self) -> float:
        """
        greatest stress over tensile strength
        """
    @property
    def source(self) -> str:
        """
        key of the source
        """
    @property
    def stated_for(self) -> str:
        """
        steel and kind of spring
        """
class StressRange:
    """
    Least and greatest stress at one place over a travel.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, low_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, high_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def high_mpa(self) -> float:
        """
        [MPa]
        """
    @property
    def low_mpa(self) -> float:
        """
        [MPa]
        """
class FatigueInput:
    """
    What fatigue at one place of the spring depends on.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, Band, Band, Finish, float, float, float, float, float, float, int, SpringSteel]:
        ...
    def __init__(self, *, stress_max_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, stress_min_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, tensile_mpa: Band = ..., yield_mpa: Band = ..., finish: Finish = ..., width_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, thickness_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, notch_factor: typing.SupportsFloat | typing.SupportsIndex = 1.0, reliability: typing.SupportsFloat | typing.SupportsIndex = 0.99, temperature_c: typing.SupportsFloat | typing.SupportsIndex = 20.0, openings: typing.SupportsFloat | typing.SupportsIndex = 100000.0, strokes: typing.SupportsInt | typing.SupportsIndex = 2, steel: SpringSteel = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, Band, Band, Finish, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsInt | typing.SupportsIndex, SpringSteel]) -> None:
        ...
    @property
    def finish(self) -> Finish:
        """
        of the outer fibre
        """
    @property
    def notch_factor(self) -> float:
        """
        on both stresses; 1 where they are local already
        """
    @property
    def openings(self) -> float:
        """
        wanted; each opens and closes once
        """
    @property
    def reliability(self) -> float:
        """
        part of all springs that must last
        """
    @property
    def steel(self) -> SpringSteel:
        """
        whose trade tables are read
        """
    @property
    def stress_max_mpa(self) -> float:
        """
        greatest of the travel, tension positive [MPa]
        """
    @property
    def stress_min_mpa(self) -> float:
        """
        least of the travel [MPa]
        """
    @property
    def strokes(self) -> int:
        """
        crests passed on the way open: 2 with a half-stop
        """
    @property
    def temperature_c(self) -> float:
        """
        at work [C]
        """
    @property
    def tensile_mpa(self) -> Band:
        """
        tensile strength [MPa]
        """
    @property
    def thickness_mm(self) -> float:
        """
        of the section [mm]
        """
    @property
    def width_mm(self) -> float:
        """
        of the section [mm]
        """
    @property
    def yield_mpa(self) -> Band:
        """
        0.2 % proof stress [MPa]
        """
class FatigueMargin:
    """
    How many times the stresses can grow for the wanted openings, by one criterion.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Criterion, Band]:
        ...
    def __init__(self, *, criterion: Criterion = ..., margin: Band = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Criterion, Band]) -> None:
        ...
    @property
    def criterion(self) -> Criterion:
        """
        how mean stress counts
        """
    @property
    def margin(self) -> Band:
        """
        below 1: it is expected to crack before
        """
class TradeMargin:
    """
    How many times the stress can grow before a table of the spring trade is passed.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[SpringAllowable, Band]:
        ...
    def __init__(self, *, allowable: SpringAllowable = ..., margin: Band = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[SpringAllowable, Band]) -> None:
        ...
    @property
    def allowable(self) -> SpringAllowable:
        """
        the table
        """
    @property
    def margin(self) -> Band:
        """
        fraction x tensile strength over greatest stress
        """
class LifeBand:
    """
    Openings until it cracks; none: no end is foreseen.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float | None, float | None, float | None]:
        ...
    def __init__(self, *, value: typing.SupportsFloat | typing.SupportsIndex | None = None, low: typing.SupportsFloat | typing.SupportsIndex | None = None, high: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def high(self) -> float | None:
        """
        everything at its best at once
        """
    @property
    def low(self) -> float | None:
        """
        everything at its worst at once
        """
    @property
    def value(self) -> float | None:
        """
        typical spring
        """
class Fatigue:
    """
    Fatigue at one place of the spring.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[StressCycle, EnduranceFactors, float, float, float, float, list[FatigueMargin], Band | None, list[TradeMargin], LifeBand]:
        ...
    def __init__(self, *, cycle: StressCycle = ..., factors: EnduranceFactors = ..., endurance_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, strength_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, cycles_per_opening: typing.SupportsFloat | typing.SupportsIndex = 0.0, wanted_cycles: typing.SupportsFloat | typing.SupportsIndex = 0.0, margins: collections.abc.Sequence[FatigueMargin] = ..., first_yield: Band | None = None, trade: collections.abc.Sequence[TradeMargin] = ..., life_openings: LifeBand = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[StressCycle, EnduranceFactors, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, collections.abc.Sequence[FatigueMargin], Band | None, collections.abc.Sequence[TradeMargin], LifeBand]) -> None:
        ...
    @property
    def cycle(self) -> StressCycle:
        """
        notch factor included
        """
    @property
    def cycles_per_opening(self) -> float:
        """
        2 for each stroke
        """
    @property
    def endurance_mpa(self) -> float:
        """
        limit of the part at the wanted reliability [MPa]
        """
    @property
    def factors(self) -> EnduranceFactors:
        """
        on the endurance limit
        """
    @property
    def first_yield(self) -> Band | None:
        """
        times the stress can grow before it yields
        """
    @property
    def life_openings(self) -> LifeBand:
        """
        openings until it cracks
        """
    @property
    def margins(self) -> list[FatigueMargin]:
        """
        goodman, gerber, elliptic, swt, walker
        """
    @property
    def strength_mpa(self) -> float:
        """
        reversed stress borne for the wanted cycles [MPa]
        """
    @property
    def trade(self) -> list[TradeMargin]:
        """
        tables of the spring trade
        """
    @property
    def wanted_cycles(self) -> float:
        """
        wanted openings in cycles
        """
class LocalStress:
    """
    Stress at a notch beside what the section alone would carry.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float]:
        ...
    def __init__(self, *, nominal_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, factor: typing.SupportsFloat | typing.SupportsIndex = 1.0, local_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, station_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def factor(self) -> float:
        """
        local over nominal
        """
    @property
    def local_mpa(self) -> float:
        """
        tension positive [MPa]
        """
    @property
    def nominal_mpa(self) -> float:
        """
        of the net section at that place, tension positive [MPa]
        """
    @property
    def station_mm(self) -> float:
        """
        [mm]
        """
class Kink:
    """
    A place where the belly turns inward between two straight stretches.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, station_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, thickness_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, angle_rad: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def angle_rad(self) -> float:
        """
        between them, > 0 [rad]
        """
    @property
    def station_mm(self) -> float:
        """
        [mm]
        """
    @property
    def thickness_mm(self) -> float:
        """
        where the stretches meet [mm]
        """
class Shoulder:
    """
    A step of the thickness.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, station_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, large_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, small_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def large_mm(self) -> float:
        """
        thickness on the thick side [mm]
        """
    @property
    def small_mm(self) -> float:
        """
        on the thin side [mm]
        """
    @property
    def station_mm(self) -> float:
        """
        [mm]
        """
class CurvedSection:
    """
    Rectangle across a beam that is curved before it is loaded.
    """
    def __getstate__(self) -> tuple[float, float, float, float, float, float, float]:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def centroid_radius_mm(self) -> float:
        """
        of the middle [mm]
        """
    @property
    def inner_radius_mm(self) -> float:
        """
        of the hollow face [mm]
        """
    @property
    def neutral_radius_mm(self) -> float:
        """
        where bending leaves no stress [mm]
        """
    @property
    def outer_radius_mm(self) -> float:
        """
        of the round face [mm]
        """
    @property
    def shift_mm(self) -> float:
        """
        from the middle to there, inward [mm]
        """
    @property
    def thickness_mm(self) -> float:
        """
        from the inner to the outer face [mm]
        """
    @property
    def width_mm(self) -> float:
        """
        [mm]
        """
class CurvedStress:
    """
    Stress of both faces, tension positive.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, inner_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, outer_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def inner_mpa(self) -> float:
        """
        on the hollow face [MPa]
        """
    @property
    def outer_mpa(self) -> float:
        """
        on the round face [MPa]
        """
class CurvatureFactors:
    """
    Bending stress of both faces over that of a straight beam.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, inner: typing.SupportsFloat | typing.SupportsIndex = 1.0, outer: typing.SupportsFloat | typing.SupportsIndex = 1.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def inner(self) -> float:
        """
        hollow face, above 1
        """
    @property
    def outer(self) -> float:
        """
        round face, below 1
        """
class WorstPinForces:
    """
    Largest forces of a travel on both pins, each with its own angle.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[PinForces, float, float]:
        ...
    def __init__(self, *, forces: PinForces = ..., middle_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, rear_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[PinForces, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def forces(self) -> PinForces:
        """
        largest of each [N]
        """
    @property
    def middle_angle_deg(self) -> float:
        """
        blade angle of the middle pin's [deg]
        """
    @property
    def rear_angle_deg(self) -> float:
        """
        blade angle of the rear pin's [deg]
        """
class PinInput:
    """
    A pin through the spring and a liner on either side.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float | None, float, float, float]:
        ...
    def __init__(self, *, force_n: typing.SupportsFloat | typing.SupportsIndex = 0.0, pin_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, spring_width_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, liner_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, pin_yield_mpa: typing.SupportsFloat | typing.SupportsIndex = 240.0, spring_yield_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, liner_yield_mpa: typing.SupportsFloat | typing.SupportsIndex = 240.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def force_n(self) -> float:
        """
        of the pin on the spring [N]
        """
    @property
    def liner_mm(self) -> float | None:
        """
        thickness of one liner [mm]
        """
    @property
    def liner_yield_mpa(self) -> float:
        """
        [MPa]
        """
    @property
    def pin_mm(self) -> float:
        """
        diameter [mm]
        """
    @property
    def pin_yield_mpa(self) -> float:
        """
        [MPa]
        """
    @property
    def spring_width_mm(self) -> float:
        """
        across the liners [mm]
        """
    @property
    def spring_yield_mpa(self) -> float:
        """
        [MPa]
        """
class LimitedStress:
    """
    A mean stress with its limit.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float | None]:
        ...
    def __init__(self, *, stress_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, limit_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, margin: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def limit_mpa(self) -> float:
        """
        [MPa]
        """
    @property
    def margin(self) -> float | None:
        """
        limit over stress; none without force
        """
    @property
    def stress_mpa(self) -> float:
        """
        [MPa]
        """
class PinStress:
    """
    How a pin bears its force.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[LimitedStress, LimitedStress, LimitedStress | None]:
        ...
    def __init__(self, *, shear: LimitedStress = ..., spring_bearing: LimitedStress = ..., liner_bearing: LimitedStress | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[LimitedStress, LimitedStress, LimitedStress | None]) -> None:
        ...
    @property
    def liner_bearing(self) -> LimitedStress | None:
        """
        between pin and each liner
        """
    @property
    def shear(self) -> LimitedStress:
        """
        of the pin, two planes
        """
    @property
    def spring_bearing(self) -> LimitedStress:
        """
        between pin and spring
        """
class PlasticSection:
    """
    A section of elastic, perfectly plastic steel: rectangle, whole or with a slot where a pin hole
    passes.
    """
    def __getstate__(self) -> tuple[float, float, float, float, float, float, float, float, float, float, float]:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def chord_mm(self) -> float:
        """
        taken away by the hole [mm]
        """
    @property
    def inertia_mm4(self) -> float:
        """
        net second moment of area [mm4]
        """
    @property
    def offset_mm(self) -> float:
        """
        hole's centre from the mid-line, + to the back [mm]
        """
    @property
    def outer_mm(self) -> float:
        """
        centroid to the farther outer fibre [mm]
        """
    @property
    def plastic_moment_nmm(self) -> float:
        """
        all of the section yields [N mm]
        """
    @property
    def thickness_mm(self) -> float:
        """
        in the plane that bends [mm]
        """
    @property
    def width_mm(self) -> float:
        """
        across the liners [mm]
        """
    @property
    def yield_curvature_per_mm(self) -> float:
        """
        where yielding begins [1/mm]
        """
    @property
    def yield_moment_nmm(self) -> float:
        """
        the outer fibre begins to yield [N mm]
        """
    @property
    def yield_mpa(self) -> float:
        """
        stress that goes no higher [MPa]
        """
    @property
    def youngs_modulus_mpa(self) -> float:
        """
        Young's modulus [MPa]
        """
class SectionBend:
    """
    A section under a moment.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, curvature_per_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, core_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, neutral_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def core_mm(self) -> float:
        """
        half height of the elastic core [mm]
        """
    @property
    def curvature_per_mm(self) -> float:
        """
        [1/mm]
        """
    @property
    def neutral_mm(self) -> float:
        """
        neutral axis from the mid-line, + towards the back [mm]
        """
class ResidualStress:
    """
    Stress that stays when the moment has gone, on the side of the farther outer fibre; + has the
    sign it had under the moment.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, surface_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, core_edge_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def core_edge_mpa(self) -> float:
        """
        at the edge of the elastic core [MPa]
        """
    @property
    def surface_mpa(self) -> float:
        """
        in the outer fibre: sY - M c/I, against the loading [MPa]
        """
class Hold:
    """
    A place where something holds the spring away from its free shape.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, x_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, rise_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def rise_mm(self) -> float:
        """
        outward from the free shape [mm]
        """
    @property
    def x_mm(self) -> float:
        """
        station, ahead of the middle pin [mm]
        """
class FaceShift:
    """
    How the free working face has moved, outward positive: a straight line ahead of all that
    yielded.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, height_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, slope: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    def at_mm(self, x_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
        """
        Rise at a station [mm].
        """
    @property
    def height_mm(self) -> float:
        """
        of the line at the middle pin [mm]
        """
    @property
    def slope(self) -> float:
        """
        of the line
        """
class PlasticZone:
    """
    A stretch of the spring that has yielded.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float, float | None, float]:
        ...
    def __init__(self, *, from_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, to_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, deepest_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, depth_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, strain: typing.SupportsFloat | typing.SupportsIndex | None = None, residual_surface_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def deepest_mm(self) -> float:
        """
        station where it is deepest [mm]
        """
    @property
    def depth_mm(self) -> float:
        """
        there, from the outer fibre [mm]
        """
    @property
    def from_mm(self) -> float:
        """
        first station [mm]
        """
    @property
    def residual_surface_mpa(self) -> float:
        """
        there, once unloaded; below 0: against the loading [MPa]
        """
    @property
    def strain(self) -> float | None:
        """
        there, in the outer fibre; none where it kinks as a hinge
        """
    @property
    def to_mm(self) -> float:
        """
        last station [mm]
        """
class BentSpring:
    """
    A spring bent, perhaps beyond its yield stress, and let go.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[list[Load], FaceShift, list[PlasticZone]]:
        ...
    def __init__(self, *, loads: collections.abc.Sequence[Load] = ..., shift: FaceShift = ..., zones: collections.abc.Sequence[PlasticZone] = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[Load], FaceShift, collections.abc.Sequence[PlasticZone]]) -> None:
        ...
    @property
    def loads(self) -> list[Load]:
        """
        that bent it
        """
    @property
    def shift(self) -> FaceShift:
        """
        what stays
        """
    @property
    def zones(self) -> list[PlasticZone]:
        """
        where it has yielded, from the rear
        """
class PlasticSet:
    """
    What the first openings leave of a spring that yields over its crest.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[bool, float, float, float, FaceShift, FaceShift, float, float, float, float, float, float, float, int, bool, bool, list[PlasticZone]]:
        ...
    def __init__(self, *, yielded: bool = False, blade_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, elastic_force_n: typing.SupportsFloat | typing.SupportsIndex = 0.0, force_n: typing.SupportsFloat | typing.SupportsIndex = 0.0, shift: FaceShift = ..., shift_opened: FaceShift = ..., drop_pivot_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, drop_dial_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, drop_pad_start_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, drop_pad_end_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, preload_before_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, preload_opened_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, preload_settled_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, openings_to_settle: typing.SupportsInt | typing.SupportsIndex = 0, settled: bool = True, folded: bool = False, zones: collections.abc.Sequence[PlasticZone] = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[bool, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, FaceShift, FaceShift, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsInt | typing.SupportsIndex, bool, bool, collections.abc.Sequence[PlasticZone]]) -> None:
        ...
    @property
    def blade_angle_deg(self) -> float:
        """
        where the elastic spring would be worst stressed [deg]
        """
    @property
    def drop_dial_mm(self) -> float:
        """
        at the dial [mm]
        """
    @property
    def drop_pad_end_mm(self) -> float:
        """
        at the pad's front edge [mm]
        """
    @property
    def drop_pad_start_mm(self) -> float:
        """
        at the pad's rear edge [mm]
        """
    @property
    def drop_pivot_mm(self) -> float:
        """
        free face away from the tang, pivot station [mm]
        """
    @property
    def elastic_force_n(self) -> float:
        """
        there, if it did not yield [N]
        """
    @property
    def folded(self) -> bool:
        """
        a section yields right through and bends as a hinge
        """
    @property
    def force_n(self) -> float:
        """
        there, yielding [N]
        """
    @property
    def openings_to_settle(self) -> int:
        """
        openings that still changed it
        """
    @property
    def preload_before_mm(self) -> float:
        """
        interference at the pivot station, as fitted [mm]
        """
    @property
    def preload_opened_mm(self) -> float:
        """
        after the first opening [mm]
        """
    @property
    def preload_settled_mm(self) -> float:
        """
        once an opening changes nothing more [mm]
        """
    @property
    def settled(self) -> bool:
        """
        not so: it goes on yielding with every opening
        """
    @property
    def shift(self) -> FaceShift:
        """
        of the free working face, outward, once settled
        """
    @property
    def shift_opened(self) -> FaceShift:
        """
        of the free working face after the first opening
        """
    @property
    def yielded(self) -> bool:
        """
        some of it yields; all else is 0 or unchanged if not
        """
    @property
    def zones(self) -> list[PlasticZone]:
        """
        where it has yielded, from the rear
        """
class PeakTorques:
    """
    Greatest torque against opening before and after a set.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, before_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0, after_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def after_nmm(self) -> float:
        """
        with the face as the set leaves it [N mm]
        """
    @property
    def before_nmm(self) -> float:
        """
        as fitted, friction included [N mm]
        """
class Bearer(enum.Enum):
    """
    What of tang or spring bears at a touch.
    """
    closed_corner = ...
    closed_front = ...
    flat = ...
    kick = ...
    open_corner = ...
    open_front = ...
    pad_edge = ...
    round_end = ...
class LineContact:
    """
    A round pressed along a line on a flat.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float, float]:
        ...
    def __init__(self, *, half_width_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, mean_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, shear_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, shear_depth_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def half_width_mm(self) -> float:
        """
        of the touching strip [mm]
        """
    @property
    def mean_mpa(self) -> float:
        """
        force over touching area: pi/4 of the peak [MPa]
        """
    @property
    def peak_mpa(self) -> float:
        """
        greatest pressure, in the middle; none at a sharp edge [MPa]
        """
    @property
    def shear_depth_mm(self) -> float:
        """
        how far below [mm]
        """
    @property
    def shear_mpa(self) -> float:
        """
        greatest shear stress, below the surface [MPa]
        """
class StressBelow:
    """
    Stresses in the middle below the touching strip.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, along_line_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, along_face_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, normal_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    def shear_mpa(self) -> float:
        """
        Greatest shear stress [MPa].
        """
    def von_mises_mpa(self) -> float:
        """
        Equivalent stress after von Mises [MPa].
        """
    @property
    def along_face_mpa(self) -> float:
        """
        in the face, across the line [MPa]
        """
    @property
    def along_line_mpa(self) -> float:
        """
        along the line of contact [MPa]
        """
    @property
    def normal_mpa(self) -> float:
        """
        into the face [MPa]
        """
class SlidingStress:
    """
    Principal stresses in the face under a line contact that slides.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, tension_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, compression_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def compression_mpa(self) -> float:
        """
        least, under the strip: -p0 (mu + sqrt(1 + mu^2)) [MPa]
        """
    @property
    def tension_mpa(self) -> float:
        """
        greatest, at the trailing edge of the strip: 2 mu p0 [MPa]
        """
class BearingPressure:
    """
    The hardest a part bears over a travel.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Bearer, float, float, float, float, LineContact | None]:
        ...
    def __init__(self, *, bearer: Bearer = ..., radius_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, force_n: typing.SupportsFloat | typing.SupportsIndex = 0.0, blade_angle_deg: typing.SupportsFloat | typing.SupportsIndex = 0.0, station_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, line: LineContact | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Bearer, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, LineContact | None]) -> None:
        ...
    @property
    def bearer(self) -> Bearer:
        """
        which part
        """
    @property
    def blade_angle_deg(self) -> float:
        """
        where that is [deg]
        """
    @property
    def force_n(self) -> float:
        """
        greatest on it [N]
        """
    @property
    def line(self) -> LineContact | None:
        """
        none for a flat, which spreads it, and for a sharp edge,
        which peens or wears until it is round
        """
    @property
    def radius_mm(self) -> float:
        """
        infinite for a flat, 0 for a sharp edge [mm]
        """
    @property
    def station_mm(self) -> float:
        """
        and on which place of the spring [mm]
        """
class Surface:
    """
    The spring's surface and what of its outline raises the stress locally.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Finish, float | None, float | None, SpringSteel]:
        ...
    def __init__(self, *, finish: Finish = ..., kink_radius_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, curve_radius_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, steel: SpringSteel = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Finish, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, SpringSteel]) -> None:
        ...
    @property
    def curve_radius_mm(self) -> float | None:
        """
        of a hollow belly, before it is loaded [mm]
        """
    @property
    def finish(self) -> Finish:
        """
        of the outer fibre, for fatigue
        """
    @property
    def kink_radius_mm(self) -> float | None:
        """
        root radius of the belly's kinks and steps [mm]
        """
    @property
    def steel(self) -> SpringSteel:
        """
        whose tables of the spring trade are read
        """
class Pins:
    """
    The pins through spring and liners; a pin is as thick as its hole where nothing else is said.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float | None, float | None, float | None, float]:
        ...
    def __init__(self, *, middle_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, rear_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, liner_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, yield_mpa: typing.SupportsFloat | typing.SupportsIndex = 240.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def liner_mm(self) -> float | None:
        """
        thickness of one liner [mm]
        """
    @property
    def middle_mm(self) -> float | None:
        """
        diameter of the middle pin [mm]
        """
    @property
    def rear_mm(self) -> float | None:
        """
        diameter of the rear pin [mm]
        """
    @property
    def yield_mpa(self) -> float:
        """
        of the pins [MPa]
        """
class Hardness:
    """
    Hardness of the two parts that rub, where it is known.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float | None, float | None]:
        ...
    def __init__(self, *, spring_hrc: typing.SupportsFloat | typing.SupportsIndex | None = None, tang_hrc: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def spring_hrc(self) -> float | None:
        """
        Rockwell C
        """
    @property
    def tang_hrc(self) -> float | None:
        """
        Rockwell C
        """
class Margin:
    """
    One way in which a spring can fail, and how far it is from it.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, float, float, str, float | None, float | None, float | None, float | None, list[str], str]:
        ...
    def __init__(self, *, name: str = '', value: typing.SupportsFloat | typing.SupportsIndex = 0.0, limit: typing.SupportsFloat | typing.SupportsIndex = 0.0, unit: str = '', margin: typing.SupportsFloat | typing.SupportsIndex | None = None, margin_low: typing.SupportsFloat | typing.SupportsIndex | None = None, station_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, blade_angle_deg: typing.SupportsFloat | typing.SupportsIndex | None = None, sources: collections.abc.Sequence[str] = ..., sentence: str = '') -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, str, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, collections.abc.Sequence[str], str]) -> None:
        ...
    @property
    def blade_angle_deg(self) -> float | None:
        """
        at which blade angle [deg]
        """
    @property
    def limit(self) -> float:
        """
        what it may do, in `unit`
        """
    @property
    def margin(self) -> float | None:
        """
        limit over value; none where nothing is asked of it
        """
    @property
    def margin_low(self) -> float | None:
        """
        with the bands at their unkind ends
        """
    @property
    def name(self) -> str:
        """
        short and fixed, as "yield" or "fatigue"
        """
    @property
    def sentence(self) -> str:
        """
        for the bench
        """
    @property
    def sources(self) -> list[str]:
        """
        keys of what the limit rests on
        """
    @property
    def station_mm(self) -> float | None:
        """
        where on the spring [mm]
        """
    @property
    def unit(self) -> str:
        """
        "MPa", "mm", "HRC"
        """
    @property
    def value(self) -> float:
        """
        what the design does, in `unit`
        """
class Targets:
    """
    What a check judges a design against; what is left out is not judged.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float | None, float | None, float | None, float | None, float | None]:
        ...
    def __init__(self, *, pull_low_n: typing.SupportsFloat | typing.SupportsIndex | None = None, pull_high_n: typing.SupportsFloat | typing.SupportsIndex | None = None, yield_margin: typing.SupportsFloat | typing.SupportsIndex | None = None, reading_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, openings: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def openings(self) -> float | None:
        """
        openings the spring must outlast
        """
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
    def __getstate__(self) -> tuple[Spring, Strength, Tang, Fit, Blade, Friction, Targets, Surface, Pins, Hardness]:
        ...
    def __init__(self, *, spring: Spring = ..., strength: Strength = ..., tang: Tang = ..., fit: Fit = ..., blade: Blade = ..., friction: Friction = ..., targets: Targets = ..., surface: Surface = ..., pins: Pins = ..., hardness: Hardness = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Spring, Strength, Tang, Fit, Blade, Friction, Targets, Surface, Pins, Hardness]) -> None:
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
    def hardness(self) -> Hardness:
        """
        of spring and tang
        """
    @property
    def pins(self) -> Pins:
        """
        through spring and liners
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
    def surface(self) -> Surface:
        """
        of the spring
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
    def __getstate__(self) -> tuple[str, float | None, float | None, float | None, bool]:
        ...
    def __init__(self, *, name: str = '', value: typing.SupportsFloat | typing.SupportsIndex | None = None, low: typing.SupportsFloat | typing.SupportsIndex | None = None, high: typing.SupportsFloat | typing.SupportsIndex | None = None, met: bool = False) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, bool]) -> None:
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
        inside; never so without a value
        """
    @property
    def name(self) -> str:
        """
        key in the design file's [targets]
        """
    @property
    def value(self) -> float | None:
        """
        what the design does; none where that cannot be told
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
    def __getstate__(self) -> tuple[list[Position], list[StrokeReport], Travel, float, list[Margin], list[TargetResult], list[Notice]]:
        ...
    def __init__(self, *, positions: collections.abc.Sequence[Position] = ..., strokes: collections.abc.Sequence[StrokeReport] = ..., travel: Travel = ..., stiffness_n_per_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, verdict: collections.abc.Sequence[Margin] = ..., targets: collections.abc.Sequence[TargetResult] = ..., notices: collections.abc.Sequence[Notice] = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[Position], collections.abc.Sequence[StrokeReport], Travel, typing.SupportsFloat | typing.SupportsIndex, collections.abc.Sequence[Margin], collections.abc.Sequence[TargetResult], collections.abc.Sequence[Notice]]) -> None:
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
    @property
    def verdict(self) -> list[Margin]:
        """
        ways to fail, least margin first
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
class Dimension:
    """
    One number in which designs can differ.
    """
    def __getstate__(self) -> tuple[str, str]:
        ...
    def __setstate__(self, arg0: tuple[str, str]) -> None:
        ...
    @property
    def key(self) -> str:
        """
        its key in a design file, as "fit.preload"
        """
    @property
    def unit(self) -> str:
        """
        "mm", "MPa", or nothing for a ratio
        """
class Change:
    """
    Values of one dimension, a row each.
    """
    def __getstate__(self) -> tuple[str, typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]]:
        ...
    def __init__(self, key: str, values: typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"]) -> None:
        ...
    def __setstate__(self, arg0: tuple[str, typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"]]) -> None:
        ...
    @property
    def key(self) -> str:
        """
        see dimensions()
        """
    @property
    def values(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        [mm], [MPa] or a ratio
        """
class BatchColumn:
    """
    One result of many designs.
    """
    def __getstate__(self) -> tuple[str, typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]]:
        ...
    def __init__(self, name: str, values: typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"]) -> None:
        ...
    def __setstate__(self, arg0: tuple[str, typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"]]) -> None:
        ...
    @property
    def name(self) -> str:
        """
        with its unit, as "peak_pull_n"
        """
    @property
    def values(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        a row each; NaN where a row has none
        """
class Batch:
    """
    Results of many designs.
    """
    def __init__(self, columns: collections.abc.Sequence[BatchColumn], status: typing.Annotated[numpy.typing.ArrayLike, numpy.uint8], complete: bool) -> None:
        ...
    @property
    def columns(self) -> list[BatchColumn]:
        """
        as asked for
        """
    @property
    def complete(self) -> bool:
        """
        not stopped before its end
        """
    @property
    def status(self) -> numpy.typing.NDArray[numpy.uint8]:
        """
        a row each
        """
class RowStatus(enum.Enum):
    """
    How far the check of one of many designs came.
    """
    invalid = ...
    lifted_off = ...
    no_closed_rest = ...
    no_half_stop_rest = ...
    not_held_open = ...
    not_run = ...
    ok = ...
class SpreadKind(enum.Enum):
    """
    How the values of one dimension lie about the design's own.
    """
    normal = ...
    uniform = ...
class Spread:
    """
    What the bench makes of one number of a design.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, SpreadKind, float]:
        ...
    def __init__(self, *, key: str = '', kind: SpreadKind = ..., size: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, SpreadKind, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def key(self) -> str:
        """
        see dimensions()
        """
    @property
    def kind(self) -> SpreadKind:
        """
        shape
        """
    @property
    def size(self) -> float:
        """
        standard deviation or half-width [mm], [MPa], ratio
        """
class ToleranceRows:
    """
    The rows a tolerance study checks, in turn: the sample; then, for shares of variance, a second
    sample, and the head of the first with one dimension at a time from the second.
    """
    def __getstate__(self) -> tuple[int, int, list[Change]]:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsInt | typing.SupportsIndex, typing.SupportsInt | typing.SupportsIndex, collections.abc.Sequence[Change]]) -> None:
        ...
    @property
    def changes(self) -> list[Change]:
        """
        sample + second (1 + number of spreads) rows
        """
    @property
    def sample(self) -> int:
        """
        rows of the sample
        """
    @property
    def second(self) -> int:
        """
        rows of the second sample, 0 without shares of variance
        """
class LocalSpread:
    """
    How one result follows small departures, and what that says of large ones.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, float, list[float], float, float, float]:
        ...
    def __init__(self, *, name: str = '', nominal: typing.SupportsFloat | typing.SupportsIndex = 0.0, slopes: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex] = ..., root_sum_square_sd: typing.SupportsFloat | typing.SupportsIndex = 0.0, worst_low: typing.SupportsFloat | typing.SupportsIndex = 0.0, worst_high: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, typing.SupportsFloat | typing.SupportsIndex, collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex], typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def name(self) -> str:
        """
        of the result
        """
    @property
    def nominal(self) -> float:
        """
        of the design as it is
        """
    @property
    def root_sum_square_sd(self) -> float:
        """
        sqrt of the sum of (slope x standard deviation)^2
        """
    @property
    def slopes(self) -> list[float]:
        """
        change of the result per unit of each dimension
        """
    @property
    def worst_high(self) -> float:
        """
        every dimension at the end that raises it
        """
    @property
    def worst_low(self) -> float:
        """
        every dimension at the end that lowers the result
        """
class SampleSummary:
    """
    A sample in a few numbers; NaN without values.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[int, float, float, list[float]]:
        ...
    def __init__(self, *, count: typing.SupportsInt | typing.SupportsIndex = 0, mean: typing.SupportsFloat | typing.SupportsIndex = 0.0, sd: typing.SupportsFloat | typing.SupportsIndex = 0.0, quantiles: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex] = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsInt | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex]]) -> None:
        ...
    @property
    def count(self) -> int:
        """
        values that are numbers
        """
    @property
    def mean(self) -> float:
        """
        average
        """
    @property
    def quantiles(self) -> list[float]:
        """
        at kQuantiles, straight between the values in order
        """
    @property
    def sd(self) -> float:
        """
        standard deviation, of the sample itself
        """
class VarianceShare:
    """
    How much of the variance of a result one input brings.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, first: typing.SupportsFloat | typing.SupportsIndex = 0.0, total: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def first(self) -> float:
        """
        by itself
        """
    @property
    def total(self) -> float:
        """
        with all it does together with others
        """
class BatchChance:
    """
    How many of a sample are good, and what that says of a batch of knives.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float, float, float]:
        ...
    def __init__(self, *, share: typing.SupportsFloat | typing.SupportsIndex = 0.0, share_low: typing.SupportsFloat | typing.SupportsIndex = 0.0, share_high: typing.SupportsFloat | typing.SupportsIndex = 0.0, chance: typing.SupportsFloat | typing.SupportsIndex = 0.0, chance_low: typing.SupportsFloat | typing.SupportsIndex = 0.0, chance_high: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def chance(self) -> float:
        """
        that every knife of the batch is good
        """
    @property
    def chance_high(self) -> float:
        """
        from share_high
        """
    @property
    def chance_low(self) -> float:
        """
        from share_low
        """
    @property
    def share(self) -> float:
        """
        of the sample that is good
        """
    @property
    def share_high(self) -> float:
        """
        see share_low
        """
    @property
    def share_low(self) -> float:
        """
        95 % limits of the share
        """
class ResultSpread:
    """
    Spread of one result of a design.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[LocalSpread, SampleSummary, list[VarianceShare]]:
        ...
    def __init__(self, *, local: LocalSpread = ..., sample: SampleSummary = ..., shares: collections.abc.Sequence[VarianceShare] = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[LocalSpread, SampleSummary, collections.abc.Sequence[VarianceShare]]) -> None:
        ...
    @property
    def local(self) -> LocalSpread:
        """
        slopes, root-sum-square, worst case
        """
    @property
    def sample(self) -> SampleSummary:
        """
        what the sample says
        """
    @property
    def shares(self) -> list[VarianceShare]:
        """
        by spread; none when not asked for or nothing varies
        """
class TargetShare:
    """
    A target and how many of the sample meet it.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, float | None, float | None, int]:
        ...
    def __init__(self, *, name: str = '', low: typing.SupportsFloat | typing.SupportsIndex | None = None, high: typing.SupportsFloat | typing.SupportsIndex | None = None, met: typing.SupportsInt | typing.SupportsIndex = 0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsInt | typing.SupportsIndex]) -> None:
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
    def met(self) -> int:
        """
        rows of the sample
        """
    @property
    def name(self) -> str:
        """
        key in the design file's [targets]
        """
class Tolerance:
    """
    What the bench's spreads do to a design.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[list[ResultSpread], list[TargetShare], int, int, int, BatchChance | None, bool]:
        ...
    def __init__(self, *, results: collections.abc.Sequence[ResultSpread] = ..., targets: collections.abc.Sequence[TargetShare] = ..., rows: typing.SupportsInt | typing.SupportsIndex = 0, working: typing.SupportsInt | typing.SupportsIndex = 0, good: typing.SupportsInt | typing.SupportsIndex = 0, batch: BatchChance | None = None, complete: bool = True) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[ResultSpread], collections.abc.Sequence[TargetShare], typing.SupportsInt | typing.SupportsIndex, typing.SupportsInt | typing.SupportsIndex, typing.SupportsInt | typing.SupportsIndex, BatchChance | None, bool]) -> None:
        ...
    @property
    def batch(self) -> BatchChance | None:
        """
        chance that all knives of a batch are good
        """
    @property
    def complete(self) -> bool:
        """
        not stopped before its end
        """
    @property
    def good(self) -> int:
        """
        rows that work and meet every target
        """
    @property
    def results(self) -> list[ResultSpread]:
        """
        pull or torque, stress, margin, loaded readings
        """
    @property
    def rows(self) -> int:
        """
        of the sample, as far as it was run
        """
    @property
    def targets(self) -> list[TargetShare]:
        """
        those the design states
        """
    @property
    def working(self) -> int:
        """
        rows that work as a slip joint
        """
class TangFace(enum.Enum):
    """
    A face of the tang that is ground while fitting.
    """
    closed = ...
    half_stop = ...
    kick = ...
    open = ...
class FitState(enum.Enum):
    """
    Which state of the knife readings are taken in.
    """
    loaded = ...
    unloaded = ...
class FaceDepths:
    """
    Depth taken off each face of the tang.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float]:
        ...
    def __init__(self, *, open_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, half_stop_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, closed_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, kick_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def closed_mm(self) -> float:
        """
        off the closed face near the pivot [mm]
        """
    @property
    def half_stop_mm(self) -> float:
        """
        off the half-stop face [mm]
        """
    @property
    def kick_mm(self) -> float:
        """
        off the nose of the kick [mm]
        """
    @property
    def open_mm(self) -> float:
        """
        off the open face [mm]
        """
class FitUnknowns:
    """
    What a drawing cannot know about one knife on the bench.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float]:
        ...
    def __init__(self, *, pad_tilt_rad: typing.SupportsFloat | typing.SupportsIndex = 0.0, pivot_play_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, extra_root_rad_per_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def extra_root_rad_per_nmm(self) -> float:
        """
        rotation at the root beyond the model's [rad/(N mm)]
        """
    @property
    def pad_tilt_rad(self) -> float:
        """
        of the pad on the open face, + gapes towards the rear [rad]
        """
    @property
    def pivot_play_mm(self) -> float:
        """
        diametral clearance of pivot and bushing [mm]
        """
class Readings:
    """
    What the dial indicator shows on the back relative to open, proud positive.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float | None, float | None]:
        ...
    def __init__(self, *, closed_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, half_stop_mm: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def closed_mm(self) -> float | None:
        """
        [mm]
        """
    @property
    def half_stop_mm(self) -> float | None:
        """
        [mm]
        """
class FitReadings:
    """
    Both readings in both states.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Readings, Readings, float | None]:
        ...
    def __init__(self, *, loaded: Readings = ..., unloaded: Readings = ..., closed_angle_deg: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Readings, Readings, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def closed_angle_deg(self) -> float | None:
        """
        where the blade rests closed, loaded [deg]
        """
    @property
    def loaded(self) -> Readings:
        """
        both pins in
        """
    @property
    def unloaded(self) -> Readings:
        """
        rear pin out
        """
class Allowance:
    """
    What to leave when fitting with the rear pin out.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float | None, float, Tang]:
        ...
    def __init__(self, *, target_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, half_stop_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, closed_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, tang: Tang = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex, Tang]) -> None:
        ...
    @property
    def closed_mm(self) -> float:
        """
        unloaded reading to leave [mm]
        """
    @property
    def half_stop_mm(self) -> float | None:
        """
        unloaded reading to leave; none without one [mm]
        """
    @property
    def tang(self) -> Tang:
        """
        the tang that has these readings
        """
    @property
    def target_mm(self) -> float:
        """
        loaded reading wanted at both [mm]
        """
class BackGrindReadings:
    """
    Readings before and after the back is ground.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[FitReadings, FitReadings, Allowance, Allowance]:
        ...
    def __init__(self, *, before: FitReadings = ..., after: FitReadings = ..., allowance_before: Allowance = ..., allowance_after: Allowance = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[FitReadings, FitReadings, Allowance, Allowance]) -> None:
        ...
    @property
    def after(self) -> FitReadings:
        """
        the same tang under the thinner spring
        """
    @property
    def allowance_after(self) -> Allowance:
        """
        for the target, under the thinner spring
        """
    @property
    def allowance_before(self) -> Allowance:
        """
        for the target
        """
    @property
    def before(self) -> FitReadings:
        """
        as it stands
        """
class ClosedGrind(enum.Enum):
    """
    Where the closed reading is brought down on a tang with a kick.
    """
    closed = ...
    kick = ...
    least = ...
    level = ...
class Measured:
    """
    What the dial showed.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[FitState, float | None, float]:
        ...
    def __init__(self, *, state: FitState = ..., half_stop_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, closed_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[FitState, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def closed_mm(self) -> float:
        """
        reading [mm]
        """
    @property
    def half_stop_mm(self) -> float | None:
        """
        reading; none without a half-stop [mm]
        """
    @property
    def state(self) -> FitState:
        """
        state of the knife
        """
class Material:
    """
    Steel that may still come off each face; none: what the design allows.

    Without a number the half-stop and closed faces may go down to 0.5 mm below the open face, the
    kick down to the closed face, the open face until the preload is used up.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float | None, float | None, float | None, float | None]:
        ...
    def __init__(self, *, open_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, half_stop_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, closed_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, kick_mm: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def closed_mm(self) -> float | None:
        """
        [mm]
        """
    @property
    def half_stop_mm(self) -> float | None:
        """
        [mm]
        """
    @property
    def kick_mm(self) -> float | None:
        """
        [mm]
        """
    @property
    def open_mm(self) -> float | None:
        """
        [mm]
        """
class PlanRules:
    """
    How to plan.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, ClosedGrind, Material]:
        ...
    def __init__(self, *, target_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0254, repeatability_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, reserve: typing.SupportsFloat | typing.SupportsIndex = 0.3333333333333333, closed_by: ClosedGrind = ..., material: Material = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, ClosedGrind, Material]) -> None:
        ...
    @property
    def closed_by(self) -> ClosedGrind:
        """
        where the closed reading is brought down
        """
    @property
    def material(self) -> Material:
        """
        steel that may come off
        """
    @property
    def repeatability_mm(self) -> float:
        """
        standard deviation of one reading, 0 to 0.2 [mm]
        """
    @property
    def reserve(self) -> float:
        """
        share of what is to go that a pass leaves, 0 to 0.8
        """
    @property
    def target_mm(self) -> float:
        """
        loaded reading wanted, -1 to 1 [mm]
        """
class FitStep:
    """
    One face ground once.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[int, int, TangFace, float, float | None, float, float | None, float, float | None]:
        ...
    def __init__(self, *, step: typing.SupportsInt | typing.SupportsIndex = 0, pass_number: typing.SupportsInt | typing.SupportsIndex = 0, face: TangFace = ..., remove_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, half_stop_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, closed_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, half_stop_loaded_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, closed_loaded_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, tip_mm: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsInt | typing.SupportsIndex, typing.SupportsInt | typing.SupportsIndex, TangFace, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def closed_loaded_mm(self) -> float:
        """
        expected after it, pins in [mm]
        """
    @property
    def closed_mm(self) -> float:
        """
        expected after it, state as measured [mm]
        """
    @property
    def face(self) -> TangFace:
        """
        which face
        """
    @property
    def half_stop_loaded_mm(self) -> float | None:
        """
        expected after it, pins in [mm]
        """
    @property
    def half_stop_mm(self) -> float | None:
        """
        expected after it, state as measured [mm]
        """
    @property
    def pass_number(self) -> int:
        """
        measure again after each pass
        """
    @property
    def remove_mm(self) -> float:
        """
        depth to take off [mm]
        """
    @property
    def step(self) -> int:
        """
        from 1
        """
    @property
    def tip_mm(self) -> float | None:
        """
        blade's tip against where it stands now, + out [mm]
        """
class FitPlan:
    """
    What to take off which face, in what order.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[list[FitStep], int, float, float | None, float, FaceDepths, Design, Design, list[Notice]]:
        ...
    def __init__(self, *, steps: collections.abc.Sequence[FitStep] = ..., passes: typing.SupportsInt | typing.SupportsIndex = 0, aim_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, half_stop_loaded_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, closed_loaded_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, removed: FaceDepths = ..., now: Design = ..., done: Design = ..., notices: collections.abc.Sequence[Notice] = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[FitStep], typing.SupportsInt | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex, FaceDepths, Design, Design, collections.abc.Sequence[Notice]]) -> None:
        ...
    @property
    def aim_mm(self) -> float:
        """
        loaded reading the last pass aims at [mm]
        """
    @property
    def closed_loaded_mm(self) -> float:
        """
        pins in, as it stands [mm]
        """
    @property
    def done(self) -> Design:
        """
        the knife when the plan is carried out
        """
    @property
    def half_stop_loaded_mm(self) -> float | None:
        """
        pins in, as it stands [mm]
        """
    @property
    def notices(self) -> list[Notice]:
        """
        what to know before starting
        """
    @property
    def now(self) -> Design:
        """
        the knife as it stands, by the readings
        """
    @property
    def passes(self) -> int:
        """
        passes in the plan
        """
    @property
    def removed(self) -> FaceDepths:
        """
        in all
        """
    @property
    def steps(self) -> list[FitStep]:
        """
        none when the fit is done
        """
class GrindFace(enum.Enum):
    """
    Where steel is taken off the spring.
    """
    back = ...
    belly = ...
    pad = ...
class GrindRegion:
    """
    A stretch of the spring.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, from_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, to_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def from_mm(self) -> float:
        """
        rear end [mm]
        """
    @property
    def to_mm(self) -> float:
        """
        front end [mm]
        """
class Cut:
    """
    One cut: a depth off one face.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[GrindFace, float, GrindRegion | None]:
        ...
    def __init__(self, *, face: GrindFace = ..., depth_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, region: GrindRegion | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[GrindFace, typing.SupportsFloat | typing.SupportsIndex, GrindRegion | None]) -> None:
        ...
    @property
    def depth_mm(self) -> float:
        """
        taken off [mm]
        """
    @property
    def face(self) -> GrindFace:
        """
        which face
        """
    @property
    def region(self) -> GrindRegion | None:
        """
        where; none: the face's whole free length
        """
class LinerLine:
    """
    The liners' straight back, by its height above the pivot at two stations.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float]:
        ...
    def __init__(self, *, rear_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, rear_height_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, front_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, front_height_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def front_height_mm(self) -> float:
        """
        above the pivot there [mm]
        """
    @property
    def front_mm(self) -> float:
        """
        station ahead of it [mm]
        """
    @property
    def rear_height_mm(self) -> float:
        """
        above the pivot there [mm]
        """
    @property
    def rear_mm(self) -> float:
        """
        station [mm]
        """
class GrindRow:
    """
    What a spring does after a cut.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float, float, float | None, float | None, float, float, float | None, float | None, float | None, float | None]:
        ...
    def __init__(self, *, removed_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, preload_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, stiffness_n_per_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_torque_nmm: typing.SupportsFloat | typing.SupportsIndex | None = None, peak_pull_n: typing.SupportsFloat | typing.SupportsIndex | None = None, travel_peak_stress_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, travel_peak_stress_station_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, yield_margin: typing.SupportsFloat | typing.SupportsIndex | None = None, yield_margin_low: typing.SupportsFloat | typing.SupportsIndex | None = None, reading_loaded_half_stop_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, reading_loaded_closed_mm: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def peak_pull_n(self) -> float | None:
        """
        opening, at the nail nick [N]
        """
    @property
    def peak_torque_nmm(self) -> float | None:
        """
        opening; none without a stroke [N mm]
        """
    @property
    def preload_mm(self) -> float:
        """
        left [mm]
        """
    @property
    def reading_loaded_closed_mm(self) -> float | None:
        """
        none without that rest [mm]
        """
    @property
    def reading_loaded_half_stop_mm(self) -> float | None:
        """
        none without that rest [mm]
        """
    @property
    def removed_mm(self) -> float:
        """
        depth of the cut [mm]
        """
    @property
    def stiffness_n_per_mm(self) -> float:
        """
        at the pivot station [N/mm]
        """
    @property
    def travel_peak_stress_mpa(self) -> float:
        """
        worst of the travel [MPa]
        """
    @property
    def travel_peak_stress_station_mm(self) -> float:
        """
        where that is [mm]
        """
    @property
    def yield_margin(self) -> float | None:
        """
        yield over that stress
        """
    @property
    def yield_margin_low(self) -> float | None:
        """
        with the lower limit of the yield
        """
class FlushPass:
    """
    One pass of flush grinding.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, GrindRow]:
        ...
    def __init__(self, *, proud_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, after: GrindRow = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, GrindRow]) -> None:
        ...
    @property
    def after(self) -> GrindRow:
        """
        the spring after it; `removed_mm` counts from the start
        """
    @property
    def proud_mm(self) -> float:
        """
        most that stood proud before the pass [mm]
        """
class Flush:
    """
    What flush grinding does.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[list[Station], GrindRow, list[FlushPass], float, list[Station], Design]:
        ...
    def __init__(self, *, before: collections.abc.Sequence[Station] = ..., at_start: GrindRow = ..., passes: collections.abc.Sequence[FlushPass] = ..., left_proud_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, removed: collections.abc.Sequence[Station] = ..., design: Design = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[Station], GrindRow, collections.abc.Sequence[FlushPass], typing.SupportsFloat | typing.SupportsIndex, collections.abc.Sequence[Station], Design]) -> None:
        ...
    @property
    def at_start(self) -> GrindRow:
        """
        nothing removed
        """
    @property
    def before(self) -> list[Station]:
        """
        proud height by station, ahead of the middle pin
        """
    @property
    def design(self) -> Design:
        """
        ground flush
        """
    @property
    def left_proud_mm(self) -> float:
        """
        highest at the end, below 0 when all is low [mm]
        """
    @property
    def passes(self) -> list[FlushPass]:
        """
        in turn; none when flush already
        """
    @property
    def removed(self) -> list[Station]:
        """
        depth by station; empty when flush already
        """
class Gradient:
    """
    How the results of a design answer to its numbers, all at once.
    """
    def __getstate__(self) -> tuple[list[str], list[str], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, n]"]]:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[str], collections.abc.Sequence[str], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, n]"]]) -> None:
        ...
    def of(self, figure: str, dimension: str) -> float:
        """
        One derivative.

        Raises
        ------
        OutOfRange
            the design has no such result or number
        """
    @property
    def derivative(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, n]"]:
        """
        of each result by each number
        """
    @property
    def dimensions(self) -> list[str]:
        """
        keys of the numbers, columns; see dimensions()
        """
    @property
    def figures(self) -> list[str]:
        """
        results by their names in a check, rows
        """
    @property
    def value(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        of each result
        """
class Influence:
    """
    Where on the spring a pass of the grinder matters.
    """
    def __getstate__(self) -> tuple[typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], list[str], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, n]"]]:
        ...
    def __setstate__(self, arg0: tuple[typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], collections.abc.Sequence[str], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, n]"]]) -> None:
        ...
    def of(self, figure: str) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        Changes of one result along the spring.

        Raises
        ------
        OutOfRange
            the design has no such result
        """
    @property
    def change_per_pass(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, n]"]:
        """
        of each result, a column a station
        """
    @property
    def figures(self) -> list[str]:
        """
        results by their names in a check, rows
        """
    @property
    def station_mm(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        [mm]
        """
    @property
    def value(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        of each result as it is
        """
class SizeDimension:
    """
    A measure of the spring that sizing may change.

    Keys: "spring.thickness" is the thickness at the middle pin, the whole profile goes with it in
    proportion; with a station, that station's own thickness alone. "fit.preload". "spring.width".
    "tang.pivot" moves pivot, pad and dial together, the steel stays and is made longer at its end
    when the pad needs it. "spring.length" does the same and stretches the steel between middle pin
    and pad.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, float | None, float | None, float | None, list[float]]:
        ...
    def __init__(self, *, key: str = '', station_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, low_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, high_mm: typing.SupportsFloat | typing.SupportsIndex | None = None, stock_mm: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex] = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None, collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex]]) -> None:
        ...
    @property
    def high_mm(self) -> float | None:
        """
        greatest allowed [mm]
        """
    @property
    def key(self) -> str:
        """
        which measure
        """
    @property
    def low_mm(self) -> float | None:
        """
        least allowed; none: see size_bounds() [mm]
        """
    @property
    def station_mm(self) -> float | None:
        """
        with "spring.thickness" only [mm]
        """
    @property
    def stock_mm(self) -> list[float]:
        """
        sizes it comes in; none: any [mm]
        """
class SizeBounds:
    """
    Limits of a measure [mm].
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float, float]:
        ...
    def __init__(self, *, low_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, high_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def high_mm(self) -> float:
        """
        [mm]
        """
    @property
    def low_mm(self) -> float:
        """
        [mm]
        """
class SizeTarget:
    """
    What a spring is sized for.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[float | None, float | None]:
        ...
    def __init__(self, *, pull_n: typing.SupportsFloat | typing.SupportsIndex | None = None, yield_margin: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex | None]) -> None:
        ...
    @property
    def pull_n(self) -> float | None:
        """
        peak pull, opening, to be met exactly [N]
        """
    @property
    def yield_margin(self) -> float | None:
        """
        yield stress over worst stress of the travel, at least
        """
class SizeAnswer:
    """
    One way to size the spring.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Design, list[float], float | None, float]:
        ...
    def __init__(self, *, design: Design = ..., sizes_mm: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex] = ..., pull_n: typing.SupportsFloat | typing.SupportsIndex | None = None, yield_margin: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Design, collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex], typing.SupportsFloat | typing.SupportsIndex | None, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def design(self) -> Design:
        """
        with the measures put in
        """
    @property
    def pull_n(self) -> float | None:
        """
        peak pull, opening; none without a nail nick [N]
        """
    @property
    def sizes_mm(self) -> list[float]:
        """
        a measure each, in the order asked for [mm]
        """
    @property
    def yield_margin(self) -> float:
        """
        at the worst of the travel
        """
class SizeResult:
    """
    All ways found, or what stands in the way.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[list[SizeAnswer], SizeAnswer | None, list[str]]:
        ...
    def __init__(self, *, answers: collections.abc.Sequence[SizeAnswer] = ..., nearest: SizeAnswer | None = None, limits: collections.abc.Sequence[str] = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[SizeAnswer], SizeAnswer | None, collections.abc.Sequence[str]]) -> None:
        ...
    @property
    def answers(self) -> list[SizeAnswer]:
        """
        those that meet the target; none: it cannot be met
        """
    @property
    def limits(self) -> list[str]:
        """
        when none does: what holds it there, a sentence each
        """
    @property
    def nearest(self) -> SizeAnswer | None:
        """
        when none does: the nearest that can be made
        """
class DesignMap:
    """
    Pull and margin over two measures, to see where a wanted spring lies.
    """
    def __getstate__(self) -> tuple[typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, n]"], typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, n]"]]:
        ...
    def __setstate__(self, arg0: tuple[typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, n]"], typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, n]"]]) -> None:
        ...
    @property
    def pull_n(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, n]"]:
        """
        peak pull, opening; a row a y, NaN where there is none [N]
        """
    @property
    def x_mm(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        sizes of the first measure [mm]
        """
    @property
    def y_mm(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, 1]"]:
        """
        sizes of the second measure [mm]
        """
    @property
    def yield_margin(self) -> typing.Annotated[numpy.typing.NDArray[numpy.float64], "[m, n]"]:
        """
        at the worst of the travel; NaN as above
        """
class Taper:
    """
    A thickness profile proposed for a pull.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Design, float, float, float, float]:
        ...
    def __init__(self, *, design: Design = ..., pull_n: typing.SupportsFloat | typing.SupportsIndex = 0.0, peak_stress_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0, yield_margin: typing.SupportsFloat | typing.SupportsIndex = 0.0, even_stress_mpa: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Design, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def design(self) -> Design:
        """
        with the profile put in
        """
    @property
    def even_stress_mpa(self) -> float:
        """
        nominal stress where no limit holds the thickness up [MPa]
        """
    @property
    def peak_stress_mpa(self) -> float:
        """
        worst of the travel [MPa]
        """
    @property
    def pull_n(self) -> float:
        """
        peak pull, opening, as wanted [N]
        """
    @property
    def yield_margin(self) -> float:
        """
        at the worst of the travel
        """
class SecondBlade:
    """
    The blade at the far end of a spring with two blades.

    Its stations are its own: from the pin next to it, + towards its own pivot.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Pad, Tang, Fit, Blade]:
        ...
    def __init__(self, *, pad: Pad = ..., tang: Tang = ..., fit: Fit = ..., blade: Blade = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Pad, Tang, Fit, Blade]) -> None:
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
    def pad(self) -> Pad:
        """
        face of the spring that its tang can touch
        """
    @property
    def tang(self) -> Tang:
        """
        faces and corners
        """
class TwoBlades:
    """
    A slip joint with one spring and a blade at each of its ends.

    Two pins hold the spring between the blades, the second one next to the second blade; or a
    middle pin alone, on which it turns: support `clamped`, for each end then bends as if clamped
    there. Friction and targets go for both blades.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Design, SecondBlade]:
        ...
    def __init__(self, *, first: Design = ..., second: SecondBlade = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Design, SecondBlade]) -> None:
        ...
    @property
    def first(self) -> Design:
        """
        the first blade, and the spring over its whole length
        """
    @property
    def second(self) -> SecondBlade:
        """
        the blade behind the pins
        """
class TwoContacts:
    """
    Both tangs bearing on the spring.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[Contact, Contact, float, float]:
        ...
    def __init__(self, *, first: Contact = ..., second: Contact = ..., first_turn_rad: typing.SupportsFloat | typing.SupportsIndex = 0.0, second_turn_rad: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[Contact, Contact, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def first(self) -> Contact:
        """
        energy is of the whole spring
        """
    @property
    def first_turn_rad(self) -> float:
        """
        how far the other end turns this root, + outward [rad]
        """
    @property
    def second(self) -> Contact:
        """
        energy is of the whole spring
        """
    @property
    def second_turn_rad(self) -> float:
        """
        the same of the other root [rad]
        """
class Beside:
    """
    One blade while the other stays in one of its positions.

    The other blade seats anew at every angle, for the spring moves under it. Stress is the worst of
    the whole spring and its stations are the first blade's, for either blade; contacts are from
    the blade's own pivot, energy is of the whole spring.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[str, list[Position], list[StrokeReport], Travel, float, float]:
        ...
    def __init__(self, *, other: str = '', positions: collections.abc.Sequence[Position] = ..., strokes: collections.abc.Sequence[StrokeReport] = ..., travel: Travel = ..., other_force_low_n: typing.SupportsFloat | typing.SupportsIndex = 0.0, other_force_high_n: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[str, collections.abc.Sequence[Position], collections.abc.Sequence[StrokeReport], Travel, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex]) -> None:
        ...
    @property
    def other(self) -> str:
        """
        position of the other blade
        """
    @property
    def other_force_high_n(self) -> float:
        """
        greatest force on the other end meanwhile [N]
        """
    @property
    def other_force_low_n(self) -> float:
        """
        least force on the other end meanwhile [N]
        """
    @property
    def positions(self) -> list[Position]:
        """
        open, half_stop (where there is one), closed
        """
    @property
    def strokes(self) -> list[StrokeReport]:
        """
        opening, in turn
        """
    @property
    def travel(self) -> Travel:
        """
        the worst between closed and open
        """
class TwoCheck:
    """
    Everything a check of a spring with two blades says.
    """
    __hash__: typing.ClassVar[None] = None  # type: ignore[assignment]
    def __eq__(self, arg0: typing.Any) -> typing.Any:
        ...
    def __getstate__(self) -> tuple[list[Beside], list[Beside], float, float, float, list[TargetResult], list[Notice]]:
        ...
    def __init__(self, *, first: collections.abc.Sequence[Beside] = ..., second: collections.abc.Sequence[Beside] = ..., first_stiffness_n_per_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, second_stiffness_n_per_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, cross_rad_per_nmm: typing.SupportsFloat | typing.SupportsIndex = 0.0, targets: collections.abc.Sequence[TargetResult] = ..., notices: collections.abc.Sequence[Notice] = ...) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def __setstate__(self, arg0: tuple[collections.abc.Sequence[Beside], collections.abc.Sequence[Beside], typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex, collections.abc.Sequence[TargetResult], collections.abc.Sequence[Notice]]) -> None:
        ...
    @property
    def cross_rad_per_nmm(self) -> float:
        """
        two pins: turn of one root per moment at the other
        """
    @property
    def first(self) -> list[Beside]:
        """
        the first blade, a row for each of the other's rests
        """
    @property
    def first_stiffness_n_per_mm(self) -> float:
        """
        at its pivot, the other tang still [N/mm]
        """
    @property
    def notices(self) -> list[Notice]:
        """
        what a maker should know
        """
    @property
    def second(self) -> list[Beside]:
        """
        the second blade, likewise
        """
    @property
    def second_stiffness_n_per_mm(self) -> float:
        """
        at its pivot, the other tang still [N/mm]
        """
    @property
    def targets(self) -> list[TargetResult]:
        """
        those the design states, the worst of all rows
        """
def allowance(design: Design, target_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0254, unknowns: FitUnknowns = ...) -> Allowance:
    """
    The unloaded readings that come out at a wanted loaded reading.

    Each position's own face is moved until its loaded reading is the target: the half-stop face,
    and on the closed side the kick where it bears, else the closed face. What that tang reads with
    the rear pin out is the allowance.

    Parameters
    ----------
    target_mm
        loaded reading wanted [mm], -1 to 1

    Raises
    ------
    InvalidInput
        with every broken rule
    NoConvergence
        no tang gives that reading
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
def as_measured(design: Design, measured: Measured, unknowns: FitUnknowns = ...) -> Design:
    """
    The design with its half-stop face and closed side moved so that it reads as measured.

    A kick moves with the closed face.

    Raises
    ------
    InvalidInput
        with every broken rule
    NoConvergence
        no tang of this design reads so
    """
def batch_chance(good: typing.SupportsInt | typing.SupportsIndex, count: typing.SupportsInt | typing.SupportsIndex, pieces: typing.SupportsInt | typing.SupportsIndex) -> BatchChance:
    """
    Chance that a whole batch is good, share^pieces, with 95 % limits.

    Parameters
    ----------
    good
        of the sample, 0 to count
    count
        size of the sample, at least 1
    pieces
        knives in the batch, at least 1

    Raises
    ------
    InvalidInput
        outside these

    Source
    ------
    limits after Clopper and Pearson, Biometrika 26 (1934), 404-413

    Notes
    -----
    the limits are those of random draws; quasi-random ones are steadier, so they are wide
    """
def batch_columns() -> list[str]:
    """
    Names of all results that many designs can be asked for.
    """
def bearing_pressures(design: Design) -> list[BearingPressure]:
    """
    How hard each part of the tang, and the pad's edges, bear over the travel, tang and spring of
    the same steel.

    Raises
    ------
    InvalidInput
        with every broken rule

    Source
    ------
    Hertz

    How hard each part of the tang, and the pad's edges, bear over a travel.

    Parameters
    ----------
    steps
        a sweep over the travel
    length_mm
        width over which spring and tang touch [mm], > 0
    modulus_mpa
        contact modulus [MPa], > 0

    Returns
    -------
    those that bear at all, in the order of Bearer

    Source
    ------
    Hertz

    Notes
    -----
    the spring's own curvature is left out (radius over 100 times the corner's); greatest
    force of the steps, 0.1 % below the true one at one degree
    """
def bend_by_force(spring: Spring, loads: collections.abc.Sequence[Load], yield_mpa: typing.SupportsFloat | typing.SupportsIndex) -> BentSpring:
    """
    Bends a spring by forces and lets it go.

    Curvature follows the moment section by section; what stays of it is summed along the whole
    spring, rear span included, by the unit-load theorem. Shear and the root stay elastic.

    Parameters
    ----------
    loads
        ahead of the middle pin, outward
    yield_mpa
        [MPa], > 0

    Raises
    ------
    OutOfRange
        forces that no elastic, perfectly plastic spring can bear

    Source
    ------
    unit-load theorem; elastic, perfectly plastic bending
    """
def bend_by_hold(spring: Spring, holds: collections.abc.Sequence[Hold], yield_mpa: typing.SupportsFloat | typing.SupportsIndex) -> BentSpring:
    """
    Holds a spring away from its free shape and lets it go.

    The forces are those at which elastic and plastic movement together make the rise. Where a
    section has no more to give, it turns as a hinge without more force.

    Parameters
    ----------
    holds
        one or two
    yield_mpa
        [MPa], > 0

    Raises
    ------
    InvalidInput
        none, or more than two

    Source
    ------
    unit-load theorem; elastic, perfectly plastic bending
    """
def bend_section(section: PlasticSection, moment_nmm: typing.SupportsFloat | typing.SupportsIndex) -> SectionBend:
    """
    Curvature and elastic core of a section under a moment.

    Whole or with the hole on the mid-line, in closed form: the core's half height y solves
    y^3 - 3 q h^2 y + 2 a^3 = 0 with q = 1 - M / (sY b h^2), h half the thickness and a half the
    chord; without a hole y = h sqrt(3 - 2 M/My). k = sY / (E y). With the hole off the mid-line the
    neutral axis moves, and y and axis are found by search to rounding error.

    Parameters
    ----------
    moment_nmm
        [N mm], 0 to less than the plastic moment

    Raises
    ------
    OutOfRange
        a moment the section cannot bear

    Source
    ------
    elastic, perfectly plastic bending; plane sections
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
def check_many(design: Design, changes: collections.abc.Sequence[Change], threads: typing.SupportsInt | typing.SupportsIndex = 0, chunk_rows: typing.SupportsInt | typing.SupportsIndex = 256, columns: collections.abc.Sequence[str] = [], report: collections.abc.Callable[[int], None] | None = None) -> Batch:
    """
    Checks many designs that differ from one in some numbers.

    Each row is what check() says of that design, to 1e-6 of the value, from fewer blade angles. A
    row depends on its own numbers only: the same to the last bit in any company and on any number
    of threads. A bad row has a status and does not throw.

    Parameters
    ----------
    changes
        at least one, all of one length, each key once
    keep_going
        asked by the calling thread with the number of rows done, several times a
        second and at the end; false stops, and rows not done say so

    Raises
    ------
    InvalidInput
        no such dimension or column, or the design has none to change
    """
def check_two(two: TwoBlades, step_deg: typing.SupportsFloat | typing.SupportsIndex = 1.0) -> TwoCheck:
    """
    Checks both blades of a spring, each with the other in every position it has.

    Loaded readings are relative to the spring with both blades open: a blade that opens moves the
    back at the other end as well. Unloaded readings are of a spring that turns on the blade's own
    pin and lies on its tang, the other blade out.

    Parameters
    ----------
    step_deg
        grid on which peaks are first looked for [deg], 0.05 to 5

    Raises
    ------
    InvalidInput
        with every broken rule
    NoConvergence
        the other blade loses its rest between two steps that have one

    Notes
    -----
    set, fatigue, local stress, wear and rap are not judged
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
def contact_modulus_mpa(one: Elastic, other: Elastic) -> float:
    """
    Modulus that two bodies share in contact: 1/E* = (1 - nu1^2)/E1 + (1 - nu2^2)/E2.

    Returns
    -------
    [MPa]

    Source
    ------
    Hertz
    """
def cross_rotation_rad_per_nmm(spring: Spring) -> float:
    """
    Rotation at one of two pins for a unit moment from the overhang beyond the other.

    R_AB = (1/L^2) [int u (L - u)/(E I) ds - int ds/(kappa G A)] over the span L between the pins, u
    from one of them; the same both ways. Moments that bend the ends outward and turns that lift
    them are positive.

    Parameters
    ----------
    spring
        with support by two pins

    Returns
    -------
    [rad/(N mm)]

    Source
    ------
    unit-load theorem, Maxwell's reciprocity; shear after Timoshenko, kappa = 5/6
    """
def curvature_factors(thickness_mm: typing.SupportsFloat | typing.SupportsIndex, inner_radius_mm: typing.SupportsFloat | typing.SupportsIndex) -> CurvatureFactors:
    """
    How much a bend in the spring raises the stress of the hollow face and lowers the round one's.

    Parameters
    ----------
    thickness_mm
        [mm], > 0
    inner_radius_mm
        [mm], > 0

    Raises
    ------
    InvalidInput
        with every broken rule

    Source
    ------
    Winkler-Bach
    """
def curved_stress(section: CurvedSection, moment_nmm: typing.SupportsFloat | typing.SupportsIndex, normal_n: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> CurvedStress:
    """
    Stress in a curved spring: N/A + M (r_n - r)/(A shift r).

    Parameters
    ----------
    moment_nmm
        + straightens: tension on the hollow face [N mm]
    normal_n
        through the middle of the section, + pulls [N]

    Source
    ------
    Winkler-Bach

    Notes
    -----
    circles about one centre and plane sections; stress across the thickness is left out
    """
def cycle_between(min_mpa: typing.SupportsFloat | typing.SupportsIndex, max_mpa: typing.SupportsFloat | typing.SupportsIndex) -> StressCycle:
    """
    The cycle between a least and a greatest stress.
    """
def cycles_to_failure(line: SnLine, reversed_mpa: typing.SupportsFloat | typing.SupportsIndex) -> float | None:
    """
    Cycles that a reversed stress is borne.

    (Sf/a)^(1/b) from 10^3 to 10^6 cycles; 0 where the first one breaks.

    Parameters
    ----------
    reversed_mpa
        amplitude without mean stress [MPa], >= 0

    Returns
    -------
    nothing at or below the endurance limit: no end is foreseen

    Source
    ------
    shigley-9

    Notes
    -----
    hard steel has no true limit: from 10^8 cycles on it can still break from inside
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
def depth_for_pull(design: Design, face: GrindFace, region: GrindRegion | None, pull_n: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Depth to take off a face for a wanted peak pull.

    Pull falls as steel goes, so there is one depth at most; found to rounding error.

    Parameters
    ----------
    region
        none: the face's whole free length
    pull_n
        peak pull wanted, opening [N], > 0

    Returns
    -------
    [mm], to be taken off `design`

    Raises
    ------
    InvalidInput
        a bad design, region or pull, or no nail nick
    NoConvergence
        grinding cannot get there: says why, and which preload would
    """
def design_endurance_mpa(tensile_mpa: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Endurance limit of a polished rotating bar as design takes it: half the tensile strength, at
    most 700 MPa.

    Parameters
    ----------
    tensile_mpa
        [MPa], > 0

    Returns
    -------
    [MPa]

    Source
    ------
    shigley-9

    Notes
    -----
    from about 42 HRC up more hardness buys yield strength, but no endurance
    """
def design_map(design: Design, x: SizeDimension, x_mm: typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], y: SizeDimension, y_mm: typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"]) -> DesignMap:
    """
    Works out every pair of sizes.

    A pair that breaks a rule of a design or does not work as a slip joint is NaN.

    Parameters
    ----------
    x_mm, y_mm
        sizes, at least one each, finite, at most a million pairs

    Raises
    ------
    InvalidInput
        a dimension that cannot be sized, sizes that are none, too many pairs
    """
def dimension_value(design: Design, key: str) -> float | None:
    """
    The number as it is; nothing where there is none, or several that differ.

    Raises
    ------
    InvalidInput
        no dimension has this key
    """
def dimensions() -> list[Dimension]:
    """
    Every number in which designs can differ, in the order in which they are set.

    Besides keys of a design file: "spring.thickness" makes one thickness of a whole profile,
    "spring.thickness_scale" and "spring.thickness_offset" keep its shape. "spring.yield" takes its
    band along in proportion, "spring.rear_pin" the rear pin's hole.
    """
def equivalent_diameter_mm(width_mm: typing.SupportsFloat | typing.SupportsIndex, thickness_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Diameter of the rotating bar that has as much highly stressed metal as a bent strip.

    d_e = 0.808 sqrt(h b).

    Returns
    -------
    [mm]

    Source
    ------
    shigley-9
    """
def farthest(spread: Spread) -> float:
    """
    Farthest departure that a worst case counts with: three standard deviations, or the half-width.

    Notes
    -----
    three standard deviations hold 99.73 % of a normal spread
    """
def fatigue(input: FatigueInput) -> Fatigue:
    """
    Fatigue of the spring at one place, over the travel of the blade.

    Opening and closing pass each crest once, so one opening is two cycles for each stroke, each
    counted from the lowest stress of the travel to the highest: cautious where one crest is lower.

    Margins hold for the wanted reliability, with the design endurance limit; their bands reach over
    the bands of tensile and yield stress and of the strength at 10^3 cycles. The life's value is
    the typical spring: mean endurance limit, smax sa criterion. Its low and high are the shortest
    and longest that Goodman, Gerber, SWT and Walker give with the endurance limit one standard
    deviation down or up and the other bands at their ends, all at once: an envelope, not odds.

    Raises
    ------
    InvalidInput
        with every broken rule
    OutOfRange
        a temperature or reliability without data

    Source
    ------
    shigley-9, dowling-2009

    Notes
    -----
    in air, without rust: pits and sweat leave no endurance limit
    """
def fatigue_notch_factor(factor: typing.SupportsFloat | typing.SupportsIndex, sensitivity: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Fatigue notch factor Kf = 1 + q (Kt - 1).

    Parameters
    ----------
    factor
        Kt, local over nominal stress
    sensitivity
        q, from notch_sensitivity

    Source
    ------
    shigley-9
    """
def fatigue_strength_mpa(line: SnLine, cycles: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Reversed stress that is borne for a number of cycles.

    a N^b from 10^3 to 10^6, a = (f Sut)^2/Se, b = -(1/3) log10(f Sut/Se); Sut N^(log10(f)/3) below.

    Parameters
    ----------
    cycles
        >= 1

    Returns
    -------
    [MPa]

    Raises
    ------
    OutOfRange
        fewer than one cycle

    Source
    ------
    shigley-9
    """
def faults(design: Design) -> list[Fault]:
    """
    Every broken rule of a design, by the keys of a design file.

    Every broken rule, by the keys of a design file.
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
def find_kinks(profile: collections.abc.Sequence[Station]) -> list[Kink]:
    """
    Kinks of a belly that turn inward: a steep stretch that goes over into a flatter one, say.

    Parameters
    ----------
    profile
        thickness along the spring, the back straight

    Returns
    -------
    none at steps, which are shoulders, and none that turn outward: those carry
    less than the beam says
    """
def find_shoulders(profile: collections.abc.Sequence[Station]) -> list[Shoulder]:
    """
    Steps of the thickness: two stations at one place.
    """
def first_yield_factor(cycle: StressCycle, yield_mpa: typing.SupportsFloat | typing.SupportsIndex) -> float | None:
    """
    How many times the cycle can grow before the first one yields, Sy/(sa + |sm|).

    Returns
    -------
    nothing without stress

    Source
    ------
    shigley-9
    """
def first_yield_pressure_mpa(yield_mpa: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Peak pressure at which a line contact begins to yield below the surface: 1.79 sY (von Mises).

    Parameters
    ----------
    yield_mpa
        of the softer body [MPa]

    Returns
    -------
    [MPa]

    Source
    ------
    from memory; the stresses of stress_below give it for nu = 0.3

    Notes
    -----
    not failure: the first passes work-harden and round the corner, and up to 4 sY/sqrt(3)
    (2.31 sY, from memory) it then stays elastic without friction
    """
def first_yield_pressure_of_hardness_mpa(vickers_hv: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    The same limit where only the hardness is known: sY taken as a third of the hardness, so 0.6 of
    the hardness pressure 9.807 HV.

    Parameters
    ----------
    vickers_hv
        of the softer body

    Returns
    -------
    [MPa]

    Source
    ------
    from memory
    """
def fit_plan(now: Design, state: FitState, rules: PlanRules = ..., unknowns: FitUnknowns = ...) -> FitPlan:
    """
    Plans the least removal that brings a knife to its target, proud rather than low.

    The aim is a hair above the target: 0.001 mm, or three quarters of the repeatability. A pass
    takes off all but the reserve; a face with 0.0254 mm or less to go is taken to the aim in one,
    if ten repeatabilities are less than that. Done: within 0.0015 mm above the target, or within
    one repeatability. No depth is planned to bring a reading nearer than that.

    A reading that is low can only be met by lowering the open face, which raises the others and
    costs preload; a notice says what that does.

    Parameters
    ----------
    now
        as it stands, from as_measured() or a fitting log
    state
        state that the dial's readings are expected in

    Raises
    ------
    InvalidInput
        with every broken rule
    NoConvergence
        a face's steel runs out before the target is met: says which

    Plans from measured readings: fit_plan() of as_measured().
    """
def fit_readings(design: Design, unknowns: FitUnknowns = ...) -> FitReadings:
    """
    Readings of a design as it stands, loaded and unloaded.

    Tilt turns the free working face about the pivot's station. Root rotation adds to the spring's
    own. Play: under load the pin is pressed to one side in every position alike; with the rear pin
    out the hand holds the blade, and only the stop at open pushes it away from the spring, so that
    both readings come out higher by half the play times dial/a_p.

    Raises
    ------
    InvalidInput
        with every broken rule of the design

    Notes
    -----
    the model of play is common practice's picture of it, no source
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
def galling_caution(tang_hrc: typing.SupportsFloat | typing.SupportsIndex, spring_hrc: typing.SupportsFloat | typing.SupportsIndex) -> bool:
    """
    Whether the hardness of tang and spring is so far apart that they are said to gall.

    Source
    ------
    common practice, no source: told of stainless parts
    """
def gradient(design: Design) -> Gradient:
    """
    Gradient of peak torque and pull, stiffness, worst stress of the travel, yield margin and
    readings in every number of a design.

    A contact sees the design through few numbers: compliance integrals up to where the tang bears,
    the arc that bears, the face. Contact's own gradient in these is analytic and implicit: places,
    forces and rests move with them. How these few follow from a number of the design is explicit
    and is differenced centrally, to 1e-9, without solving a contact again.

    Besides the keys of dimensions(): "tang.corner_open" and "tang.corner_closed", one rear corner
    alone. Results and numbers that the design does not have are left out.

    Raises
    ------
    InvalidInput
        with every broken rule

    Source
    ------
    envelope theorem; implicit function theorem

    Notes
    -----
    a peak that sits where the tang passes from one face to another is a kink, and is taken
    as if its angle stayed
    """
def grind(design: Design, cut: Cut) -> Design:
    """
    The design after a cut.

    Thickness is given about a working face that is straight, so a cut of the back or the belly
    changes only the thickness: even depth, a step at each end of the region that lies within the
    spring. Over a pin hole the mid-line moves by half the depth, so the hole's offset changes by
    +depth/2 (back) or -depth/2 (belly): the hole stays where it is.

    The pad is ground so that it lies flat on the open face again with the rear pin out. Its new
    plane is then turned about the middle pin: depth x/a_p at station x, which is `depth` at the
    pivot station a_p. Preload falls by `depth`, so that with both pins in the back of the free
    spring, face + thickness, stays where it was: exact, not an estimate.

    Raises
    ------
    InvalidInput
        with every fault: depth, region, no steel left, a hole opened, no preload

    Source
    ------
    geometry, small slopes

    Notes
    -----
    a region that ends inside a pin hole moves the whole hole's offset: exact for the part
    that is ground, which is the thinner; 0.2 mm at the Heron's middle pin puts stiffness off
    by 0.02 %
    an even pass over the pad leaves it out of flat by depth/a_p (0.003 rad for 0.1 mm at
    32 mm), and the preload at station x falls by depth instead of depth x/a_p
    """
def grind_flush(design: Design, liners: LinerLine | None = None, pass_mm: typing.SupportsFloat | typing.SupportsIndex = 0.05) -> Flush:
    """
    Takes off the back all that stands proud of the liners with the blade open, pins in.

    Height of the loaded back = free working face + deflection + thickness, the working face being
    straight. A thinner spring bends more, so each pass is followed by a new solution, until no more
    than 0.001 mm stands proud.

    Parameters
    ----------
    liners
        none: the liners follow the back as it lies at open with the rear pin out, so
        that proud is what loading lifts
    pass_mm
        most that one pass takes off [mm], > 0

    Raises
    ------
    InvalidInput
        a bad design, line or pass
    NoConvergence
        before it is flush a pin hole would open or no steel be left

    Notes
    -----
    ahead of the middle pin only; the bulge between the pins (about 0.03 mm) is left out
    """
def grind_passes(depth_mm: typing.SupportsFloat | typing.SupportsIndex, pass_mm: typing.SupportsFloat | typing.SupportsIndex) -> int:
    """
    Passes that take a depth off at a depth per pass; the last may be lighter.

    Parameters
    ----------
    depth_mm
        to take off [mm], >= 0
    pass_mm
        depth per pass [mm], > 0

    Raises
    ------
    InvalidInput
        a pass not greater than 0, or more than 10 000 of them
    """
def grind_table(design: Design, cut: Cut, step_mm: typing.SupportsFloat | typing.SupportsIndex) -> list[GrindRow]:
    """
    Pull, stress, margin and readings against the depth taken off one face.

    Parameters
    ----------
    cut
        face, region and full depth
    step_mm
        between rows [mm], > 0; the last row is the full depth

    Returns
    -------
    first row: nothing removed

    Raises
    ------
    InvalidInput
        as grind() does, a step not greater than 0, or more than 10 000 rows
    """
def groove_factor(thickness_mm: typing.SupportsFloat | typing.SupportsIndex, depth_mm: typing.SupportsFloat | typing.SupportsIndex, radius_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Factor of two opposite round-bottomed grooves, on the net section's bending stress.

    C1 + C2 x + C3 x^2 + C4 x^3, x = 2 h/D, the C from h/r in two ranges.

    Parameters
    ----------
    thickness_mm
        D, beside the grooves [mm]
    depth_mm
        h, of each groove [mm]
    radius_mm
        r, of the bottom [mm]

    Raises
    ------
    OutOfRange
        h/r outside 0.25 to 50, or grooves that meet

    Source
    ------
    roark

    Notes
    -----
    within 10 % of plane-stress models with h/D from 0.02 to 0.4
    """
@typing.overload
def hardness_after_heat(fit: TemperFit, temper: Heat, later: Heat) -> HeatEffect:
    """
    Hardness left when a tempered part is heated once more, as by a hot moment at the grinder.

    The temper is turned into the time at the later temperature that has the same P; the later time
    is added to it. Below the fit's coolest temperature nothing changes in a stay no longer than
    the temper.

    Parameters
    ----------
    fit
        the steel's fit
    temper
        the first heat, within the fit
    later
        up to the fit's hottest and longest; may be shorter than its shortest

    Raises
    ------
    OutOfRange
        outside the fit, or softer than its softest point

    Source
    ------
    hollomon-jaffe-1945

    Notes
    -----
    The fit leaves out stays under 600 s. P itself stays inside the fitted range, so a
    shorter one is answered, and marked as extrapolated in time. Heating up and cooling down are
    not counted: take the time near the top.

    Hardness left when a tempered part is heated once more: at or below the temper nothing changes.

    Parameters
    ----------
    table
        the steel's table
    temper_c
        the first heat, within the table
    later_c
        up to the temper

    Returns
    -------
    [HRC]

    Raises
    ------
    OutOfRange
        above the temper: a table cannot say what time does there
    InvalidInput
        for a table that is none

    Notes
    -----
    A stay at the temper that is longer than the hold softens a little more.
    """
@typing.overload
def hardness_after_heat(table: TemperTable, temper_c: typing.SupportsFloat | typing.SupportsIndex, later_c: typing.SupportsFloat | typing.SupportsIndex) -> Band:
    """
    Hardness left when a tempered part is heated once more, as by a hot moment at the grinder.

    The temper is turned into the time at the later temperature that has the same P; the later time
    is added to it. Below the fit's coolest temperature nothing changes in a stay no longer than
    the temper.

    Parameters
    ----------
    fit
        the steel's fit
    temper
        the first heat, within the fit
    later
        up to the fit's hottest and longest; may be shorter than its shortest

    Raises
    ------
    OutOfRange
        outside the fit, or softer than its softest point

    Source
    ------
    hollomon-jaffe-1945

    Notes
    -----
    The fit leaves out stays under 600 s. P itself stays inside the fitted range, so a
    shorter one is answered, and marked as extrapolated in time. Heating up and cooling down are
    not counted: take the time near the top.

    Hardness left when a tempered part is heated once more: at or below the temper nothing changes.

    Parameters
    ----------
    table
        the steel's table
    temper_c
        the first heat, within the table
    later_c
        up to the temper

    Returns
    -------
    [HRC]

    Raises
    ------
    OutOfRange
        above the temper: a table cannot say what time does there
    InvalidInput
        for a table that is none

    Notes
    -----
    A stay at the temper that is longer than the hold softens a little more.
    """
@typing.overload
def hardness_after_temper(fit: TemperFit, temper: Heat) -> Band:
    """
    Hardness after one temper.

    Parameters
    ----------
    fit
        the steel's fit
    temper
        within the fit's temperatures and times

    Returns
    -------
    [HRC]

    Raises
    ------
    OutOfRange
        outside the fit, or softer than its softest point
    InvalidInput
        for a fit whose deviation is not greater than 0

    Source
    ------
    hollomon-jaffe-1945

    Hardness after one temper.

    Parameters
    ----------
    table
        the steel's table
    temper_c
        within the table
    time_h
        judged against the table's hold when both are known; not counted otherwise

    Returns
    -------
    [HRC]

    Raises
    ------
    OutOfRange
        outside the table or its times
    InvalidInput
        for a table that is none
    """
@typing.overload
def hardness_after_temper(table: TemperTable, temper_c: typing.SupportsFloat | typing.SupportsIndex, time_h: typing.SupportsFloat | typing.SupportsIndex | None = None) -> Band:
    """
    Hardness after one temper.

    Parameters
    ----------
    fit
        the steel's fit
    temper
        within the fit's temperatures and times

    Returns
    -------
    [HRC]

    Raises
    ------
    OutOfRange
        outside the fit, or softer than its softest point
    InvalidInput
        for a fit whose deviation is not greater than 0

    Source
    ------
    hollomon-jaffe-1945

    Hardness after one temper.

    Parameters
    ----------
    table
        the steel's table
    temper_c
        within the table
    time_h
        judged against the table's hold when both are known; not counted otherwise

    Returns
    -------
    [HRC]

    Raises
    ------
    OutOfRange
        outside the table or its times
    InvalidInput
        for a table that is none
    """
def has_dimension(design: Design, key: str) -> bool:
    """
    Whether a design has such a number to change: a half-stop face, a kick, a pin hole.

    Raises
    ------
    InvalidInput
        no dimension has this key
    """
def hole_edge_stress(thickness_mm: typing.SupportsFloat | typing.SupportsIndex, width_mm: typing.SupportsFloat | typing.SupportsIndex, hole: Hole, moment_nmm: typing.SupportsFloat | typing.SupportsIndex) -> LocalStress:
    """
    Largest stress at the edge of a pin hole in a bent spring, on the side nearer a face.

    The net section gives the stress s0 at the hole's centre and its change 's1' from there to the
    hole's edge. A hole in the middle has s0 = 0 and twice the nominal stress, 2 s1. One off the
    mid-line adds k s0: k is the tension factor of a hole as near to both faces as this one is to
    the near face. For a small hole that is the exact 3 s0 + 2 s1.

    Parameters
    ----------
    thickness_mm
        whole thickness at the hole [mm]
    width_mm
        across the liners [mm]
    moment_nmm
        + bends the pad outward: tension on the belly [N mm]

    Returns
    -------
    nominal is the net section's stress at that edge; both edges of a hole in
    the middle carry the same: the one in tension is told

    Raises
    ------
    OutOfRange
        diameter over 0.75 of the thickness, or less than a tenth of the thickness
        left between hole and near face

    Source
    ------
    roark for the hole in the middle; derived for the small one off the mid-line

    Notes
    -----
    within 5 % of plane-stress models with a free hole. With the pin bearing in it, at the
    middle pin of a tapered spring, within 5 % with an overhang of 32 mm and at most 10 %
    high with one of 16 mm, diameters 0.3 to 0.65 of the thickness. A hole without moment
    is not covered: at the rear pin bearing and shear raise the edge to at most a quarter
    of the middle pin's
    """
def hole_tension_factor(diameter_ratio: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Factor of a round hole in the middle of a strip in tension, on the net section's stress.

    3 - 3.13 x + 3.66 x^2 - 1.53 x^3, x the hole's diameter over the strip's depth.

    Parameters
    ----------
    diameter_ratio
        x, 0 to 1

    Raises
    ------
    OutOfRange
        outside

    Source
    ------
    roark
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
def influence(design: Design, face: GrindFace = ..., spacing_mm: typing.SupportsFloat | typing.SupportsIndex = 0.5) -> Influence:
    """
    Change of results for 0.1 mm taken off one mm of the spring's length, at every station.

    Analytic: at a station the flexibility rises by d(1/(E I)) = 3/(E I t) and d(1/(kappa G A)) =
    1/(kappa G A t) per mm taken off a whole section, by the net section's own rates where a hole
    passes; what a contact makes of that is its implicit gradient. Each station stands for what
    tapers off in a straight line to its neighbours. The sum of changes x lengths is that of a pass
    over all of them. Preload stays as it is.

    Parameters
    ----------
    face
        back, or belly: then up to the pad, whose grinding would take preload
    spacing_mm
        between stations, at most [mm], 0.05 to 20

    Raises
    ------
    InvalidInput
        the pad as face, or with every broken rule

    Source
    ------
    unit-load theorem, differentiated

    Notes
    -----
    the worst station's own thinning raises the stress at once; it shows in the stations next
    to it, the higher the closer they are
    readings with the rear pin out do not change: that spring is rigid
    """
def kink_factor(angle_rad: typing.SupportsFloat | typing.SupportsIndex, thickness_mm: typing.SupportsFloat | typing.SupportsIndex, root_radius_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Factor of a belly kink with a root radius, on the bending stress of the section there.

    K = (0.9 t/(r a))^(2 a/(pi + 2 a)), at least 1. The arc of the root is r a long; the exponent is
    that of the stress at a sharp corner of solid angle pi + a, to second order in a. The 0.9 is
    ours, fitted against plane-stress models.

    Parameters
    ----------
    angle_rad
        the belly turns by, to 45 degrees; 0 or less, outward, gives 1 [rad]
    thickness_mm
        where the stretches meet [mm]
    root_radius_mm
        0.01 thickness or more [mm]

    Raises
    ------
    OutOfRange
        a larger angle or a smaller root radius

    Source
    ------
    derived

    Notes
    -----
    within 2 % of plane-stress models up to 20 degrees, within 4 % up to 45; both stretches
    at least as long as the thickness. A kink nearer than that adds to it when it turns
    inward too
    """
def least_corner_radius_mm(force_n: typing.SupportsFloat | typing.SupportsIndex, length_mm: typing.SupportsFloat | typing.SupportsIndex, modulus_mpa: typing.SupportsFloat | typing.SupportsIndex, limit_mpa: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Smallest radius that keeps the peak pressure at a limit: R = F E* / (pi L p0^2).

    Parameters
    ----------
    force_n
        [N], >= 0
    length_mm
        [mm], > 0
    modulus_mpa
        contact modulus [MPa], > 0
    limit_mpa
        peak pressure allowed [MPa], > 0

    Returns
    -------
    [mm]

    Raises
    ------
    InvalidInput
        with every broken rule

    Source
    ------
    Hertz

    Notes
    -----
    a rounder corner also lifts the spring a little less, so it errs to the safe side
    """
def line_contact(force_n: typing.SupportsFloat | typing.SupportsIndex, length_mm: typing.SupportsFloat | typing.SupportsIndex, radius_mm: typing.SupportsFloat | typing.SupportsIndex, modulus_mpa: typing.SupportsFloat | typing.SupportsIndex) -> LineContact:
    """
    Line contact of a round on a flat.

    a = sqrt(4 F R / (pi L E*)), p0 = 2 F / (pi a L). A sharp edge, R = 0, has no width and an
    infinite pressure: it peens or wears until it is round. A flat, R infinite, has none.

    Parameters
    ----------
    force_n
        [N], >= 0
    length_mm
        of the line, the width of spring and tang [mm], > 0
    radius_mm
        [mm], >= 0
    modulus_mpa
        contact modulus [MPa], > 0

    Raises
    ------
    InvalidInput
        with every broken rule

    Source
    ------
    Hertz; greatest shear 0.3003 p0 at 0.7861 a

    Notes
    -----
    both ends of the line carry more; friction brings the greatest shear to the surface
    """
def loading_factor(loading: Loading) -> float:
    """
    Share of the endurance limit in bending that another kind of loading leaves.

    Source
    ------
    shigley-9
    """
def local_spreads(design: Design, spreads: collections.abc.Sequence[Spread], columns: collections.abc.Sequence[str]) -> list[LocalSpread]:
    """
    Root-sum-square and worst case of each result.

    Slopes are central differences over a hundredth of each tolerance. The worst case is checked
    with every dimension at that end of its tolerance which its slope says, see farthest().

    Parameters
    ----------
    columns
        results, see batch_columns()

    Returns
    -------
    as asked for; NaN where the design has no such result

    Raises
    ------
    InvalidInput
        see require_spreads() and check_many()
    """
def local_stress(nominal_mpa: typing.SupportsFloat | typing.SupportsIndex, factor: typing.SupportsFloat | typing.SupportsIndex, station_mm: typing.SupportsFloat | typing.SupportsIndex) -> LocalStress:
    """
    A nominal stress with its notch factor applied.

    Parameters
    ----------
    nominal_mpa
        tension positive [MPa]
    factor
        from kink_factor, one_sided_shoulder_factor and the like
    station_mm
        [mm]
    """
def make_curved_section(width_mm: typing.SupportsFloat | typing.SupportsIndex, thickness_mm: typing.SupportsFloat | typing.SupportsIndex, inner_radius_mm: typing.SupportsFloat | typing.SupportsIndex) -> CurvedSection:
    """
    Section of a curved spring: r_n = t/ln(ro/ri), shift = r_c - r_n.

    Parameters
    ----------
    width_mm
        [mm], > 0
    thickness_mm
        [mm], > 0
    inner_radius_mm
        of the hollow face [mm], > 0

    Raises
    ------
    InvalidInput
        with every broken rule

    Source
    ------
    Winkler-Bach
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
def make_plastic_section(width_mm: typing.SupportsFloat | typing.SupportsIndex, thickness_mm: typing.SupportsFloat | typing.SupportsIndex, youngs_modulus_mpa: typing.SupportsFloat | typing.SupportsIndex, yield_mpa: typing.SupportsFloat | typing.SupportsIndex, chord_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0, offset_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> PlasticSection:
    """
    Section with what it bears.

    My = sY I / c; Mp = sY b int |y - z| dy, z the line that halves the area: 1.5 My for a whole
    rectangle.

    Parameters
    ----------
    width_mm
        across the liners [mm], > 0
    thickness_mm
        [mm], > 0
    youngs_modulus_mpa
        [MPa], > 0
    yield_mpa
        [MPa], > 0
    chord_mm
        taken away by the hole [mm], 0 to less than the thickness
    offset_mm
        hole's centre from the mid-line [mm]; the hole lies inside

    Raises
    ------
    InvalidInput
        with every broken rule

    Source
    ------
    elastic, perfectly plastic bending; plane sections
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
def make_sn_line(tensile_mpa: typing.SupportsFloat | typing.SupportsIndex, share_at_thousand: typing.SupportsFloat | typing.SupportsIndex, endurance_mpa: typing.SupportsFloat | typing.SupportsIndex) -> SnLine:
    """
    A line whose parts are in order.

    Parameters
    ----------
    share_at_thousand
        f, > 0 to less than 1

    Raises
    ------
    InvalidInput
        a strength not above 0, or an endurance limit not below f Sut
    """
def make_stress_probe(spring: Spring) -> StressProbe:
    """
    Finds the places once, so that the worst stress at every blade angle is cheap.
    """
def mean_endurance_mpa(tensile_mpa: typing.SupportsFloat | typing.SupportsIndex) -> Band:
    """
    Mean endurance limit of a polished rotating bar and one standard deviation to either side.

    0.506 Sut with 13.8 % of scatter up to 1460 MPa, 740 MPa with 13.9 % above.

    Parameters
    ----------
    tensile_mpa
        [MPa], > 0

    Returns
    -------
    [MPa]; two bars of three lie inside

    Source
    ------
    shigley-9
    """
def neuber_root_length(tensile_mpa: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Root of Neuber's length of a steel in bending, a measure of its grain.

    0.246 - 3.08e-3 S + 1.51e-5 S^2 - 2.67e-8 S^3 in inch^0.5, S in kpsi.

    Parameters
    ----------
    tensile_mpa
        tensile strength, 340 MPa or more [MPa]

    Returns
    -------
    [mm^0.5]; 0 above 1700 MPa, where the polynomial has come down to it

    Raises
    ------
    OutOfRange
        below 340 MPa

    Source
    ------
    shigley-9; the ends of its range from memory

    Notes
    -----
    the rounded metric form of the same polynomial lies within 0.01 mm^0.5
    """
def notch_sensitivity(tensile_mpa: typing.SupportsFloat | typing.SupportsIndex, root_radius_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Share of a notch's stress concentration that fatigue feels.

    q = 1/(1 + sqrt(a/r)).

    Parameters
    ----------
    tensile_mpa
        340 MPa or more [MPa]
    root_radius_mm
        > 0 [mm]

    Returns
    -------
    0 to 1; 1 above 1700 MPa, the hard spring feels all of it

    Raises
    ------
    OutOfRange
        below 340 MPa, or no root radius

    Source
    ------
    shigley-9

    Notes
    -----
    at 1700 MPa it steps up by 0.07 with a root radius of 0.1 mm, by 0.03
    with 0.5 mm
    """
def one_sided_groove_factor(thickness_mm: typing.SupportsFloat | typing.SupportsIndex, depth_mm: typing.SupportsFloat | typing.SupportsIndex, radius_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Factor of one round-bottomed groove across the spring, a file mark say.

    That of a bar with the same groove on both faces whose net section is one and a half times as
    thick. The one and a half is ours, fitted against plane-stress models.

    Parameters
    ----------
    thickness_mm
        beside the groove [mm]
    depth_mm
        [mm]
    radius_mm
        of the bottom [mm]

    Raises
    ------
    OutOfRange
        depth outside 0.02 to 0.2 or radius outside 0.02 to 0.3 of the thickness,
        or depth over radius outside 0.25 to 5

    Source
    ------
    roark

    Notes
    -----
    within 8 % of plane-stress models
    """
def one_sided_shoulder_factor(large_mm: typing.SupportsFloat | typing.SupportsIndex, small_mm: typing.SupportsFloat | typing.SupportsIndex, fillet_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Factor of one square shoulder with a fillet, the other face straight: a step of the belly.

    That of a bar with the same shoulder on both faces whose thin part is twice as thick. The twice
    is ours, fitted against plane-stress models.

    Parameters
    ----------
    large_mm
        thickness on the thick side [mm]
    small_mm
        on the thin side [mm]
    fillet_mm
        [mm]

    Raises
    ------
    OutOfRange
        step outside 0.05 to 2 or fillet outside 0.05 to 1 of the small thickness,
        or step over fillet outside 0.1 to 20

    Source
    ------
    roark

    Notes
    -----
    within 8 % of plane-stress models; the two-sided formula alone would be up to 18 % low
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
def permanent_set(design: Design, yield_mpa: typing.SupportsFloat | typing.SupportsIndex | None = None) -> PlasticSet:
    """
    The permanent set that opening a knife of this design leaves: plastic_set() over its travel.

    Parameters
    ----------
    yield_mpa
        none: the likely yield stress of the design's steel [MPa], > 0

    Raises
    ------
    InvalidInput
        with every broken rule
    """
def pin_forces(spring: Spring, loads: collections.abc.Sequence[Load]) -> PinForces:
    """
    Pin forces that hold the spring, with two pins.

    rear = M(0) / L_r; middle = sum P + rear.

    Source
    ------
    statics
    """
def pin_stress(input: PinInput) -> PinStress:
    """
    Mean shear stress of a pin and mean pressure in its holes.

    The pin is cut in two planes, one at each liner: shear 2 F/(pi d^2), against 0.577 yield. It
    presses with F/(d b) in the spring and F/(2 d t) in each liner, against the yield stress of the
    softer of the two.

    Raises
    ------
    InvalidInput
        with every broken rule

    Source
    ------
    shigley-9, hibbeler-10

    Notes
    -----
    bending of the pin is left out: liners and spring lie close and the pin is headed over
    """
def propose_taper(design: Design, pull_n: typing.SupportsFloat | typing.SupportsIndex, least_thickness_mm: typing.SupportsFloat | typing.SupportsIndex, stations: typing.SupportsInt | typing.SupportsIndex = 12) -> Taper:
    """
    The thickness with the least peak stress that gives a pull, all else as it is.

    For a given force and deflection the compliance is given; of all shapes that have it, the one
    with one stress all along has the least greatest stress. So each station gets the thickness at
    which the largest moment it sees while the blade turns makes one and the same stress: as the
    root of the distance from the load where the section is whole, thicker across a pin hole. A
    least thickness holds it up, before all along the pad. The common stress is then the one that
    gives the pull.

    Parameters
    ----------
    pull_n
        peak pull, opening [N]
    least_thickness_mm
        nowhere thinner [mm]
    stations
        between middle pin and pad, 2 to 200; as many behind the middle pin

    Raises
    ------
    InvalidInput
        a broken rule; no nail nick
    NoConvergence
        no shape between the limits gives the pull

    Source
    ------
    constant-strength beam; weakest-compliance argument as above

    Notes
    -----
    the profile is straight between its stations, so the stress between them is a little
    higher than at them: by (spacing / 4 distance from the load)^2 / 2 or so
    """
def quantiles() -> typing.Annotated[list[float], "FixedSize(7)"]:
    """
    Probabilities of lying lower at which a sample's values are told.
    """
def quasi_random(index: typing.SupportsInt | typing.SupportsIndex, dimension: typing.SupportsInt | typing.SupportsIndex, seed: typing.SupportsInt | typing.SupportsIndex) -> float:
    """
    One coordinate of a scrambled point, greater than 0 and less than 1.

    Each digit is flipped by a hash of the digits before it, so a point needs no other point: the
    same on any number of threads. The net keeps its evenness, and its mean error over seeds is 0.

    Parameters
    ----------
    seed
        another one gives another, equally even set

    Source
    ------
    Owen, scrambled nets; by hash after Burley, J. Comput. Graph. Tech. 9(4) (2020), 1-20
    """
def readings_after_back_grind(design: Design, depth_mm: typing.SupportsFloat | typing.SupportsIndex, target_mm: typing.SupportsFloat | typing.SupportsIndex = 0.0254) -> BackGrindReadings:
    """
    What grinding the back does to the readings.

    The thinner spring presses less. What goes under load follows how its bending is shared out: an
    even depth off a taper leaves the thin end weaker against the root, and more goes there; a rear
    span that gives way less takes some of it back.

    Parameters
    ----------
    depth_mm
        taken off the back from the middle pin to the spring's end [mm], >= 0
    target_mm
        loaded reading wanted [mm]

    Raises
    ------
    InvalidInput
        with every broken rule, no steel left, a hole opened
    """
def readings_in(state: FitState, design: Design, unknowns: FitUnknowns = ...) -> Readings:
    """
    The readings of one state alone, as fit_readings() has them.

    Raises
    ------
    InvalidInput
        with every broken rule of the design
    """
def rear_reach_mm(tang: Tang) -> float:
    """
    How far the tang reaches behind the pivot when the blade is open.

    Returns
    -------
    [mm]
    """
def relative_radius_mm(one_mm: typing.SupportsFloat | typing.SupportsIndex, other_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Radius of the one round on a flat that touches as two rounds do: 1/R = 1/R1 + 1/R2.

    Parameters
    ----------
    one_mm
        [mm]
    other_mm
        infinite for a flat, negative for a hollow [mm]

    Returns
    -------
    [mm]

    Source
    ------
    Hertz
    """
def reliability_factor(reliability: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Share of the typical endurance limit that a given part of all springs reaches.

    1 - 0.08 z, z the normal distribution's quantile: a scatter of 8 % is taken.

    Parameters
    ----------
    reliability
        part that outlasts it, 0.5 to 0.999999

    Raises
    ------
    OutOfRange
        outside

    Source
    ------
    shigley-9
    """
def require_spreads(design: Design, spreads: collections.abc.Sequence[Spread]) -> None:
    """
    Refuses spreads that do not fit a design.

    Raises
    ------
    InvalidInput
        none at all, an unknown key, one given twice, a size below 0, a number the
        design does not have or has several of, more than 24 spreads
    """
def residual_curvature_per_mm(section: PlasticSection, moment_nmm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Curvature that stays when the moment has gone: k - M / (E I), 0 up to the yield moment.

    Parameters
    ----------
    moment_nmm
        greatest it has borne [N mm]

    Returns
    -------
    [1/mm]

    Raises
    ------
    OutOfRange
        a moment the section cannot bear
    """
def residual_stress(section: PlasticSection, moment_nmm: typing.SupportsFloat | typing.SupportsIndex) -> ResidualStress:
    """
    Stress that stays, 0 up to the yield moment.

    Parameters
    ----------
    moment_nmm
        greatest it has borne [N mm]

    Raises
    ------
    OutOfRange
        a moment the section cannot bear

    Notes
    -----
    it helps: the next bending to the same moment is elastic
    """
def reversed_stress_mpa(criterion: Criterion, cycle: StressCycle, strength: FatigueStrength) -> float:
    """
    Amplitude that does as much harm without mean stress.

    Returns
    -------
    [MPa]; infinite where the mean alone breaks or, for the ellipse, yields

    Source
    ------
    shigley-9, dowling-2009
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
def safety_factor(criterion: Criterion, cycle: StressCycle, strength: FatigueStrength) -> float | None:
    """
    How many times the whole cycle can grow before a criterion is met.

    A compressive mean is taken as none: no help is counted on.

    Returns
    -------
    nothing where no fatigue is foreseen: no amplitude and no mean, or never in tension

    Source
    ------
    shigley-9, dowling-2009

    Notes
    -----
    none of these looks at yielding: see first_yield_factor
    """
def second_end(two: TwoBlades) -> Design:
    """
    The second blade as a design of its own, on the spring turned round.
    """
def section_at(spring: Spring, x_mm: typing.SupportsFloat | typing.SupportsIndex) -> Section:
    """
    Net section at a station.
    """
def share_at_thousand(tensile_mpa: typing.SupportsFloat | typing.SupportsIndex) -> Band:
    """
    Share of the tensile strength that 10^3 cycles leave, f, with its band.

    f = 1.06 - 2.8e-3 S + 6.9e-6 S^2, S in kpsi, between 70 and 200 kpsi, level outside. The band
    reaches 5 % up, assumed, and 17 % down: strain-life constants of three hardened steels give 0.65
    to 0.74, below the curve's 0.78.

    Parameters
    ----------
    tensile_mpa
        [MPa], > 0

    Source
    ------
    shigley-9
    """
def shear_modulus_mpa(elastic: Elastic) -> float:
    """
    Shear modulus, G = E / (2 (1 + nu)).

    Returns
    -------
    [MPa]
    """
def shoulder_factor(large_mm: typing.SupportsFloat | typing.SupportsIndex, small_mm: typing.SupportsFloat | typing.SupportsIndex, fillet_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Factor of square shoulders with fillets on both faces, on the thin section's bending stress.

    C1 + C2 x + C3 x^2 + C4 x^3, x = 2 h/D, h = (D - d)/2, the C from h/r in two ranges.

    Parameters
    ----------
    large_mm
        D, thickness on the thick side [mm]
    small_mm
        d, on the thin side [mm]
    fillet_mm
        r [mm]

    Raises
    ------
    OutOfRange
        h/r outside 0.1 to 20, or a small side that is not smaller

    Source
    ------
    roark

    Notes
    -----
    a thick part shorter than 0.8 D/(r/d)^(1/4) concentrates less. Within 6 % of
    plane-stress models with D/d from 1.2 to 2 and r/d from 0.1 to 1; chart readings of
    other books differ by up to 8 %
    """
def size(design: Design, target: SizeTarget, dimensions: collections.abc.Sequence[SizeDimension]) -> SizeResult:
    """
    Finds the measures of a spring for a pull and a yield margin.

    One measure free: every size between its bounds that gives the pull, told apart by a scan and
    solved to rounding; those with too small a margin are dropped. Without a pull the margin itself
    is met. Two free measures: where pull and margin are both as wanted, by Newton's method on the
    gradient, and where the pull is as wanted with margin to spare on a bound. Measures that come in
    stock sizes are tried size by size.

    When nothing answers: the nearest design keeps to bounds, rules and margin and comes closest to
    the pull; when not even the margin can be had, it has the largest.

    Parameters
    ----------
    dimensions
        free measures, at most two besides those with stock sizes

    Raises
    ------
    InvalidInput
        a broken rule; a pull without a nail nick; no target; two free measures
        without both targets

    Notes
    -----
    an answer between two points of the scan that both lie on one side can be missed where
    the pull turns back within a thirtieth of the bounds
    """
def size_bounds(design: Design, dimension: SizeDimension) -> SizeBounds:
    """
    Limits as given, or else about the measure as it is: 0.4 to 2.5 times for thickness, width and
    preload, 0.75 to 1.3 times for pivot and length.
    """
def size_factor(diameter_mm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Share of the endurance limit that the size leaves, in bending or torsion, at most 1.

    1.24 d^-0.107 to 51 mm, 1.51 d^-0.157 beyond.

    Parameters
    ----------
    diameter_mm
        of a rotating bar, or equivalent [mm], > 0 to 254

    Raises
    ------
    OutOfRange
        above 254 mm

    Source
    ------
    shigley-9

    Notes
    -----
    1 below 2.79 mm, where the source ends: most knife springs
    """
def size_of(design: Design, dimension: SizeDimension) -> float:
    """
    The measure as it is [mm].
    """
def sliding_stress(contact: LineContact, friction: typing.SupportsFloat | typing.SupportsIndex) -> SlidingStress:
    """
    Greatest tension and compression in the face where one body slides on the other.

    Pressure p0 sqrt(1 - s^2) and friction mu times that give, in the face, the stress across the
    line -p0 (sqrt(1 - s^2) + 2 mu s), s from the middle over a.

    Parameters
    ----------
    friction
        coefficient mu, 0 to 1

    Raises
    ------
    OutOfRange
        a coefficient outside

    Source
    ------
    Hertz with the friction of a sliding strip, plane strain: derived
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
def sobol_bits(index: typing.SupportsInt | typing.SupportsIndex, dimension: typing.SupportsInt | typing.SupportsIndex) -> int:
    """
    One coordinate of a point of Sobol's sequence as a fraction of 2^32.

    Points come in the order of their index, not of its Gray code; 0 to 2^m - 1 are the same set.

    Parameters
    ----------
    index
        which point
    dimension
        which coordinate, 0 to 47

    Raises
    ------
    OutOfRange
        no such dimension

    Source
    ------
    Joe and Kuo, SIAM J. Sci. Comput. 30 (2008), 2635-2654
    """
def spring_allowables(steel: SpringSteel, cycles: typing.SupportsFloat | typing.SupportsIndex) -> list[SpringAllowable]:
    """
    What the trade's tables allow for a number of cycles.

    Some tables state one number for a whole range of lives and are read as steps; others state
    numbers at lives, between which the fraction is straight in the logarithm of cycles. A table
    that does not reach a number of cycles is left out.

    Parameters
    ----------
    cycles
        >= 1

    Returns
    -------
    one entry a table, never none

    Raises
    ------
    OutOfRange
        fewer than one cycle

    Source
    ------
    machine-elements-spring-table, amesweb-spring-ends, associated-spring

    Notes
    -----
    the nearest published relatives, not flat springs: torsion springs and the ends of
    extension springs, both of wire in bending. Where a stress ratio is stated it is 0; the
    spring of a knife never unloads, so its range is smaller. Not peened
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
def spring_along_two(two: TwoBlades, first_deg: typing.SupportsFloat | typing.SupportsIndex, second_deg: typing.SupportsFloat | typing.SupportsIndex, spacing_mm: typing.SupportsFloat | typing.SupportsIndex = 0.1) -> SpringAlong:
    """
    The whole spring under both tangs, from the second end to the first.

    Stations are the first blade's. The free working face is shown level, so a height is how far
    the place has moved outward.

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
    between two pins the small bulge is left out of the deflection
    """
def standard_deviation(spread: Spread) -> float:
    """
    Standard deviation of a spread.
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
def stress_below(contact: LineContact, poisson: typing.SupportsFloat | typing.SupportsIndex, depth_mm: typing.SupportsFloat | typing.SupportsIndex) -> StressBelow:
    """
    Stresses at a depth in the middle below a line contact, tension positive.

    With z the depth over a: along -2 nu p0 (sqrt(1 + z^2) - z), in the face
    -p0 ((1 + 2 z^2)/sqrt(1 + z^2) - 2 z), normal -p0/sqrt(1 + z^2).

    Parameters
    ----------
    poisson
        Poisson's ratio of the body
    depth_mm
        below the face [mm], >= 0

    Raises
    ------
    OutOfRange
        a sharp edge or a flat

    Source
    ------
    Hertz, plane strain
    """
def sum_up(design: Design, spreads: collections.abc.Sequence[Spread], plan: ToleranceRows, batch: Batch, pieces: typing.SupportsInt | typing.SupportsIndex) -> Tolerance:
    """
    Sums up a study whose rows have been checked, wherever that was done.

    Parameters
    ----------
    plan
        rows as laid out
    batch
        checked for tolerance_columns(), a row each
    """
def summarise(values: typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"]) -> SampleSummary:
    """
    Sums up a sample; NaN is left out.
    """
def surface_factor(finish: Finish, tensile_mpa: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Share of the endurance limit that the finish leaves, a Sut^b, at most 1.

    Parameters
    ----------
    tensile_mpa
        tensile strength [MPa], > 0

    Source
    ------
    shigley-9
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
def take_off(design: Design, depths: FaceDepths) -> Design:
    """
    The design with some tang taken off; less than nothing puts it on.

    The open face is ground so that the pad lies flat on it again, which takes the preload down by
    the same depth. A kick that is ground down to the closed face is gone. A round end whose radius
    the design does not give goes with its faces.

    Notes
    -----
    after the open face the blade opens depth/a_p further: 0.2 deg for 0.1 mm at 32 mm
    """
@typing.overload
def temper_for_hardness(fit: TemperFit, hardness_hrc: typing.SupportsFloat | typing.SupportsIndex, time_h: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Temper that leaves a hardness.

    Parameters
    ----------
    fit
        the steel's fit
    hardness_hrc
        within what the fit's temperatures give after that time
    time_h
        hold, within the fit's times

    Returns
    -------
    [C]

    Raises
    ------
    OutOfRange
        outside the fit

    Lowest temper that leaves a hardness.

    Parameters
    ----------
    table
        the steel's table
    hardness_hrc
        within the table

    Returns
    -------
    [C]; where the table stays level, the lower end

    Raises
    ------
    OutOfRange
        outside the table
    InvalidInput
        for a table that is none
    """
@typing.overload
def temper_for_hardness(table: TemperTable, hardness_hrc: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Temper that leaves a hardness.

    Parameters
    ----------
    fit
        the steel's fit
    hardness_hrc
        within what the fit's temperatures give after that time
    time_h
        hold, within the fit's times

    Returns
    -------
    [C]

    Raises
    ------
    OutOfRange
        outside the fit

    Lowest temper that leaves a hardness.

    Parameters
    ----------
    table
        the steel's table
    hardness_hrc
        within the table

    Returns
    -------
    [C]; where the table stays level, the lower end

    Raises
    ------
    OutOfRange
        outside the table
    InvalidInput
        for a table that is none
    """
def temper_parameter(fit: TemperFit, heat: Heat) -> float:
    """
    What temperature and time do together, P = T (C + log10 t) / 1000.

    Parameters
    ----------
    fit
        gives C
    heat
        temperature above -273.15 C, time above 0 h

    Raises
    ------
    InvalidInput
        for any other heat

    Source
    ------
    hollomon-jaffe-1945
    """
def temperature_factor(temperature_c: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Share of the endurance limit that a temperature leaves.

    Parameters
    ----------
    temperature_c
        20 to 538 C; 1 up to 70 F, where the polynomial starts

    Raises
    ------
    OutOfRange
        outside

    Source
    ------
    shigley-9
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
    Tensile strength from Rockwell C with its band: both tables, which part by 3 to 6 % at 48 to 55
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
def tip_height_mm(design: Design, closed_angle_deg: typing.SupportsFloat | typing.SupportsIndex) -> float | None:
    """
    Height of the blade's tip in the handle against blade angle 0, + out of it.

    Returns
    -------
    [mm]; nothing where the blade's length is not given

    Notes
    -----
    the tip is taken to be on the line from the pivot along the blade
    """
def tolerance_columns(design: Design) -> list[str]:
    """
    Results that a study of this design follows.
    """
def tolerance_rows(design: Design, spreads: collections.abc.Sequence[Spread], rows: typing.SupportsInt | typing.SupportsIndex, seed: typing.SupportsInt | typing.SupportsIndex, with_shares: bool) -> ToleranceRows:
    """
    Lays out the rows of a study.

    The second sample is the largest power of two for which the shares cost no more rows than the
    sample itself.

    Parameters
    ----------
    rows
        of the sample, 1 to 10 million
    with_shares
        whether shares of variance are wanted

    Raises
    ------
    InvalidInput
        see require_spreads()
    """
def two_contacts_at(two: TwoBlades, first_deg: typing.SupportsFloat | typing.SupportsIndex, second_deg: typing.SupportsFloat | typing.SupportsIndex) -> TwoContacts:
    """
    Both tangs at two blade angles.

    Parameters
    ----------
    first_deg, second_deg
        blade angles, -45 to 225 [deg]

    Raises
    ------
    InvalidInput
        with every broken rule
    OutOfRange
        for an angle outside the model
    """
def two_faults(two: TwoBlades) -> list[Fault]:
    """
    Every broken rule of a design, by the keys of a design file.

    Every broken rule, by the keys of a design file.
    """
def variance_shares(a: typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], b: typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"], mixed: collections.abc.Sequence[typing.Annotated[numpy.typing.ArrayLike, numpy.float64, "[m, 1]"]]) -> list[VarianceShare] | None:
    """
    Shares of variance by Saltelli's scheme: two samples, and the first with one input at a time
    from the second.

    first_k = mean(f_B (f_AB,k - f_A)) / V; total_k = mean((f_A - f_AB,k)^2) / (2 V). Rows in which
    any value is NaN are left out.

    Parameters
    ----------
    a
        results of the first sample
    b
        results of the second
    mixed
        results of the first with input k from the second, one column each

    Returns
    -------
    nothing when fewer than two rows are whole or nothing varies

    Source
    ------
    Saltelli et al., Comput. Phys. Commun. 181 (2010), 259-270; total after Jansen (1999)
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
def walker_exponent(tensile_mpa: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Walker's exponent for steels, g = 0.8818 - 0.000200 Sut.

    Parameters
    ----------
    tensile_mpa
        [MPa], to 3000

    Source
    ------
    dowling-2009
    """
def whole_face(spring: Spring, face: GrindFace) -> GrindRegion:
    """
    Where a face is ground when nobody says where.

    Back: middle pin to the spring's end. Belly: middle pin to the pad. Pad: the pad.
    """
def with_dimension(design: Design, key: str, value: typing.SupportsFloat | typing.SupportsIndex) -> Design:
    """
    A copy of a design with one number changed.

    Parameters
    ----------
    value
        [mm], [MPa] or a ratio, as the dimension has it; the design's rules judge it later

    Raises
    ------
    InvalidInput
        no dimension has this key, or the design has no such number
    """
def yielded_depth_mm(section: PlasticSection, moment_nmm: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Depth from the farther outer fibre to which the section has yielded, 0 up to the yield moment.

    Parameters
    ----------
    moment_nmm
        greatest it has borne [N mm]

    Returns
    -------
    [mm]

    Raises
    ------
    OutOfRange
        a moment the section cannot bear
    """
GALLING_GAP_HRC: float = 5.0
__version__: str = '0.1.0'
