"""One knife as it was built and ground: what the core's model says that a bench would measure."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.core_record import changed
from backspring.errors import NoConvergence
from backspring.fit.log_entry import SPRING_FACES, FigureEntry, GroundEntry
from backspring.fit.priors import LEAST_KICK_MM
from backspring.fit.result import FACES

Array = npt.NDArray[np.float64]
# In turn what measurements follow from; after these the depth off every stretch of the spring.
CAUSES = (
    *FACES,
    "pad_tilt_rad",
    "pivot_play_mm",
    "extra_root_share",
    "friction",
    "youngs_modulus_mpa",
    "thickness_mm",
    "width_mm",
    "preload_mm",
    "corner_radius_mm",
    "hardness_hrc",
    "loaded_offset_mm",
)
PLACE = {name: place for place, name in enumerate(CAUSES)}
_STEPS = {"pad_tilt_rad": 1e-5, "extra_root_share": 1e-3, "friction": 1e-3}
_STEP_MM, _STEP_SHARE = 1e-4, 1e-4
_BEND_MM = 0.015
_KEPT = 64
STIFFNESS = ("youngs_modulus_mpa", "thickness_mm", "width_mm")


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part of the spring's back or belly that is ground."""

    face: str
    from_mm: float
    to_mm: float


class KnifeModel:
    """A drawing, and the stretches of its spring that are ground on the knife."""

    def __init__(self, drawn: _core.Design, grounds: list[GroundEntry]) -> None:
        self.drawn = drawn
        spring = drawn.spring
        self.root_scale = self._overhang_rotation()
        # Most differences move neither.
        self._spring = lru_cache(_KEPT)(self._make_spring)
        self._tang = lru_cache(_KEPT)(self._make_tang)
        self.square = drawn.tang.half_stop_mm is not None
        cut = [each for each in grounds if each.face in SPRING_FACES]
        self.stretches = list(dict.fromkeys(map(self.stretch, cut)))
        self.width = len(CAUSES) + len(self.stretches)
        modulus = spring.elastic.youngs_modulus_mpa
        steps = {"youngs_modulus_mpa": _STEP_SHARE * modulus, **_STEPS}
        self.steps = np.array([steps.get(name, _STEP_MM) for name in CAUSES])
        self.steps = np.append(self.steps, np.full(len(self.stretches), _STEP_MM))

    def stretch(self, ground: GroundEntry) -> Stretch:
        """Say which stretch of the spring an entry ground: without ends, the whole."""
        if ground.from_mm is not None and ground.to_mm is not None:
            return Stretch(ground.face, ground.from_mm, ground.to_mm)
        whole = _core.whole_face(self.drawn, _core.GrindFace[ground.face])
        return Stretch(ground.face, whole.from_mm, whole.to_mm)

    def place_of(self, ground: GroundEntry) -> int:
        """Say which cause an entry's depth belongs to."""
        if ground.face in FACES:
            return PLACE[ground.face]
        return len(CAUSES) + self.stretches.index(self.stretch(ground))

    def design(self, causes: Array) -> _core.Design:
        """Return the knife's design."""
        value = dict(zip(CAUSES, map(float, causes), strict=False))
        knife = self._built(value)
        # A nose ground further than it stands takes the closed face with it.
        value["closed"] += _over(LEAST_KICK_MM - self._kick_mm(value))
        depths = {f"{face}_mm": value[face] for face in FACES}
        knife = _core.take_off(knife, _core.FaceDepths(**depths))
        for stretch, depth in zip(self.stretches, causes[len(CAUSES) :], strict=True):
            knife = _ground(knife, stretch, float(depth))
        return knife

    def bench(self, causes: Array) -> _core.FitUnknowns:
        """Return what its drawing does not show."""
        return _core.FitUnknowns(
            pad_tilt_rad=float(causes[PLACE["pad_tilt_rad"]]),
            pivot_play_mm=float(causes[PLACE["pivot_play_mm"]]),
            extra_root_rad_per_nmm=float(causes[PLACE["extra_root_share"]]) * self.root_scale,
            loaded_offset_mm=float(causes[PLACE["loaded_offset_mm"]]),
        )

    def readings(self, state: str, causes: Array) -> Array:
        """Read half-stop and closed; nothing at a half-stop that is not there."""
        shown = _core.readings_in(_core.FitState[state], self.design(causes), self.bench(causes))
        half = shown.half_stop_mm if self.square else 0.0
        if half is None or shown.closed_mm is None:
            raise NoConvergence("the blade does not stay in a position")
        return np.array([half, shown.closed_mm])

    def pulls(self, causes: Array) -> Array:
        """Return the peak pulls, opening and closing, and the worst stress of the travel."""
        found = _core.bench_figures(self.design(causes), self.bench(causes))
        pulls = (found.peak_pull_n, found.closing_peak_pull_n)
        if self.drawn.blade.nail_nick_mm is None:
            pulls = (0.0, 0.0)
        if None in pulls:
            raise NoConvergence("the blade does not snap")
        return np.array([*pulls, found.travel_peak_stress_mpa])

    def figure(self, entry: FigureEntry, causes: Array) -> Array:
        """Say what another measurement would show."""
        if entry.kind in ("pull_n", "closing_pull_n"):
            place = ("pull_n", "closing_pull_n").index(entry.kind)
            return self.pulls(causes)[place : place + 1]
        if entry.kind == "start_pull_n":
            found = _core.bench_figures(self.design(causes), self.bench(causes))
            return _known(found.start_pull_n, "the blade does not snap")
        if entry.kind in ("tip_mm", "gap_mm"):
            station = entry.station_mm or 0.0
            lies = _core.closed_figures(self.design(causes), station, self.bench(causes))
            return _known(getattr(lies, entry.kind), "the blade does not lie there")
        if entry.kind == "hardness_hrc":
            drawn = self.drawn.hardness.spring_hrc or 0.0
            return np.array([drawn + causes[PLACE["hardness_hrc"]]])
        knife, station = self.design(causes), entry.station_mm or 0.0
        if entry.kind == "thickness_mm":
            return np.array([_thickness_mm(knife.spring, station)])
        weight = entry.weight_n or 0.0
        moved = _core.hung_movement_mm(knife, weight, station, self.bench(causes))
        return np.array([moved])

    def _built(self, value: Mapping[str, float]) -> _core.Design:
        """Return the knife before anything was ground."""
        drawn, rubs = self.drawn, value["friction"]
        blade = changed(
            drawn.blades[0],
            tang=self._tang(value["corner_radius_mm"]),
            fit=changed(drawn.fit, preload_mm=drawn.fit.preload_mm + value["preload_mm"]),
        )
        return changed(
            drawn,
            spring=self._spring(*(value[name] for name in STIFFNESS)),
            blades=[blade, *drawn.blades[1:]],
            friction=changed(
                drawn.friction,
                spring=drawn.friction.spring + rubs,
                pivot=drawn.friction.pivot + rubs,
            ),
        )

    def _make_spring(self, modulus: float, thickness: float, width: float) -> _core.Spring:
        spring = self.drawn.spring
        stations = [
            _core.Station(x_mm=each.x_mm, thickness_mm=each.thickness_mm + thickness)
            for each in spring.thickness
        ]
        modulus += spring.elastic.youngs_modulus_mpa
        return changed(
            spring,
            thickness=stations,
            width_mm=spring.width_mm + width,
            widths=[
                _core.WidthStation(x_mm=each.x_mm, width_mm=each.width_mm + width)
                for each in spring.widths
            ],
            elastic=changed(spring.elastic, youngs_modulus_mpa=modulus),
        )

    def _make_tang(self, corner: float) -> _core.Tang:
        tang = self.drawn.tang
        return changed(
            tang,
            corner_open_mm=tang.corner_open_mm + corner,
            corner_closed_mm=tang.corner_closed_mm + corner,
        )

    def _kick_mm(self, value: Mapping[str, float]) -> float:
        """Return how far the nose stands beyond the closed face; far where there is none."""
        kick = self.drawn.tang.kick
        return math.inf if kick is None else kick.height_mm + value["closed"] - value["kick"]

    def _overhang_rotation(self) -> float:
        """Rotation of the overhang by its own bending, for a moment at the pivot's station."""
        pivot = self.drawn.tang.pivot_mm
        flexibility = _core.make_flexibility(self.drawn.spring)
        whole = _core.deflection_per_force(flexibility, pivot, pivot) / pivot**2
        return whole - flexibility.root_rotation_rad_per_nmm


def _known(value: float | None, otherwise: str) -> Array:
    if value is None:
        raise NoConvergence(otherwise)
    return np.array([value])


def _over(short_mm: float) -> float:
    """Return what is more than nothing, with a bend in place of the kink."""
    if abs(short_mm) >= _BEND_MM:
        return max(short_mm, 0.0)
    return (short_mm + _BEND_MM) ** 2 / (4.0 * _BEND_MM)


def _ground(knife: _core.Design, stretch: Stretch, depth_mm: float) -> _core.Design:
    if depth_mm <= 0.0:
        return knife
    region = _core.GrindRegion(from_mm=stretch.from_mm, to_mm=stretch.to_mm)
    face = _core.GrindFace[stretch.face]
    return _core.grind(knife, _core.Cut(face=face, depth_mm=depth_mm, region=region))


def _thickness_mm(spring: _core.Spring, station_mm: float) -> float:
    stations = [each.x_mm for each in spring.thickness]
    return float(np.interp(station_mm, stations, [each.thickness_mm for each in spring.thickness]))
