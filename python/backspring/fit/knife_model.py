"""One knife as it was built and ground: what the core's model says that a bench would measure."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.core_record import changed
from backspring.errors import NoConvergence
from backspring.fit.ask import Ask
from backspring.fit.causes import BUILT, CAUSES, PLACE, STIFFNESS
from backspring.fit.kept import Kept
from backspring.fit.log_entry import SPRING_FACES, GroundEntry
from backspring.fit.priors import LEAST_KICK_MM
from backspring.fit.result import FACES

Array = npt.NDArray[np.float64]
_STEPS = {"pad_tilt_rad": 1e-5, "extra_root_share": 1e-3, "friction": 1e-3}
_STEP_MM, _STEP_SHARE = 1e-4, 1e-4
_BEND_MM = 0.015
_DESIGNS_KEPT = 64
# Searches that begin at one place, each leeway's and the next entry's, ask the same again.
_ANSWERS_KEPT = 20_000


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
        # Most differences move no more than a face. All states have the rest in common, and all
        # that is measured in one is asked of the same knives.
        self._built: Kept[_core.Design] = Kept(_DESIGNS_KEPT)
        self._knives: Kept[_core.Design] = Kept(_DESIGNS_KEPT)
        self._answers: Kept[Array] = Kept(_ANSWERS_KEPT)
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

    def is_as(self, other: KnifeModel) -> bool:
        """Say whether another models the same knife, and so gives the same answers."""
        return self.drawn is other.drawn and self.stretches == other.stretches

    def place_of(self, ground: GroundEntry) -> int:
        """Say which cause an entry's depth belongs to."""
        if ground.face in FACES:
            return PLACE[ground.face]
        return len(CAUSES) + self.stretches.index(self.stretch(ground))

    def design(self, causes: Array) -> _core.Design:
        """Return the knife's design."""
        return self._knives.of(causes.tobytes(), lambda: self._made(causes))

    def bench(self, causes: Array) -> _core.FitUnknowns:
        """Return what its drawing does not show."""
        return _core.FitUnknowns(
            pad_tilt_rad=float(causes[PLACE["pad_tilt_rad"]]),
            pivot_play_mm=float(causes[PLACE["pivot_play_mm"]]),
            extra_root_rad_per_nmm=float(causes[PLACE["extra_root_share"]]) * self.root_scale,
            loaded_offset_mm=float(causes[PLACE["loaded_offset_mm"]]),
        )

    def answer(self, ask: Ask, causes: Array) -> Array:
        """Say what a bench would find; what was asked before is not worked out again."""
        return self._answers.of((ask, causes.tobytes()), lambda: self._found(ask, causes))

    def readings(self, state: str, causes: Array) -> Array:
        """Read half-stop and closed; nothing at a half-stop that is not there."""
        shown = _core.readings_in(_core.FitState[state], self.design(causes), self.bench(causes))
        half = shown.half_stop_mm if self.square else 0.0
        if half is None or shown.closed_mm is None:
            raise NoConvergence("the blade does not stay in a position")
        return np.array([half, shown.closed_mm])

    def pulls(self, causes: Array) -> Array:
        """Return the pulls to open, to close and to start it, and the travel's worst stress."""
        found = _core.bench_figures(self.design(causes), self.bench(causes))
        pulls = (found.peak_pull_n, found.closing_peak_pull_n, found.start_pull_n)
        if self.drawn.blade.nail_nick_mm is None:
            pulls = (0.0, 0.0, 0.0)
        if None in pulls:
            raise NoConvergence("the blade does not snap")
        return np.array([*pulls, found.travel_peak_stress_mpa])

    def _found(self, ask: Ask, causes: Array) -> Array:
        if ask.what in _core.FitState.__members__:
            return self.readings(ask.what, causes)
        if ask.what == "pulls":
            return self.pulls(causes)
        if ask.what == "hardness_hrc":
            drawn = self.drawn.hardness.spring_hrc or 0.0
            return np.array([drawn + causes[PLACE["hardness_hrc"]]])
        knife = self.design(causes)
        if ask.what == "thickness_mm":
            return np.array([_thickness_mm(knife.spring, ask.station_mm)])
        bench = self.bench(causes)
        if ask.what == "moved_mm":
            moved = _core.hung_movement_mm(knife, ask.weight_n, ask.station_mm, bench)
            return np.array([moved])
        lies = getattr(_core.closed_figures(knife, ask.station_mm, bench), ask.what)
        if lies is None:
            raise NoConvergence("the blade does not lie there")
        return np.array([lies])

    def _made(self, causes: Array) -> _core.Design:
        value = dict(zip(CAUSES, map(float, causes), strict=False))
        # A nose ground further than it stands takes the closed face with it.
        value["closed"] += _over(LEAST_KICK_MM - self._kick_mm(value))
        off = _core.FaceDepths(**{f"{face}_mm": value[face] for face in FACES})
        rest = (*(value[name] for name in BUILT), *map(float, causes[len(CAUSES) :]))
        return _core.take_off(self._built.of(rest, lambda: self._build(*rest)), off)

    def _build(
        self, friction: float, preload: float, corner: float, *spring: float
    ) -> _core.Design:
        """Return the knife with its faces as drawn, and what came off its spring."""
        drawn, ground = self.drawn, spring[len(STIFFNESS) :]
        own = changed(
            drawn.blades[0],
            tang=self._tang(corner),
            fit=changed(drawn.fit, preload_mm=drawn.fit.preload_mm + preload),
        )
        rubs = {name: getattr(drawn.friction, name) + friction for name in ("spring", "pivot")}
        knife = changed(
            drawn,
            spring=self._spring(*spring[: len(STIFFNESS)]),
            blades=[own, *drawn.blades[1:]],
            friction=changed(drawn.friction, **rubs),
        )
        for stretch, depth in zip(self.stretches, ground, strict=True):
            knife = _ground(knife, stretch, depth)
        return knife

    def _spring(self, modulus: float, thickness: float, width: float) -> _core.Spring:
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

    def _tang(self, corner: float) -> _core.Tang:
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
