"""Every sentence on a margin or a notice, written from its numbers in the units asked for."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from backspring.notice import Notice, Number, Value, values_of
from backspring.report.display import Figure
from backspring.report.margin_sentences import MARGINS
from backspring.report.notice_sentences import NOTICES
from backspring.report.refusal_sentences import REFUSALS
from backspring.report.temper_sentences import TEMPERS
from backspring.units import System

if TYPE_CHECKING:
    from backspring import _core

# By code; a sentence without parts that come and go is a template.
SENTENCES = NOTICES | REFUSALS | TEMPERS


class Facts:
    """Numbers and names of one finding, ready to stand in a sentence."""

    def __init__(self, values: Mapping[str, Value], units: System) -> None:
        self._values, self._units = values, units

    def __contains__(self, name: str) -> bool:
        return name in self._values

    def __getattr__(self, name: str) -> Any:
        return self[name]

    def __getitem__(self, name: str) -> Any:
        value = self._values[name]
        if isinstance(value, Number):
            return Figure(value.value, self._units, value.quantity)
        if isinstance(value, (int, float)):
            return Figure(value, self._units)
        return value if isinstance(value, str) else value.text(self._units)


def notice_sentence(code: str, values: Mapping[str, Value], units: System) -> str:
    """Write the sentence of a notice."""
    sentence, facts = SENTENCES[code], Facts(values, units)
    written = sentence.format_map(facts) if isinstance(sentence, str) else sentence(facts)
    if "blade" in facts and not written.startswith(str(values["blade"])):
        return f"{facts.blade}: {written}"
    return written


def margin_sentence(margin: _core.Margin, units: System = "mm", everything: bool = False) -> str:
    """Write the sentence of a margin; `everything` has what is told of a missed one told always."""
    kind = margin.quantity.name
    values = values_of(margin.parameters, margin.names)
    values |= {"value": Number(margin.value, kind), "limit": Number(margin.limit, kind)}
    optional = (
        ("margin", "ratio", margin.margin),
        ("margin_low", "ratio", margin.margin_low),
        ("station", "length", margin.station_mm),
        ("blade_angle", "angle", margin.blade_angle_deg),
    )
    values |= {name: Number(value, unit) for name, unit, value in optional if value is not None}
    if everything:
        values["everything"] = "yes"
    return MARGINS[margin.name](Facts(values, units))


def in_words(finding: _core.Margin | Notice, units: System = "mm") -> str:
    """Write what a margin of a check, or a notice, says, in the units asked for."""
    if isinstance(finding, Notice):
        return finding.text(units)
    return margin_sentence(finding, units)
