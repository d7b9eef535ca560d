"""What commands that draw have in common."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from backspring.faults import Fault, invalid


def write_picture(output: str, draw: Callable[[Any], Any]) -> None:
    """Write the figure that `draw` makes of the module of pictures.

    The file's name is looked at before anything is drawn. Raises InvalidInput, saying what to
    install, without the drawing library.
    """
    try:
        from backspring import picture
    except ModuleNotFoundError as error:
        if error.name is None or error.name.split(".")[0] != "matplotlib":
            raise
        message = 'pictures need matplotlib: pip install "backspring[plot]"'
        raise invalid([Fault("missing-package", "", message)]) from None
    picture.require_suffix(Path(output))
    picture.save(draw(picture), output)
