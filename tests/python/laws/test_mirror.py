"""A joint drawn from its other side is the same joint: blades change places, numbers stay."""

from __future__ import annotations

from hypothesis import given

from law_designs import ENDS, Content, contents, made
from law_figures import EXACT, STANDS, a_share, checked, compare, share_of, stand

OWN = ("tang", "fit", "blade")


def from_behind(content: Content) -> Content:
    """The same file begun at the other blade: stations from its pin, positive towards its pivot."""
    spring = content["spring"]
    span = spring.get("rear_pin", 0.0)
    (pen,) = content["blades"]

    def turned(rows: list[list[float]]) -> list[list[float]]:
        return [[-span - x, value] for x, value in reversed(rows)]

    for_spring = {"pad": pen["pad"], "thickness": turned(spring["thickness"])}
    if isinstance(spring["width"], list):
        for_spring["width"] = turned(spring["width"])
    for key in ("pin_hole", "pin_hole_offset"):
        # Each end's hole is the nearest to its pivot.
        if isinstance(spring.get(key), list) and span:
            for_spring[key] = spring[key][::-1]
    first = {"name": "main", "end": "rear", "pad": spring["pad"]} | {k: content[k] for k in OWN}
    own = {key: pen[key] | ({"name": "pen"} if key == "blade" else {}) for key in OWN}
    return content | own | {"spring": spring | for_spring, "blades": [first]}


@given(contents(kinds=(ENDS,)), STANDS)
def test_contact_is_the_same_from_behind(content: Content, angles: list[float]) -> None:
    one = stand(made(content), angles)
    other = stand(made(from_behind(content)), angles[1::-1])
    large = {"force": max(one.forces), "energy": one.energy}
    assert abs(other.energy - one.energy) <= 1e-9 * large["energy"]
    for here, there in zip(one.forces, other.forces[::-1], strict=True):
        assert abs(there - here) <= 1e-9 * large["force"]
    for here, there in zip(one.torques, other.torques[::-1], strict=True):
        assert abs(there - here) <= 1e-8 * one.scale


def with_fewer_turns(place: str) -> float:
    """A blade that others seat with is looked at less often on its way."""
    return EXACT if share_of(place) == EXACT else 1e-5


@a_share(15)
@given(contents(kinds=(ENDS,), kick=False))
def test_a_blade_seen_from_its_own_side_is_checked_alike(content: Content) -> None:
    compare(checked(made(content)), checked(made(from_behind(content))), share=with_fewer_turns)
