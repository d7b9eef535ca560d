"""`--watch`: a command again whenever a file that it reads is changed."""

from __future__ import annotations

import argparse
import time
from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.cli.given_design import STANDARD_INPUT
from backspring.cli.streams import tell
from backspring.cli.usage import UsageError

if TYPE_CHECKING:
    from pathlib import Path

_PAUSE_S = 0.3
_Stamp = tuple[int, int, int] | None


def add_watch(parser: argparse.ArgumentParser) -> None:
    """Add the option."""
    parser.add_argument(
        "--watch", action="store_true", help="again whenever the file is changed, until Ctrl-C"
    )


def changes(options: argparse.Namespace) -> Iterator[None]:
    """Go round once; where a file is watched, again after every change of it until Ctrl-C."""
    if not getattr(options, "watch", False):
        return iter((None,))
    if options.design in (None, STANDARD_INPUT):
        raise UsageError("backspring check: --watch goes with a design file")
    if options.json:
        raise UsageError("backspring check: --json prints one document: leave out --watch")
    from pathlib import Path

    return _rounds([Path(each) for each in (options.design, options.log) if each is not None])


def _rounds(paths: list[Path]) -> Iterator[None]:
    before = _stamps(paths)
    while True:
        yield
        tell(f"\nwatching {', '.join(map(str, paths))}; Ctrl-C ends")
        try:
            while (now := _stamps(paths)) == before or None in now:
                time.sleep(_PAUSE_S)
        except KeyboardInterrupt:
            return
        before = now


def _stamps(paths: list[Path]) -> list[_Stamp]:
    return [_stamp(path) for path in paths]


def _stamp(path: Path) -> _Stamp:
    """Tell one state of a file from another; none while an editor puts a new one in its place."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size, found.st_ino
