"""A figure that no window holds and that a notebook shows by itself."""

from __future__ import annotations

import io

from matplotlib.figure import Figure


class Picture(Figure):
    """A figure without pyplot or global state, shown where a notebook ends on it."""

    def _repr_png_(self) -> bytes:
        shown = io.BytesIO()
        self.savefig(shown, format="png")
        return shown.getvalue()
