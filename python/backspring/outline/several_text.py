"""The design file that the outlines of a joint with several blades make."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backspring.outline.file_text import (
    Given,
    blade_lines,
    head_lines,
    spring_lines,
    value_text,
)
from backspring.outline.keys_of import keys_of
from backspring.outline.several_joint import SeveralJoint
from backspring.outline.tang_of import OwnShape, TangFaces

_OF_TWO_PINS = ("spring.rear_pin",)


def several_text(several: SeveralJoint, faces: Sequence[TangFaces | OwnShape], given: Given) -> str:
    """Write the design file; `faces` are the blades' in turn."""
    return "\n".join(_lines(several, faces, given)) + "\n"


def _lines(
    several: SeveralJoint, faces: Sequence[TangFaces | OwnShape], given: Given
) -> Iterator[str]:
    first, *others = zip(several.blades, faces, strict=True)
    keys = keys_of(first[0].joint, first[1])
    if several.pins == 1:
        keys = {key: value for key, value in keys.items() if key not in _OF_TWO_PINS}
    yield from head_lines(given)
    yield from spring_lines(first[0].joint, keys, given)
    if several.pins == 1:
        yield 'support = "middle-pin"'
    yield from blade_lines(keys, given)
    if "fit.dial" in given.values:
        yield f"dial = {given.values['fit.dial']}"
    yield from ("", "[blade]", f'name = "{first[0].name}"')
    for blade, own in others:
        keys = keys_of(blade.joint, own)
        yield from ("", "[[blades]]", f'name = "{blade.name}"', f'end = "{blade.end}"')
        yield f"pad = {value_text(keys['spring.pad'], given)}"
        yield from blade_lines(keys, given, "blades.")
