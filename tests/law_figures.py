"""What laws compare: contact at any stand of the blades, numbers of a check by their units."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from hypothesis import settings
from hypothesis import strategies as st

import backspring as bs
from backspring import _core

ANGLE = st.integers(0, 1800).map(lambda count: count / 10)
# A joint has no more blades than this.
STANDS = st.lists(ANGLE, min_size=4, max_size=4)


@dataclass(frozen=True)
class Stand:
    """All blades held at angles: energy [N mm], a torque [N mm] and a force [N] for each."""

    energy: float
    torques: tuple[float, ...]
    forces: tuple[float, ...]
    stations: tuple[tuple[float, ...], ...]

    @property
    def scale(self) -> float:
        """A torque that is large for this joint [N mm]: its forces, at a lever of 1 mm."""
        return max(1.0, sum(self.forces), *map(abs, self.torques))


def stand(design: bs.Design, angles: list[float]) -> Stand:
    """Hold every blade of a design at an angle, in the order of the file."""
    core = design.core
    found = [each.contact for each in _core.contacts_at(core, angles[: len(core.blades)])]
    return Stand(
        found[0].energy_nmm,
        tuple(each.torque_nmm for each in found),
        tuple(each.force_n for each in found),
        tuple(tuple(t.x_mm for t in each.touches[: each.count]) for each in found),
    )


def turned(angles: list[float], blade: int, more: float) -> list[float]:
    return [each + more if i == blade else each for i, each in enumerate(angles)]


def figures(data: Any, lead: str = "") -> Iterator[tuple[str, float]]:
    """Each number of plain data with its place: "positions.open.force_n"."""
    if isinstance(data, dict):
        for key, value in data.items():
            yield from figures(value, f"{lead}.{key}" if lead else key)
    elif isinstance(data, list):
        for place, value in enumerate(data):
            yield from figures(value, f"{lead}[{place}]")
    elif isinstance(data, float):
        yield lead, data


def plain(record: Any) -> Any:
    """A record of the core as plain data."""
    if hasattr(record, "_fields"):
        return {name: plain(getattr(record, name)) for name in record._fields}
    return [plain(each) for each in record] if isinstance(record, list) else record


def checked(design: bs.Design) -> dict[str, float]:
    """Rests, strokes and travel of a check by their place, of every blade."""
    found = bs.check(design)
    blades = found.blades if isinstance(found, bs.BladesCheck) else {"main": found}
    held = {
        name: {
            "positions": {each.name: plain(each) for each in blade.result.positions},
            "strokes": plain(blade.strokes),
            "travel": plain(blade.travel),
            "stiffness_n_per_mm": blade.stiffness_n_per_mm,
        }
        for name, blade in blades.items()
    }
    return dict(figures(held))


# A number's unit ends its name; energies of a check are in mJ, which is N mm.
UNITS = ("nmm_per_deg", "n_per_mm", "rad_per_s", "m_per_s", "nmm", "mpa", "deg", "mm", "mj", "n")


def unit_of(place: str) -> str:
    """The unit that a place's own name ends with, or that of what holds it: none is a ratio."""
    for name in reversed(place.split(".")):
        for unit in UNITS:
            if name.split("[")[0].endswith(f"_{unit}"):
                return unit
    return ""


# Rounding is 1e-13 of energies; a rest is where a torque is 0, found to 1e-12 of the largest, and
# what stands at rest goes with the angle as torque does, a hundred times as steeply.
EXACT = 1e-8
# Greatest values of the travel and the ends of a band are sought, to this share of a blade alone.
SOUGHT = 1e-6
SOUGHT_PLACES = (".strokes", ".travel", "reading_loaded_low_mm", "reading_loaded_high_mm")
# Of two crests alike rounding says which is the greater.
TIED = ("_angle_deg", "peak_stress_station_mm", "_at_mm")


def share_of(place: str) -> float:
    """Share of what is large that a number may be off by."""
    return SOUGHT if any(each in place for each in SOUGHT_PLACES) else EXACT


def compare(
    one: dict[str, float],
    other: dict[str, float],
    times: Callable[[str], float] = lambda _: 1.0,
    share: Callable[[str], float] = share_of,
) -> None:
    """Hold numbers against other ones, `times` by unit, to what is large among those of a unit."""
    assert one.keys() == other.keys()
    large: dict[str, float] = {}
    for place, value in one.items():
        unit = unit_of(place)
        large[unit] = max(large.get(unit, 0.0), abs(value))
    # A torque that is 0 at rest is the difference of two that are not: of a force at some place.
    large["nmm"] = max(large.get("nmm", 0.0), large.get("n", 0.0) * large.get("mm", 0.0))
    for place, value in one.items():
        if place.endswith(TIED):
            continue
        unit = unit_of(place)
        slack = share(place) * times(unit) * large[unit]
        assert abs(other[place] - value * times(unit)) <= slack, (place, value, other[place])


def a_share(of: int) -> settings:
    """So many times fewer examples than the profile has, for a law that takes long to try."""
    return settings(max_examples=max(1, settings.default.max_examples // of))
