"""The tables and keys of a design file, read into mm, N, MPa, HRC, C, h, g and kg mm2.

Every key may be absent here: what must be given, and that numbers make sense, is judged later,
so that all that is wrong with a file can be told at once.
"""

from __future__ import annotations

from typing import ClassVar

from pydantic import BaseModel, ConfigDict, Field

from backspring.design.fields import (
    Finish,
    ForcePair,
    Hardness,
    Inertia,
    Length,
    Mass,
    Number,
    OneOrTwo,
    PadEdges,
    Rows,
    Stress,
    Support,
    Temperature,
    Text,
    Time,
)


class Table(BaseModel):
    """A table of the file that refuses keys it does not know."""

    model_config = ConfigDict(extra="forbid", frozen=True)
    required: ClassVar[tuple[str, ...]] = ()


class SpringTable(Table):
    """[spring]: the beam and its steel."""

    required = ("steel", "width", "thickness", "pad")
    steel: Text = None
    hardness: Hardness = None
    temper: Temperature = None
    temper_time: Time = None
    youngs_modulus: Stress = None
    poisson: Number = None
    yield_: Stress = Field(None, alias="yield")
    tensile: Stress = None
    width: Length = None
    thickness: Rows = None
    support: Support = None
    rear_pin: Length = None
    pin_hole: OneOrTwo = None
    pin_hole_offset: OneOrTwo = None
    pad: PadEdges = None
    finish: Finish = None
    kink_radius: Length = None
    curve_radius: Length = None


class KickTable(Table):
    """The kick: an inline table of [tang]."""

    required = ("distance", "height", "radius")
    distance: Length = None
    height: Length = None
    radius: Length = None


class TangTable(Table):
    """[tang]: pivot, faces and corners."""

    required = ("pivot", "open", "closed", "corner_radius", "front")
    pivot: Length = None
    open: Length = None
    half_stop: Length = None
    closed: Length = None
    corner_radius: OneOrTwo = None
    front: Length = None
    round_end: Length = None
    kick: KickTable | None = None


class FitTable(Table):
    """[fit]: interference and the dial's station."""

    preload: Length = None
    rear_pin_offset: Length = None
    dial: Length = None


class BladeTable(Table):
    """[blade]: what pull and snap need."""

    nail_nick: Length = None
    mass: Mass = None
    length: Length = None
    height: Length = None
    inertia: Inertia = None
    edge_clearance: Length = None
    hardness: Hardness = None


class SecondBladeTable(Table):
    """[second.blade]: what pull and snap of the second blade need."""

    nail_nick: Length = None
    mass: Mass = None
    length: Length = None
    height: Length = None
    inertia: Inertia = None


class SecondFitTable(Table):
    """[second.fit]: interference and the dial's station at the second end."""

    required = ("preload",)
    preload: Length = None
    dial: Length = None


class SecondTable(Table):
    """[second]: the blade at the far end; stations from the pin next to it, to its own pivot."""

    required = ("pad", "tang", "fit")
    pad: PadEdges = None
    tang: TangTable | None = None
    fit: SecondFitTable | None = None
    blade: SecondBladeTable | None = None


class PinsTable(Table):
    """[pins]: through spring and liners; a pin left out is as thick as its hole."""

    middle: Length = None
    rear: Length = None
    liner: Length = None
    yield_: Stress = Field(None, alias="yield")


class FrictionTable(Table):
    """[friction]: coefficients, and the pivot pin's diameter."""

    spring: Number = None
    pivot: Number = None
    pivot_pin: Length = None


class TargetsTable(Table):
    """[targets]: what a check judges against."""

    pull: ForcePair = None
    yield_margin: Number = None
    reading: Length = None
    openings: Number = None


class DesignTables(Table):
    """All tables of the file."""

    required = ("spring", "tang", "fit")
    spring: SpringTable | None = None
    tang: TangTable | None = None
    fit: FitTable | None = None
    blade: BladeTable | None = None
    second: SecondTable | None = None
    pins: PinsTable | None = None
    friction: FrictionTable | None = None
    targets: TargetsTable | None = None
