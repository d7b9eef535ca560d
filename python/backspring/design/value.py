"""How the value of one key is read, and which numbers of the core it stands for."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from backspring._core import Field, Form
from backspring.design.fields import is_number, kind_of
from backspring.design.tang_rows import MOST_ROWS, require_sound, triples
from backspring.design.value_faults import refused as _refused
from backspring.errors import InvalidInput
from backspring.unit_table import Kind, a_kind
from backspring.units import System, parse

# Twice what an outline may have; more would only cost time.
_MOST_ROWS = 2000
_Read = Callable[[Field, Any, System], Any]


def read_value(row: Field, value: Any, system: System) -> Any:
    """Read a value into the core's units, in the shape that a maker would write.

    Raises InvalidInput with every fault.
    """
    value = _as_list(value)
    if isinstance(value, list) and len(value) > _MOST_ROWS:
        raise _refused(f"must be at most {_MOST_ROWS} rows, got {len(value)}")
    return _READERS[row.form](row, value, system)


def numbers_of(row: Field, content: Any) -> list[float]:
    """Every number of a value that was read, as the core takes it: a pair, or rows in turn."""
    # Asked of the core once: each time it makes the name anew.
    form = row.form
    if form is Form.flag:
        return [1.0 if content else 0.0]
    if isinstance(content, str) or not is_number(row):
        return []
    if form is Form.points:
        return [number for each in content for number in each]
    if form is Form.outline:
        return [number for each in triples(content) for number in each]
    if form is Form.profile:
        rows = content if isinstance(content, list) else [[0.0, content]]
        return [number for each in rows for number in each]
    if form is Form.one_or_two and not isinstance(content, list):
        return [content, content]
    return content if isinstance(content, list) else [content]


def judged_numbers(row: Field, content: Any) -> list[float]:
    """Return the numbers that the range of a key is about: of a profile the thicknesses."""
    numbers = numbers_of(row, content)
    return numbers[1::2] if row.form is Form.profile else numbers


def _as_list(value: Any) -> Any:
    # Arrays are taken as lists; a quantity of a unit library also has tolist but no length here.
    if hasattr(value, "tolist") and not hasattr(value, "to"):
        return value.tolist()
    return list(value) if isinstance(value, tuple) else value


def _number(row: Field, value: Any, system: System) -> float:
    return parse(value, kind_of(row), system)


def _all(places: Iterator[tuple[str, Any]], kind: Kind, system: System) -> list[float]:
    """Read values one by one; each fault says which it is."""
    read, wrong = [], []
    for place, value in places:
        try:
            read.append(parse(value, kind, system))
        except InvalidInput as error:
            wrong.append(f"{place}: {error}")
    if wrong:
        raise _refused(*wrong)
    return read


def _two(row: Field, values: list[Any], system: System) -> list[float]:
    places = ((f"value {place}", value) for place, value in enumerate(values, start=1))
    return _all(places, kind_of(row), system)


def _pair(row: Field, values: Any, system: System) -> list[float]:
    if not isinstance(values, list) or len(values) != 2:
        got = f"{len(values)} values" if isinstance(values, list) else "one value"
        raise _refused(f"must be two values, as {row.example}, got {got}")
    return _two(row, values, system)


def _one_or_two(row: Field, values: Any, system: System) -> float | list[float]:
    if not isinstance(values, list):
        return _number(row, values, system)
    if len(values) != 2:
        raise _refused(f"must be one value or two, got {len(values)} values")
    first, second = _two(row, values, system)
    return first if first == second else [first, second]


def _readings(row: Field, values: Any, system: System) -> float | list[float]:
    if not isinstance(values, list):
        return _number(row, values, system)
    if not values:
        raise _refused(f"must be one value, or a list of readings as [{row.example}]")
    read = _two(row, values, system)
    return read[0] if len(read) == 1 else read


def _profile(row: Field, value: Any, system: System) -> float | list[list[float]]:
    if not isinstance(value, list):
        return _number(row, value, system)
    rows = [_as_list(each) for each in value]
    if not rows or any(not isinstance(each, list) or len(each) != 2 for each in rows):
        raise _refused(f"must be one {_what(row)}, or rows of two as [[-38, 3.2], [36.5, 2.5]]")
    places = (
        (f"row {place}, {what}", number)
        for place, each in enumerate(rows, start=1)
        for what, number in zip(("station", _what(row)), each, strict=True)
    )
    read = _all(places, kind_of(row), system)
    pairs = [list(each) for each in zip(read[::2], read[1::2], strict=True)]
    return pairs[0][1] if len(pairs) == 1 else pairs


def _what(row: Field) -> str:
    """Name the number of a row, as thickness or height of the mid-line."""
    name = row.key.rpartition(".")[2].replace("_", " ")
    return "height" if name == "mid line" else name


def _points(row: Field, value: Any, system: System) -> list[list[float]]:
    rows = [_as_list(each) for each in value] if isinstance(value, list) else []
    if not rows or any(not isinstance(each, list) or len(each) != 2 for each in rows):
        raise _refused(f"must be rows of two lengths, as {row.example}")
    places = (
        (f"row {place}, {what}", number)
        for place, each in enumerate(rows, start=1)
        for what, number in zip(("along", "outward"), each, strict=True)
    )
    read = _all(places, kind_of(row), system)
    return [list(each) for each in zip(read[::2], read[1::2], strict=True)]


def _outline(row: Field, value: Any, system: System) -> list[list[float]]:
    rows = [_as_list(each) for each in value] if isinstance(value, list) else []
    if not 3 <= len(rows) <= MOST_ROWS:
        got = f"{len(rows)} rows" if rows else "none"
        raise _refused(f"must be from 3 to {MOST_ROWS} rows of [x, y] or [x, y, bulge], got {got}")
    wrong = [
        f"row {place}: must be [x, y] or [x, y, bulge], got {each}"
        for place, each in enumerate(rows, start=1)
        if not isinstance(each, list) or len(each) not in (2, 3)
    ]
    wrong += [
        f"row {place}: a bulge is a plain number from -1000 to 1000, got {each[2]}"
        for place, each in enumerate(rows, start=1)
        if isinstance(each, list) and len(each) == 3 and not _is_bulge(each[2])
    ]
    if wrong:
        raise _refused(*wrong)
    places = (
        (f"row {place}, {what}", number)
        for place, each in enumerate(rows, start=1)
        for what, number in zip("xy", each[:2], strict=True)
    )
    read = iter(_all(places, kind_of(row), system))
    made = [[next(read), next(read), *map(float, each[2:])] for each in rows]
    require_sound(made)
    return made


def _is_bulge(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and abs(value) <= 1e3


def _text(_: Field, value: Any, __: System) -> str:
    if not isinstance(value, str):
        raise _refused(f"must be text in quotes, got {value}")
    if not value.strip() or not value.isprintable():
        raise _refused("must be one line of text")
    return value


def _choice(row: Field, value: Any, _: System) -> str:
    if value in row.choices:
        return str(value)
    raise _refused(f'must be one of {_words(row)}, got "{value}"')


def _choice_or_number(row: Field, value: Any, system: System) -> str | float:
    if value in row.choices:
        return str(value)
    kind = kind_of(row)
    if isinstance(value, str) and not any(letter.isdigit() for letter in value):
        raise _refused(f'must be one of {_words(row)} or {a_kind(kind)}, got "{value}"')
    return parse(value, kind, system)


def _flag(_: Field, value: Any, __: System) -> bool:
    if not isinstance(value, bool):
        got = f'"{value}"' if isinstance(value, str) else value
        raise _refused(f"must be true or false, without quotes, got {got}")
    return value


def _words(row: Field) -> str:
    return ", ".join(f'"{word}"' for word in row.choices)


_READERS: dict[Form, _Read] = {
    Form.number: _number,
    Form.one_or_two: _one_or_two,
    Form.pair: _pair,
    Form.readings: _readings,
    Form.profile: _profile,
    Form.points: _points,
    Form.outline: _outline,
    Form.choice: _choice,
    Form.choice_or_number: _choice_or_number,
    Form.flag: _flag,
    Form.text: _text,
}
