"""The options of `backspring fit`, read."""

from __future__ import annotations

import argparse
from typing import Any

from backspring.cli.values import tell_bare, with_unit
from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.units import Kind, System, system_written

_READ = ("half_stop", "closed")


def require_faces(options: argparse.Namespace, design: Design) -> None:
    """Refuse a way to plan that is about a face which no tang of the design has."""
    seen = [design.seen_from(each) for each in design.blades] if design.of_all_blades else [design]
    tangs = [each.core.tang for each in seen]
    missing = set()
    if all(tang.kick is None for tang in tangs):
        missing.add("kick")
    if all(tang.half_stop_mm is None for tang in tangs):
        missing.add("half_stop")
    if options.closed_by is not None and "kick" in missing:
        raise refusal("--closed-by", "goes with a kick, and this tang has none")
    for face, _ in options.material or ():
        if face.replace("-", "_") in missing:
            raise refusal("--material", f"this tang has no {face}")


class Values:
    """Options read; a bare number is in the design's units, whatever is printed."""

    def __init__(self, options: argparse.Namespace, design: Design) -> None:
        self.options, self.design = options, design
        self.units: System = design.units
        # Who writes a unit to one reading may have meant it of the bare one beside it.
        read = (each.rpartition(":")[2] for name in _READ for each in getattr(options, name) or ())
        written = {system_written(each) for each in read} - {None, design.units}
        self.meant: System | None = options.units or next(iter(written), None)

    def length(self, written: str, option: str) -> str:
        """Read it in the units meant, and hand it on with its unit."""
        return with_unit(written, "length", option, self.units, self.options.units)

    def reading(self, written: str, option: str) -> str:
        """Read what the dial showed, and hand it on with its unit."""
        return with_unit(written, "length", option, self.units, self.meant)

    def force(self, written: str, option: str) -> str:
        """Read a force in the units meant, and hand it on with its unit."""
        return with_unit(written, "force", option, self.units, self.options.units)

    def support(self) -> str | None:
        """Read how the spring is held: a word, or a root stiffness."""
        written: str | None = self.options.support
        if written is None or not written[:1].isdigit():
            return written
        return with_unit(written, "root stiffness", "support", self.units, self.options.units)

    def tell(self, written: str, kind: Kind, option: str) -> None:
        """Tell what a part of an option was taken as, where that may have been meant otherwise."""
        tell_bare(written.strip(), kind, option, self.units, self.options.units)

    def read(self, name: str, default: str) -> str:
        """Read one option."""
        written = getattr(self.options, name)
        return default if written is None else self.length(written, name)

    def target(self) -> str:
        """Read the target."""
        return self.read("target", "0.001 in")

    def mean(self, name: str) -> list[str] | None:
        """Read an option that may be repeated."""
        written = getattr(self.options, name)
        option = name.replace("_", "-")
        return None if written is None else [self.reading(each, option) for each in written]

    def by_blade(self) -> dict[str, dict[str, list[str]]]:
        """Read "NAME: READING", the readings of several blades."""
        found: dict[str, dict[str, list[str]]] = {}
        for option in _READ:
            for written in getattr(self.options, option) or ():
                name, named, value = written.partition(":")
                flag = option.replace("_", "-")
                if not named:
                    known = ", ".join(self.design.blades)
                    raise refusal(flag, f'say whose, as "NAME: READING", of {known}; or --blade')
                read = self.reading(value.strip(), flag)
                found.setdefault(name.strip(), {}).setdefault(option, []).append(read)
        return found

    def planning(self) -> dict[str, Any]:
        """Read how to plan."""
        given: dict[str, Any] = {"target": self.target()}
        if self.options.reserve is not None:
            given["reserve"] = self.options.reserve
        if self.options.closed_by is not None:
            given["closed_by"] = self.options.closed_by
        if self.options.tip is not None:
            tip = self.options.tip
            given["tip"] = tip if tip == "level" else self.length(tip, "tip")
        if self.options.tip_allowance is not None:
            given["tip_allowance"] = self.length(self.options.tip_allowance, "tip-allowance")
        if self.options.material is not None:
            given["material"] = {
                face.replace("-", "_"): self.length(depth, "material")
                for face, depth in self.options.material
            }
        return given
