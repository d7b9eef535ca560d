"""Sliders over one design in a notebook: drawing, pull curve and verdict as they move."""

from __future__ import annotations

import html
from importlib import import_module
from typing import Any

from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.errors import Error
from backspring.faults import Fault, invalid
from backspring.picture import svg
from backspring.picture.panel_curve import HEIGHT_PX, curve_parts, pull_curves
from backspring.picture.panel_joint import frame_of, joint_parts
from backspring.picture.panel_sliders import BLADE, Setting, changes_of, settings_of
from backspring.picture.position_panel import between_view
from backspring.question.check import Check, check_blade
from backspring.report.check import headline, target_row
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.to_change import HEADING, to_change
from backspring.report.verdict import verdict_blocks
from backspring.units import System

_WIDTH_PX = 720.0
_FRAMED_DEG = (0.0, 90.0, 180.0)


def panel(design: Design, *, units: System | None = None) -> Panel:
    """Show sliders for thickness, preload, hardness and corner radius of a design in a notebook.

    The joint is drawn at the angle of the last slider, the pull curve over the one the design
    started with; under them stand the verdict and the lines of code that give the same answer
    without sliders. Thickness is that of the whole spring, told by its size at the middle pin.
    `units` are the design's own when left out. Raises InvalidInput for several blades at once, and
    where ipywidgets is missing.
    """
    if design.of_all_blades:
        names = " or ".join(f'design.seen_from("{name}")' for name in design.blades)
        raise refusal("design", f"has several blades: give one of them, {names}")
    return Panel(design, units or design.units)


class Panel:
    """Sliders and what follows from them; shows itself where a notebook's cell ends on it.

    `sliders` are widgets by name, `box` holds all. `design` and `check` are those of the sliders as
    they stand, or as they last stood where those are refused: then `refused` says why. `changes`
    are what design.replace() of the first design takes, `code` writes that as lines to paste.
    """

    def __init__(self, design: Design, units: System) -> None:
        widgets = _widgets()
        self._first, self._units = design, units
        self._settings = settings_of(design, units)
        start = check_blade(design)
        self._frame = frame_of([between_view(start, at) for at in _FRAMED_DEG], _WIDTH_PX)
        self._started = pull_curves(start)
        self.design: Design = design
        self.check: Check = start
        self.refused: str = ""
        self.sliders: dict[str, Any] = {
            each.name: _slider(widgets, each) for each in self._settings
        }
        self.sliders[BLADE].value = start.travel.peak_stress_angle_deg // 1.0
        self._picture, self._answer, self._code = (widgets.HTML() for _ in range(3))
        self.box: Any = widgets.VBox(
            [*self.sliders.values(), self._picture, self._answer, self._code]
        )
        self.show()
        for slider in self.sliders.values():
            slider.observe(lambda _: self.show(), names="value")

    @property
    def changes(self) -> dict[str, Any]:
        """Keys and values that the moved sliders change."""
        return changes_of(
            self._settings, {name: slider.value for name, slider in self.sliders.items()}
        )

    @property
    def code(self) -> str:
        """Lines that give the same answer without sliders."""
        changes = self.changes
        if not changes:
            return "bs.check(design)"
        rows = "".join(f'    "{key}": {value!r},\n' for key, value in changes.items())
        return f"changed = design.replace(**{{\n{rows}}})\nbs.check(changed)"

    def show(self) -> None:
        """Work everything out again for the sliders as they stand."""
        try:
            design = self._first.replace(**self.changes)
            self.check, self.design, self.refused = check_blade(design), design, ""
        except Error as error:
            self.refused = str(error)
            told = f"{error}. Drawn is what worked last."
            self._answer.value = f"<p><strong>{html.escape(told)}</strong></p>"
        else:
            self._picture.value = self._drawn()
            self._answer.value = self._told()
        self._code.value = f"<pre>{html.escape(self.code)}</pre>"

    def _drawn(self) -> str:
        check, angle = self.check, float(self.sliders[BLADE].value)
        view = between_view(check, angle)
        yield_mpa = check.design.core.strength.yield_mpa.value
        joint = joint_parts(view, self._frame, yield_mpa, self._units)
        curves = curve_parts(
            pull_curves(check),
            self._started,
            pulls=check.design.core.blade.nail_nick_mm is not None,
            blade_angle_deg=angle,
            width_px=_WIDTH_PX,
            system=self._units,
        )
        title = check.design.title
        return svg.drawing(_WIDTH_PX, self._frame.height_px, joint, f"{title}, the joint") + (
            svg.drawing(_WIDTH_PX, HEIGHT_PX, curves, f"{title}, the pull")
        )

    def _told(self) -> str:
        verdict = verdict_blocks(self.check.verdict, self._units, everything=True)
        blocks: list[Block] = [block for block in verdict if isinstance(block, TextTable)]
        if self.check.targets:
            rows = tuple(target_row(each, self._units) for each in self.check.targets)
            blocks.append(TextTable("Targets", ("", "now", "wanted", ""), rows))
        blocks.append(Lines(HEADING, (to_change(self.check, self._units),)))
        return Report(headline(self.check, self._units), tuple(blocks)).html()

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.box._repr_mimebundle_(**asked)


def _slider(widgets: Any, setting: Setting) -> Any:
    decimals = max(0, len(f"{setting.step:.6f}".rstrip("0").partition(".")[2]))
    return widgets.FloatSlider(
        value=setting.start,
        min=setting.least,
        max=setting.most,
        step=setting.step,
        description=f"{setting.name} [{setting.unit}]",
        readout_format=f".{decimals}f",
        style={"description_width": "16em"},
        layout={"width": "44em"},
    )


def _widgets() -> Any:
    """Load the library of widgets; raises InvalidInput, saying what to install, without it."""
    try:
        return import_module("ipywidgets")
    except ModuleNotFoundError:
        message = 'the panel needs ipywidgets: pip install "backspring[notebook]"'
        raise invalid([Fault("missing-package", "", message)]) from None
