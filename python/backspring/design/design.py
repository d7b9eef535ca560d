"""A slip joint on paper, immutable."""

from __future__ import annotations

import copy
from collections.abc import Mapping, Sequence
from typing import Any, Self

from backspring import _core
from backspring.design.arguments import quantity
from backspring.design.blades import key_in_file, listed_blades, put, unknown_blade
from backspring.design.core_design import FIRST_BLADE
from backspring.design.defaults import find_defaults, find_notices
from backspring.design.drawn_keys import drawn_keys
from backspring.design.fields import ROWS, kind_of
from backspring.design.fingerprint import fingerprint, shape_of
from backspring.design.reader import FORMAT, DesignParts, parts_of
from backspring.design.spring_rows import rows_under
from backspring.design.steel_table import names_by_table
from backspring.faults import Fault, invalid
from backspring.notice import Notice
from backspring.report.result import Reported
from backspring.steel import known
from backspring.units import System

Section = Mapping[str, Any]


class Design(Reported):
    """The blade's tang, its spring and how they are fitted.

    Takes the same tables and keys as a design file: numbers, or text with a unit. `units` says
    what a bare number means: "mm" (mm, N, MPa) or "in" (inch, lbf, ksi). Inside all is mm, N, MPa.
    Raises InvalidInput with every fault. Designs with the same content are equal.
    """

    __slots__ = ("_parts",)
    _report_by = "design:design_report"
    _parts: DesignParts

    def __init__(
        self,
        *,
        name: str | None = None,
        units: System = "mm",
        steel: Section | None = None,
        spring: Section | None = None,
        tang: Section | None = None,
        fit: Section | None = None,
        blade: Section | None = None,
        blades: Sequence[Section] | None = None,
        frame: Section | None = None,
        outline: Section | None = None,
        pins: Section | None = None,
        friction: Section | None = None,
        targets: Section | None = None,
        priors: Section | None = None,
        format: int = FORMAT,
    ) -> None:
        given = {key: each for key, each in locals().items() if key not in ("self", "__class__")}
        object.__setattr__(self, "_parts", parts_of(given))

    @classmethod
    def from_parts(cls, parts: DesignParts) -> Self:
        """Make a design of parts that were read and found good."""
        design = cls.__new__(cls)
        object.__setattr__(design, "_parts", parts)
        return design

    @property
    def name(self) -> str:
        """Name of the pattern."""
        return self._parts.name

    @property
    def units(self) -> System:
        """Units it was written in; results are shown in them unless asked otherwise."""
        return self._parts.units

    @property
    def core(self) -> _core.Design:
        """The core's design, mm, N, MPa, seen from the blade that questions are about."""
        return self._parts.core

    @property
    def blades(self) -> tuple[str, ...]:
        """Names of the blades on the spring, in the order of the file."""
        first = str(self._parts.content.get("blade", {}).get("name", FIRST_BLADE))
        return (first, *self._parts.content.get("blades", {}))

    @property
    def blade(self) -> str:
        """Name of the blade that questions are about: the first, or the one of seen_from()."""
        return self.blades[self._parts.own or 0]

    @property
    def of_all_blades(self) -> bool:
        """Whether a check is of every blade: there are several, and none was chosen."""
        return len(self.blades) > 1 and self._parts.own is None

    def seen_from(self, blade: str) -> Design:
        """Return the same design with one of its blades as the one that questions are about.

        Stations are then that blade's: from the pin next to it, + towards its pivot. Keys like
        "tang.closed" mean its own in replace() and in studies. Raises InvalidInput when no blade
        has this name.
        """
        if blade not in self.blades:
            raise unknown_blade("blade", blade, self.blades)
        own = self.blades.index(blade)
        seen = _core.seen_from(self._whole, own)
        return Design.from_parts(self._parts._replace(own=own, core=seen, whole=self._whole))

    def of_every_blade(self) -> Design:
        """Return the same design with questions about all its blades again."""
        return Design.from_parts(self._parts._replace(own=None, core=self._whole))

    @property
    def title(self) -> str:
        """Name of the pattern, and of the blade where one of several is meant."""
        several = len(self.blades) > 1 and self._parts.own is not None
        return f"{self.name}, {self.blade}" if several else self.name

    def identity(self) -> dict[str, Any]:
        """Tell what results are of: name and fingerprint, and the blade where one is meant."""
        blade = {"blade": self.blade} if self.title != self.name else {}
        return {"name": self.name, "sha256": self.sha256, **blade}

    def as_in_file(self, core: _core.Design) -> _core.Design:
        """Return a core's design that is seen as this one is, seen from the first blade again."""
        first = [blade.name for blade in core.blades].index(self.blades[0])
        return _core.seen_from(core, first)

    @property
    def _whole(self) -> _core.Design:
        return self._parts.whole or self._parts.core

    @property
    def steel(self) -> dict[str, Any]:
        """Figures of the steel as used, with their sources and how sure each is."""
        return {**self.steel_figures, "sources": self._parts.steel.sources()}

    @property
    def steel_figures(self) -> dict[str, Any]:
        """The same without the sources, which take a file of their own to tell."""
        record = self._parts.steel.record
        return {**record, "confidence": {**record["confidence"]}}

    @property
    def own_steel(self) -> known.Own | None:
        """The steel of the design's own table with what it may cite; None without one."""
        return self._parts.steel.own

    @property
    def priors(self) -> dict[str, tuple[float, float]]:
        """What the design states of `[priors]`: value and standard deviation, mm, MPa, HRC, deg."""
        stated = self._parts.content.get("priors", {})
        return {name: (value, sd) for name, (value, sd) in stated.items()}

    @property
    def defaults(self) -> tuple[str, ...]:
        """A sentence for every value that was not given and is filled in or left out."""
        return self.assumptions()

    def assumptions(self, units: System = "mm") -> tuple[str, ...]:
        """Write the same sentences in the units asked for."""
        found = find_defaults(self._parts.content, self._parts.steel, self._whole, units)
        return (*drawn_keys(self._parts.content, self._parts.drawn, units), *found)

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What a maker should know about how the design is stated."""
        return find_notices(self._parts.content, self._parts.steel)

    @property
    def sha256(self) -> str:
        """Fingerprint of the content; the same for the same design in mm and in inches."""
        return fingerprint(self.to_dict())

    @property
    def shape_sha256(self) -> str:
        """Fingerprint of spring, tangs and fits alone, which is what readings depend on.

        Name, blade, friction and targets may change without a change in it.
        """
        return fingerprint(shape_of(self._parts.content))

    def to_dict(self) -> dict[str, Any]:
        """Content in the shape of the file, all numbers in mm, N, MPa, HRC, g, kg mm2."""
        return self._parts.header | listed_blades(copy.deepcopy(self._parts.content))

    def replace(self, **changes: Any) -> Design:
        """Return a changed copy: `design.replace(**{"fit.preload": 0.9})`.

        A bare number is in mm, N or MPa whatever the file's units; None takes a key out. Keys of
        another blade are written as "blades.pen.tang.closed"; stations of the spring's own keys
        are those of the file. Setting one of preload and rear_pin_offset takes the other out.
        `units` changes only what results are shown in. "spring.thickness_scale",
        "spring.thickness_offset" and "spring.width_offset" change the rows as a study does.
        """
        data = self._parts.header | copy.deepcopy(self._parts.content)
        units = changes.pop("units", self.units)
        if self.own_steel and names_by_table(changes, self._parts.steel.steel, self.own_steel):
            data["spring"].pop("steel")
        if units not in ("mm", "in"):
            raise invalid([Fault("bad-value", "units", f'must be "mm" or "in", got {units!r}')])
        if not changes:
            return Design.from_parts(self._parts._replace(units=units, drawn=()))
        relative = [key for key in changes if key in ROWS and not ROWS[key].in_file]
        for key, value in changes.items():
            if key not in relative:
                put(data, key_in_file(key, self.blade, self.blades), value)
        changed = _restore(listed_blades(data), units, self._parts.own, None)
        for key in relative:
            changed = changed.replace(**changed._rows_under(key, changes[key]))
        return changed

    def _rows_under(self, key: str, value: Any) -> dict[str, Any]:
        number = quantity(value, kind_of(ROWS[key]), key)
        return rows_under(key, _core.with_dimension(self._whole, key, number).spring)

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError("a design does not change: use replace() for a changed copy")

    def __delattr__(self, name: str) -> None:
        self.__setattr__(name, None)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Design):
            return NotImplemented
        return (self.to_dict(), self._parts.own) == (other.to_dict(), other._parts.own)

    def __hash__(self) -> int:
        return hash(self.sha256)

    def __reduce__(self) -> tuple[Any, ...]:
        steel = known.own(self.steel_figures["name"])
        return _restore, (self.to_dict(), self.units, self._parts.own, steel)

    def __repr__(self) -> str:
        sections = (f"{key}={value}" for key, value in self._parts.content.items())
        return f"Design(name={self.name!r}, {', '.join(sections)})"


def _restore(content: Any, units: System, own: int | None, steel: known.Own | None) -> Design:
    known.know_again(steel)
    design = Design.from_parts(parts_of(content)._replace(units=units))
    return design if own is None else design.seen_from(design.blades[own])
