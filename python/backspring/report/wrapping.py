"""Folds lines so that they fit, and never between a number and the word that it belongs to."""

from __future__ import annotations

import re
import textwrap

COLUMNS = 80
# Stands for a space that no line may end at.
_TIE = "\u00a0"
_TIED = re.compile(r"(?<=\d) (?=[A-Za-z%])|(?<=%) (?=of )|(?P<before_number> )(?=[-+\d])")
# A number stays with these before it. Looked for one by one in the pattern, they would take longer
# to prepare than a report to fold.
_OF_NUMBER = (
    "station", "margin", "least", "most", "from", " to", " at", " by", "with", "leave", "stress",
)  # fmt: skip


def folded(line: str, width: int = COLUMNS, indent: str = "  ") -> str:
    """Fold a line; what follows stands in by `indent`."""
    # Most are short enough; the library would take as long over these.
    if len(line) <= width and line.isprintable():
        return line.rstrip()
    tied = _tied(line)
    lines = textwrap.wrap(
        tied,
        max(width, 1),
        subsequent_indent=indent,
        break_long_words=False,
        break_on_hyphens=False,
    )
    return "\n".join(lines).replace(_TIE, " ")


def _tied(text: str) -> str:
    return _TIED.sub(_tie_or_space, text)


def _tie_or_space(space: re.Match[str]) -> str:
    alone = space["before_number"] and not space.string.endswith(_OF_NUMBER, 0, space.start())
    return " " if alone else _TIE


def narrowest(text: str) -> int:
    """Return the least width that a text can be folded to."""
    return max(map(len, _tied(text).split(" ")))


def that_fits(title: str, *parts: str) -> str:
    """Join what fits into one line, the most important first; tables tell the rest."""
    line = f"{title}: {parts[0]}"
    for part in parts[1:]:
        if len(line) + len(part) + 2 > COLUMNS:
            break
        line = f"{line}, {part}"
    return line
