"""Finds the tests of a clone, and which of their files are asked for."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from backspring.evidence.result import source_name
from backspring.faults import Fault, invalid, near_match

# The file that makes a folder the tests of a clone: by it figures are held to theirs.
_MARK = "agreement.py"
# Files of rows are no part of the tests; of drawn joints there may be few.
_PUBLISHED, _DRAWN = "published/test_*.py", "oracle/rows_*.py"
_MODELS, _LONG = "oracle/test_*.py", "oracle/long_*.py"


def tests_folder(named: str | None) -> Path:
    """Find the folder: the one named, else the nearest above where we are, or the package's own.

    Raises InvalidInput, saying what to do, where there is none.
    """
    if named is not None:
        places = [Path(named)]
    else:
        here = Path.cwd()
        places = [each / "tests" for each in (here, *here.parents)]
        places.append(Path(__file__).parents[3] / "tests")
    for place in places:
        if (place / _MARK).is_file():
            return place.resolve()
    where = "here or above" if named is None else f"in {named}"
    text = (
        f"no tests {where}: the cases are in the source, not in the installed package; "
        "run this in a clone of it, or name its tests with --tests"
    )
    raise invalid([Fault("no-tests", "--tests", text)])


def chosen(tests: Path, quick: bool, long: bool, only: Sequence[str]) -> list[Path]:
    """Choose test files; what is named is run however long it takes.

    Raises InvalidInput where a name is no file's.
    """
    published, drawn, models, long_ones = (
        _found(tests, like) for like in (_PUBLISHED, _DRAWN, _MODELS, _LONG)
    )
    known = [*published, *drawn, *models, *long_ones]
    if only:
        faults = [_unknown(word, known) for word in only if not _named(word, known)]
        if faults:
            raise invalid(faults)
        return [each for each in known if any(_named(word, [each]) for word in only)]
    if quick:
        return [*published, *drawn]
    return known if long else [*published, *drawn, *models]


def left_for_later(tests: Path, files: Iterable[Path]) -> list[Path]:
    """List the long ones that are not among the files."""
    return [each for each in _found(tests, _LONG) if each not in files]


def _found(tests: Path, pattern: str) -> list[Path]:
    return sorted(tests.glob(pattern))


def _named(word: str, files: Iterable[Path]) -> bool:
    return any(word in source_name(each.name) for each in files)


def _unknown(word: str, known: Iterable[Path]) -> Fault:
    near = near_match(word, [source_name(each.name) for each in known])
    hint = f': did you mean "{near}"?' if near else ""
    return Fault("unknown-name", "--only", f"no source has {word} in its name{hint}")
