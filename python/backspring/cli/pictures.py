"""What commands that draw have in common."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from backspring.report.page_drawing import picture_room


def write_picture(output: str, draw: Callable[[Any], Any]) -> None:
    """Write the figure that `draw` makes of the module of pictures.

    The file's name is looked at before anything is drawn. Raises InvalidInput, saying what to
    install, without the drawing library.
    """
    picture = picture_room()
    picture.require_suffix(Path(output))
    picture.save(draw(picture), output)
