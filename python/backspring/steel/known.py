"""Steels a spring can be made of: figures with their bands and sources, and their tempers.

Temperatures and times are numbers in C and h, or text with a unit: "515 C", "950 F", "60 s".
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cache

from backspring.steel import tempering
from backspring.steel.files import all_sources, all_steels, steel_by_file
from backspring.steel.records import Figure, Source, Steel
from backspring.steel.tempering import AfterHeat
from backspring.units import Kind, parse

Quantity = float | str
Own = tuple[Steel, dict[str, Source]]
# Steels of one's own and what they cite, in this process.
_own: dict[str, Steel] = {}
_own_sources: dict[str, Source] = {}


def steel(name: str) -> Steel:
    """Look up a steel by its name or by another name it goes by; case does not matter."""
    return steel_beside(name, None)


def steel_beside(name: str, beside: Own | None) -> Steel:
    """Look up a steel, also the one that a design brings along."""
    others = [] if beside is None else [beside[0]]
    called = name.casefold()
    # Most designs name one steel by its own name: then the other files need not be read.
    found = None if _own or others else steel_by_file(called)
    found = found or _by_any_name().get(called) or _any_names(others).get(called)
    if found is None:
        raise LookupError(_unknown(name, [*_every(), *others]))
    return found


def is_known(name: str) -> bool:
    """Whether a steel goes by this name."""
    return name.casefold() in _by_any_name()


def names() -> tuple[str, ...]:
    """Names of all steels, sorted."""
    return tuple(each.name for each in _every())


def sources() -> dict[str, Source]:
    """Every source by its key."""
    return all_sources() | _own_sources


def own_sources() -> dict[str, Source]:
    """Return what steels of one's own cite, by key."""
    return dict(_own_sources)


def own(name: str) -> Own | None:
    """Return a steel of one's own with the sources it may cite; None for one that is shipped."""
    return (_own[name], dict(_own_sources)) if name in _own else None


def know_again(steel: Own | None) -> None:
    """Make a steel known that came along from another process."""
    if steel is not None:
        know([steel[0]], steel[1])


def know(steels: Iterable[Steel], cited: Mapping[str, Source]) -> None:
    """Make steels of one's own known in this process; one of the same name is replaced."""
    _own.update({each.name: each for each in steels})
    _own_sources.update(cited)
    _by_any_name.cache_clear()


def hardness_after_temper(name: str, temper_c: Quantity, time_h: Quantity | None = None) -> Figure:
    """Hardness [HRC] after a temper, with its band.

    Without a time the hold of the steel's table is meant, or 2 h where time counts. Raises
    OutOfRange outside the data, and for a steel without temper data.
    """
    return tempering.hardness_after(
        steel(name), parse(temper_c, "temperature"), _maybe(time_h, "time")
    )


def temper_for_hardness(
    name: str, hardness_hrc: Quantity, time_h: Quantity | None = None
) -> Figure:
    """Temper [C] that leaves a hardness; its band are the tempers that the data's band allows.

    Where the hardness stays level over a stretch of tempers, the lower end. Raises OutOfRange
    outside the data, and for a steel without temper data.
    """
    return tempering.temper_for(
        steel(name), parse(hardness_hrc, "hardness"), _maybe(time_h, "time")
    )


def hardness_after_heat(
    name: str,
    temper_c: Quantity,
    time_h: Quantity | None,
    later_c: Quantity,
    later_h: Quantity,
) -> AfterHeat:
    """Hardness left when a tempered part is heated once more, as by a hot moment at the grinder.

    A steel known by its table only keeps its hardness up to its temper; above it OutOfRange is
    raised, as everywhere outside the data.
    """
    return tempering.after_heat(
        steel(name),
        parse(temper_c, "temperature"),
        _maybe(time_h, "time"),
        parse(later_c, "temperature"),
        parse(later_h, "time"),
    )


def _every() -> list[Steel]:
    return sorted((*all_steels(), *_own.values()), key=lambda each: each.name)


def _maybe(value: Quantity | None, kind: Kind) -> float | None:
    return None if value is None else parse(value, kind)


@cache
def _by_any_name() -> dict[str, Steel]:
    return _any_names(_every())


def _any_names(steels: Iterable[Steel]) -> dict[str, Steel]:
    return {called.casefold(): each for each in steels for called in (each.name, *each.also_called)}


def _unknown(name: str, steels: Sequence[Steel]) -> str:
    import difflib

    # Zero for the letter O is the common slip with these names.
    alike = {
        called.casefold().replace("0", "o"): called
        for each in steels
        for called in (*each.also_called, each.name)
    }
    near = difflib.get_close_matches(name.casefold().replace("0", "o"), alike, n=1)
    hint = f'did you mean "{alike[near[0]]}"? ' if near else ""
    return f'unknown steel "{name}": {hint}known: {", ".join(each.name for each in steels)}'
