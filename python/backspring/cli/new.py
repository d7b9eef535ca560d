"""`backspring new`: a design file to start from."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from typing import Any

from backspring.cli.answer import Answer
from backspring.cli.usage import UsageError
from backspring.cli.values import units_of_given
from backspring.new_joint.measured import MEASURES, measured_design
from backspring.new_joint.measures import parted
from backspring.new_joint.starter import new_design

_ROWS = ("thickness", "pad")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add = parser.add_argument
    add("--name", help="name of the pattern")
    add("--steel", default="1075", help="steel of the spring (default: 1075)")
    add("--hardness", default="46", metavar="HRC", help="after its temper (default: 46)")
    add("-o", "--output", metavar="FILE", help="write it there; else it is printed")
    add("--force", action="store_true", help="write over a file that is there")
    starter = parser.add_argument_group("of a knife that is not there yet")
    starter.add_argument("--half-stop", metavar="yes|no", help="(default: yes)")
    starter.add_argument(
        "--pull", metavar="FORCE", help="wanted at the nail nick (default: 18 N, or 4 lbf)"
    )
    measured = parser.add_argument_group(
        "of a knife in the hand", 'each as "36.9 +- 0.02 mm"; +- is one standard deviation'
    )
    measured.add_argument("--measured", action="store_true", help="made from what calipers told")
    for name, meaning in MEASURES.items():
        if name not in (*_ROWS, "half_stop"):
            measured.add_argument(_option(name), metavar="LENGTH", help=meaning)
    measured.add_argument("--half-stop-face", metavar="LENGTH", help=MEASURES["half_stop"])
    measured.add_argument("--pad", nargs=2, metavar=("REAR", "FRONT"), help=MEASURES["pad"])
    measured.add_argument(
        "--thickness",
        nargs="+",
        metavar="STATION=THICKNESS",
        help="back to belly; stations from the middle pin, + towards the pivot",
    )


def run(options: argparse.Namespace) -> Answer:
    """Make the file; `--units` are those it is written in, and of a bare number.

    Where all that is given is written in inches and pounds, the file is too.
    """
    given = _given(options)
    units = units_of_given(options, [options.pull, *_written(given)])
    if options.measured:
        unwanted = [each for each in ("half-stop", "pull") if _held(options, each) is not None]
        _refuse(
            [f"--{each}" for each in unwanted],
            "is for a knife that is not there yet: leave out --measured",
        )
        starter = measured_design(
            given,
            options.output,
            name=options.name or "My knife",
            units=units,
            steel=options.steel,
            hardness=options.hardness,
            force=options.force,
        )
    else:
        _refuse([*map(_option, given)], "goes with --measured")
        starter = new_design(
            options.output,
            name=options.name or "My pattern",
            units=units,
            steel=options.steel,
            hardness=options.hardness,
            half_stop=_yes(options.half_stop),
            pull=options.pull,
            force=options.force,
        )
    return Answer(starter.status, starter.to_dict(), starter.laid_out(), path=options.output)


def _given(options: argparse.Namespace) -> dict[str, Any]:
    names = {each: "half_stop_face" if each == "half_stop" else each for each in MEASURES}
    held = {each: getattr(options, name) for each, name in names.items()}
    found = {each: value for each, value in held.items() if value is not None}
    if "thickness" in found:
        found["thickness"] = [each.split("=", 1) for each in found["thickness"]]
    return found


def _written(given: dict[str, Any]) -> Iterator[str]:
    """Every quantity without its spread, with the unit that either has."""
    for value in given.values():
        for each in [value] if isinstance(value, str) else value:
            yield from (parted(part)[0] for part in ([each] if isinstance(each, str) else each))


def _held(options: argparse.Namespace, option: str) -> Any:
    return getattr(options, option.replace("-", "_"))


def _refuse(names: list[str], why: str) -> None:
    if names:
        raise UsageError(f"backspring new: {', '.join(names)} {why}")


def _option(name: str) -> str:
    return f"--{'half_stop_face' if name == 'half_stop' else name}".replace("_", "-")


def _yes(word: str | None) -> bool:
    if word not in (None, "yes", "no"):
        raise UsageError(f'backspring new: --half-stop must be yes or no, got "{word}"')
    return word != "no"
