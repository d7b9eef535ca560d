"""The fields of a steel's file, and what each may hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from backspring.faults import Fault, near_match


@dataclass(frozen=True, slots=True)
class Number:
    """A number in a range."""

    least: float
    greatest: float


@dataclass(frozen=True, slots=True)
class Choice:
    """One of some words."""

    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Rows:
    """Tables of one kind, so many at least."""

    row: Fields
    least: int = 0


@dataclass(frozen=True, slots=True)
class Numbers:
    """So many numbers."""

    count: int


TEXT, TEXTS, CITED = "text", "texts", "sources"
Kind = Number | Choice | Rows | Numbers | str | Mapping[str, Any]
Fields = Mapping[str, Kind]
# Keys with this mark must be given.
_MUST = "!"
_HRC, _CELSIUS, _MPA = Number(0.0, 72.0), Number(20.0, 1200.0), Number(1.0, 5000.0)
_SURE: Fields = {
    "confidence": Choice(("read", "memory", "derived")),
    "sources": CITED,
    "note": TEXT,
}


def _figure(least: float, greatest: float) -> Fields:
    number = Number(least, greatest)
    return {"value!": number, "low": number, "high": number, **_SURE}


_TEMPERED: Fields = {
    "temper_c!": _CELSIUS, "hardness_hrc!": _HRC, "low_hrc": _HRC, "high_hrc": _HRC, **_SURE,
}  # fmt: skip
_ANY = Number(-1e9, 1e9)
_FIT: Fields = {
    "time_constant!": Number(1.0, 50.0), "mean!": _ANY, "deviation!": Number(1e-6, 1e6),
    "coefficients!": Numbers(4), "rms_hrc!": _HRC, "greatest_error_hrc!": _HRC,
    "number_of_points!": Number(1.0, 1e6), "coolest_c!": _CELSIUS, "hottest_c!": _CELSIUS,
    "shortest_s!": Number(0.1, 1e7), "longest_h!": Number(1e-4, 1e4), "softest_hrc!": _HRC, **_SURE,
}  # fmt: skip
STEEL: Fields = {
    "name!": TEXT, "also_called": TEXTS, "family": TEXT,
    "elastic!": {
        "youngs_modulus_mpa!": _figure(1000.0, 1e6), "poisson": _figure(0.0, 0.49),
        "density_kg_m3": _figure(1000.0, 30000.0),
    },
    "strength!": {
        "yield_ratio!": _figure(0.1, 1.0),
        "hardness_range_hrc": {"low!": _HRC, "high!": _HRC, **_SURE},
        "conflicts": TEXTS, "cautions": TEXTS,
    },
    "temper": {
        "treatment": TEXT, "hold": TEXT, "hold_h": Number(1e-3, 1000.0),
        "as_quenched": {"hrc!": _HRC, **_SURE}, "spread": {"hrc!": _HRC, **_SURE},
        "points!": Rows(_TEMPERED, 2), "beside": Rows(_TEMPERED), "fit": _FIT, **_SURE,
    },
    "embrittlement": Rows({"low_c!": _CELSIUS, "high_c!": _CELSIUS, **_SURE}),
    "points": Rows({
        "condition!": TEXT, "loading": Choice(("tension", "compression")), "hardness_hrc": _HRC,
        "yield_mpa": _MPA, "tensile_mpa": _MPA, **_SURE,
    }),
}  # fmt: skip
SOURCE: Fields = {
    "title!": TEXT, "kind": TEXT, "confidence": _SURE["confidence"], "author": TEXT,
    "year": Number(1500.0, 3000.0), "page": TEXT, "note": TEXT,
}  # fmt: skip


@dataclass
class Checked:
    """What is wrong with a file; `sources` are the keys that may be cited."""

    sources: set[str]
    faults: list[Fault] = field(default_factory=list)

    def refuse(self, key: str, message: str) -> None:
        """Record what is wrong with a key."""
        self.faults.append(Fault("bad-value", key, message))

    def table(self, fields: Fields, data: Mapping[str, Any], prefix: str) -> None:
        """Check a table: keys that are unknown or missing, and every value."""
        kinds = {name.removesuffix(_MUST): kind for name, kind in fields.items()}
        for name, value in data.items():
            if name in kinds:
                self._value(kinds[name], value, f"{prefix}{name}")
                continue
            near = near_match(name, kinds)
            hint = f'did you mean "{near}"?' if near else f"known are {', '.join(kinds)}"
            self.faults.append(Fault("unknown-key", f"{prefix}{name}", f"unknown key: {hint}"))
        for name in fields:
            if name.endswith(_MUST) and name.removesuffix(_MUST) not in data:
                key = f"{prefix}{name.removesuffix(_MUST)}"
                self.faults.append(Fault("missing-key", key, "missing"))
        self._order(data, prefix)

    def _order(self, data: Mapping[str, Any], prefix: str) -> None:
        """Hold what is lowest below what is likely, and that below what is highest."""
        for names in (("low", "value", "high"), ("low_hrc", "hardness_hrc", "high_hrc"),
                      ("low_c", "high_c"), ("coolest_c", "hottest_c")):  # fmt: skip
            given = [(name, data[name]) for name in names if _is_number(data.get(name))]
            for (below, low), (above, high) in zip(given, given[1:], strict=False):
                if low > high:
                    most = f"must be at most {above}, {high:g}, got {low:g}"
                    self.refuse(f"{prefix}{below}", most)

    def _value(self, kind: Kind, value: Any, key: str) -> None:
        if isinstance(kind, Number):
            self._number(kind, value, key)
        elif isinstance(kind, Choice):
            if value not in kind.words:
                self.refuse(key, f"must be one of {', '.join(kind.words)}, got {value!r}")
        elif isinstance(kind, Numbers):
            if not (isinstance(value, list) and [*map(_is_number, value)] == [True] * kind.count):
                self.refuse(key, f"must be {kind.count} numbers")
        elif isinstance(kind, Rows):
            self._rows(kind, value, key)
        elif isinstance(kind, str):
            self._text(kind, value, key)
        elif isinstance(value, Mapping):
            self.table(kind, value, f"{key}.")
        else:
            self.refuse(key, f"must be a table, as {{ value = ... }}, got {value!r}")

    def _number(self, kind: Number, value: Any, key: str) -> None:
        if not _is_number(value):
            self.refuse(key, f"must be a number, got {value!r}")
        elif not kind.least <= value <= kind.greatest:
            self.refuse(key, f"must be from {kind.least:g} to {kind.greatest:g}, got {value:g}")

    def _rows(self, kind: Rows, value: Any, key: str) -> None:
        if not isinstance(value, list) or not all(isinstance(row, Mapping) for row in value):
            self.refuse(key, "must be rows in braces: [{ ... }, { ... }]")
            return
        if len(value) < kind.least:
            self.refuse(key, f"must have at least {kind.least} rows, got {len(value)}")
        for place, row in enumerate(value, start=1):
            self.table(kind.row, row, f"{key}.row {place}.")
        tempers = [row.get("temper_c") for row in value] if kind.least else []
        if all(map(_is_number, tempers)) and tempers != sorted({*tempers}):
            self.refuse(key, "must stand in rising order of temper_c")

    def _text(self, kind: str, value: Any, key: str) -> None:
        if kind == TEXT:
            if not isinstance(value, str) or not value.isprintable() or not value.strip():
                self.refuse(key, f"must be one line of text in quotes, got {value!r}")
        elif not isinstance(value, list) or not all(isinstance(each, str) for each in value):
            self.refuse(key, f'must be texts in brackets, as ["..."], got {value!r}')
        elif kind == CITED:
            for each in value:
                if each not in self.sources:
                    where = "put it into sources.toml beside the steel"
                    self.refuse(key, f'no source "{each}": {where}')


def _is_number(value: Any) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool) and value == value
