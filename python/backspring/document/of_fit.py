"""Shapes of what `fit` prints: an allowance, a plan, what a log tells."""

from __future__ import annotations

from backspring.document.common import ALONG, BUDGET, DESIGN, DESIGNED, FACE, KNIFE
from backspring.document.shapes import (
    COUNT,
    NUMBER,
    TEXT,
    TRUTH,
    Schema,
    by_name,
    list_of,
    may_have,
    one_of,
    or_null,
    part,
    record,
    table,
    with_others,
)
from backspring.fit.log_entry import FigureEntry, GroundEntry, MeasuredEntry

_READINGS = table("half_stop_mm? closed_mm?")
_TANG = part("tang", table("open_mm half_stop_mm? closed_mm kick_height_mm?"))
_LEVERS = list_of(
    table(
        "per_mm half_stop_mm? closed_mm? tip_mm? edge_gap_mm? peak_pull_n? yield_margin?",
        face=FACE,
    )
)
_STEP = table(
    "remove_mm half_stop_mm? closed_mm tip_mm? half_stop_loaded_mm? closed_loaded_mm",
    step=COUNT,
    pass_=COUNT,
    face=FACE,
)
_DEPTHS = table("open_mm half_stop_mm closed_mm kick_mm")
_TIP = table(
    "moves_mm? wanted_mm? allowance_mm",
    beyond_allowance=TRUTH,
    runs_out=or_null(TEXT),
    level_removed=or_null(_DEPTHS),
)
_STATE = one_of("loaded", "unloaded")
_ALLOWANCE = table(
    "target_mm",
    design=DESIGN,
    allowance=_READINGS,
    tang=_TANG,
    levers=_LEVERS,
    along=ALONG,
    **BUDGET,
)
_PLAN = with_others(
    _ALLOWANCE,
    state=_STATE,
    loaded_now=_READINGS,
    aim_mm=NUMBER,
    done=TRUTH,
    read_again=list_of(TEXT),
    passes=COUNT,
    tip=_TIP,
    plan=list_of(_STEP),
    removed=_DEPTHS,
    left_standing=table("least_mm open_mm half_stop_mm closed_mm kick_mm"),
    tang_after=_TANG,
    preload_after_mm=NUMBER,
)
_BOTH_STATES = table(
    "half_stop_unloaded_mm? closed_unloaded_mm? half_stop_loaded_mm? closed_loaded_mm?"
)
_BACK_GROUND = with_others(
    _ALLOWANCE,
    allowance_before=_READINGS,
    back_removed_mm=NUMBER,
    readings_before=_BOTH_STATES,
    readings_after=_BOTH_STATES,
)
_MOVES = list_of(table("per_mm", blade=TEXT, face=FACE, blades=by_name(_READINGS)))
_NO_PLAN: Schema = {"type": "array", "maxItems": 0}


def _entry(kind: type) -> Schema:
    """Describe an entry that was taken off; its blade is left out where there is one alone."""
    # A figure's own kind stands in the place of the entry's.
    kinds = {} if kind is FigureEntry else {"kind": TEXT}
    found = with_others(record(kind), entry=COUNT, **kinds)
    return found | {"required": [name for name in found["required"] if name != "blade"]}


_PLAN_OF_LOG = part("plan_of_one", may_have(_PLAN, output=TEXT, knife=KNIFE))
_BLADES_PLAN = table(
    "target_mm aim_mm",
    design=DESIGNED,
    state=_STATE,
    done=TRUTH,
    passes=COUNT,
    plan=list_of(with_others(_STEP, blade=TEXT)),
    moves=_MOVES,
    blades=by_name({"anyOf": [_PLAN_OF_LOG, table(knife=KNIFE)]}),
)
FIT: list[Schema] = [
    may_have(_ALLOWANCE, output=TEXT),
    _PLAN_OF_LOG,
    _BACK_GROUND,
    table(
        "target_mm", design=DESIGNED, moves=_MOVES, blades=by_name(part("allowance", _ALLOWANCE))
    ),
    table(design=DESIGNED, blades=by_name(part("back_ground", _BACK_GROUND))),
    _BLADES_PLAN,
    table(design=DESIGNED, plan=_NO_PLAN, knife=KNIFE),
    table(design=DESIGNED, plan=_NO_PLAN, blades=by_name(table(knife=KNIFE))),
    table(
        design=DESIGNED,
        undone={"anyOf": [_entry(each) for each in (MeasuredEntry, GroundEntry, FigureEntry)]},
        log=table(entries=COUNT),
    ),
]
