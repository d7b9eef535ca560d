"""How sure advice about one knife is: each way made on knives as likely, and judged again."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring.fit.answer_spread import answer_sds
from backspring.question.advise_price import figures_of
from backspring.question.check import check

if TYPE_CHECKING:
    from backspring.design.design import Design
    from backspring.fit.knife import Knife
    from backspring.question.advise_result import Advice, Advised

_YIELD = "spring.yield"
_OF_STEEL = {"spring.steel", "spring.hardness", "spring.temper"}
# A share of a yield stress that is rounding.
_ROUNDING = 1e-9


def advice_sds(
    knife: Knife, advised: Advised, ways: Sequence[Advice]
) -> list[dict[str, float | None]]:
    """Work out the standard deviation of every figure of some ways, by the figure's name.

    Of several blades the figures are the knife's own blade's. Readings of faces that are ground to
    suit are left out: those are as good as the dial.
    """
    several = len(advised.original.blades) > 1
    drawn_yield = _core.dimension_value(knife.design.core, _YIELD)
    stated = knife.drawn.to_dict()["spring"].get("yield") is not None

    def figures(design: Design) -> dict[str, float | None]:
        as_likely = _core.dimension_value(design.core, _YIELD)
        share = as_likely / drawn_yield if as_likely and drawn_yield and not stated else 1.0
        told: dict[str, float | None] = {}
        for place, way in enumerate(ways):
            made = _made(design.of_every_blade(), way.changes, share)
            found = figures_of(check(made))
            own = found["blades"][knife.drawn.blade] if several else found
            told |= {f"{place} {name}": value for name, value in own.items()}
        return told

    sds = answer_sds(knife, figures)
    return [
        {
            name.partition(" ")[2]: sd
            for name, sd in sds.items()
            if name.startswith(f"{place} ") and not _is_ground(name, way.changes, advised)
        }
        for place, way in enumerate(ways)
    ]


def _made(design: Design, changes: Mapping[str, Any], yield_share: float) -> Design:
    """Change a knife as likely; another hardness keeps the share of its yield that it is off."""
    if not _OF_STEEL & changes.keys():
        return design.replace(**changes)
    made = design.replace(**{**changes, _YIELD: None})
    plain = _core.dimension_value(made.core, _YIELD)
    if plain is None or abs(yield_share - 1.0) < _ROUNDING:
        return made
    return made.replace(**{_YIELD: yield_share * plain})


def _is_ground(name: str, changes: Mapping[str, Any], advised: Advised) -> bool:
    return "reading" in name and any(key in changes for key in advised.faces)
