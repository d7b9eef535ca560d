"""Drawings of a page, made by the room of pictures, which needs a library that may be missing."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

from backspring.faults import Fault, invalid
from backspring.report.page_parts import Drawing
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check import BladesCheck, Check

# A chart as wide as the text on paper, so that its letters keep their size.
_CHART_IN = (7.6, 3.9)
_IN_AXES = ("stress", "action", "back")


def picture_room() -> Any:
    """Load the room of pictures; raises InvalidInput, saying what to install, where it cannot."""
    try:
        return import_module("backspring.picture")
    except ModuleNotFoundError as error:
        if error.name is None or error.name.split(".")[0] != "matplotlib":
            raise
        message = 'pictures need matplotlib: pip install "backspring[plot]"'
        raise invalid([Fault("missing-package", "", message)]) from None


def drawing(
    check: Check | BladesCheck,
    kind: str,
    caption: str,
    units: System,
    place: str,
    **options: str,
) -> Drawing:
    """Draw a check; `place` is a name that no other drawing of the page has."""
    room = picture_room()
    if kind in _IN_AXES:
        canvas = import_module("backspring.picture.canvas")
        figure = canvas.Picture(figsize=_CHART_IN, layout="constrained")
        room.plot(check, kind, ax=figure.add_subplot(), units=units)
    else:
        figure = room.plot(check, kind, units=units, **options)
    inline = import_module("backspring.picture.inline")
    return Drawing(caption, inline.inline_svg(figure, caption, place))
