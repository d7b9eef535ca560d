"""How one value of a design file is read: quantities in the core's units, lists, text."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BeforeValidator, PlainValidator, ValidationInfo
from pydantic_core import PydanticCustomError

from backspring import units
from backspring.errors import InvalidInput

BAD_VALUE = "bad-value"
SUPPORTS = ("two-pins", "clamped", "middle-pin")
FINISHES = ("polished", "ground", "machined", "hot-rolled", "as-forged")


def _refuse(message: str) -> PydanticCustomError:
    return PydanticCustomError(BAD_VALUE, "{message}", {"message": message})


def _parse(value: Any, kind: units.Kind, info: ValidationInfo) -> float:
    system: units.System = info.context or "mm"
    try:
        return units.parse(value, kind, system)
    except InvalidInput as error:
        raise _refuse(str(error)) from None


def _quantity(kind: units.Kind) -> PlainValidator:
    return PlainValidator(lambda value, info: _parse(value, kind, info))


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise _refuse(f"must be text in quotes, got {value}")
    if not value.strip() or not value.isprintable():
        raise _refuse("must be one line of text")
    return value


def _support(value: Any, info: ValidationInfo) -> str | float:
    if value in SUPPORTS:
        return str(value)
    if isinstance(value, str) and not any(letter.isdigit() for letter in value):
        raise _refuse(
            'must be "two-pins", "clamped" or a root stiffness as "2e6 N mm/rad", or with two '
            f'blades "middle-pin", got "{value}"'
        )
    return _parse(value, "root stiffness", info)


def _finish(value: Any) -> str:
    if value in FINISHES:
        return str(value)
    known = ", ".join(f'"{name}"' for name in FINISHES)
    raise _refuse(f'must be one of {known}, got "{value}"')


def _as_list(value: Any) -> Any:
    # Arrays are taken as lists; a quantity of a unit library also has tolist but no length here.
    if hasattr(value, "tolist") and not hasattr(value, "to"):
        return value.tolist()
    return list(value) if isinstance(value, tuple) else value


def _pair(example: str) -> BeforeValidator:
    def check(value: Any) -> Any:
        values = _as_list(value)
        if not isinstance(values, list) or len(values) != 2:
            got = f"{len(values)} values" if isinstance(values, list) else "one value"
            raise _refuse(f"must be two values, as {example}, got {got}")
        return values

    return BeforeValidator(check)


def _one_or_two(value: Any, info: ValidationInfo) -> Any:
    values = _as_list(value)
    if not isinstance(values, list):
        return [_parsed(values, info)] * 2
    if len(values) != 2:
        raise _refuse(f"must be one value or two, got {len(values)} values")
    return values


def _rows(value: Any, info: ValidationInfo) -> Any:
    rows = _as_list(value)
    if not isinstance(rows, list):
        return [["0 mm", _parsed(rows, info)]]
    rows = [_as_list(row) for row in rows]
    if not rows or any(not isinstance(row, list) or len(row) != 2 for row in rows):
        raise _refuse("must be one thickness, or rows of two as [[-38, 3.2], [36.5, 2.5]]")
    return rows


def _parsed(value: Any, info: ValidationInfo) -> str:
    """Read a single length at once, so that it is faulted once, and hand it on in mm."""
    return f"{_parse(value, 'length', info)!r} mm"


Text = Annotated[str | None, PlainValidator(_text)]
Length = Annotated[float | None, _quantity("length")]
Stress = Annotated[float | None, _quantity("stress")]
Hardness = Annotated[float | None, _quantity("hardness")]
Temperature = Annotated[float | None, _quantity("temperature")]
Time = Annotated[float | None, _quantity("time")]
Mass = Annotated[float | None, _quantity("mass")]
Inertia = Annotated[float | None, _quantity("inertia")]
Number = Annotated[float | None, _quantity("number")]
Two = tuple[Length, Length]
OneOrTwo = Annotated[Two | None, BeforeValidator(_one_or_two)]
Rows = Annotated[list[Two] | None, BeforeValidator(_rows)]
PadEdges = Annotated[Two | None, _pair("[27, 36.5]")]
Force = Annotated[float, _quantity("force")]
ForcePair = Annotated[tuple[Force, Force] | None, _pair('["4 lbf", "6 lbf"]')]
Support = Annotated[str | float | None, PlainValidator(_support)]
Finish = Annotated[str | None, PlainValidator(_finish)]
