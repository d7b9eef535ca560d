"""Reads a folder of knives' logs for what the shop's knives have in common."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.design.load import load
from backspring.errors import Error
from backspring.fit.habits import LeftOut, ShopHabits
from backspring.fit.knife import Knife
from backspring.fit.log_entry import Entry
from backspring.fit.log_file import design_of_log
from backspring.fit.pool_habits import habits_of
from backspring.fit.told_by_log import LogTold, told_by

# Two knives may read alike once or twice.
_ALIKE_BY_CHANCE = 2


def shop_habits(
    folder: str | os.PathLike[str],
    designs: Design | Sequence[Design] = (),
    *,
    without: str | os.PathLike[str] | None = None,
) -> ShopHabits:
    """Learn what a shop's knives have in common from a folder of their logs (*.csv).

    Each log needs the design it was begun with: a *.toml beside it, by whatever name, or one of
    `designs`. `without` is a log that does not count, that of the knife to be fitted. A log that
    cannot be read or estimated, or is a copy of another, is left out, and told. Random effects
    after DerSimonian and Laird; with fewer than five logs common practice stays.
    """
    place = Path(folder)
    if not place.is_dir():
        raise refusal("habits", f"no such folder: {place}")
    known = [designs] if isinstance(designs, Design) else [*designs]
    left_out: list[LeftOut] = []
    known += _designs(place, left_out)
    told: dict[Path, LogTold] = {}
    seen: dict[tuple[Entry, ...], str] = {}
    for path in sorted(place.glob("*.csv")):
        if without is not None and path.resolve() == Path(without).resolve():
            continue
        try:
            knife = _knife(path, known)
            _require_no_copy(seen.setdefault(knife.logged, path.name), path.name, knife)
            told[path.resolve()] = told_by(knife.estimate())
        except Error as error:
            left_out.append(LeftOut(path.name, str(error)))
    habits = habits_of([*told.values()])
    return ShopHabits(str(place), tuple(told), habits, tuple(left_out))


def _require_no_copy(first: str, name: str, knife: Knife) -> None:
    """Refuse a log that is another to the last figure, unless both hold next to nothing."""
    if first != name and len(knife.logged) > _ALIKE_BY_CHANCE:
        raise refusal("", f"the same as {first} to the last entry: a knife counts once")


def _designs(place: Path, left_out: list[LeftOut]) -> Iterator[Design]:
    for path in sorted(place.glob("*.toml")):
        try:
            yield load(path)
        except Error as error:
            left_out.append(LeftOut(path.name, str(error)))


def _knife(path: Path, known: Iterable[Design]) -> Knife:
    """Find the design that a log is of, and read the log."""
    name, shape = design_of_log(path)
    for design in known:
        if shape == design.shape_sha256 or (not shape and name == design.name):
            knife = Knife(design, path)
            if not knife.entries:
                raise refusal("", "nothing logged yet")
            knife.require_agreement()
            return knife
    raise refusal(
        "",
        f'its design "{name}", as it was when the log was begun, is not in the folder: put it '
        f"there as {path.stem}.toml",
    )
