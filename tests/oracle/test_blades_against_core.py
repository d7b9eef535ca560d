"""The core against dense elements on drawn joints of several blades: some of each kind.

The core lets each outline bear with one point force; dense elements spread it over a flat. A
hundred of each kind, in every position of every blade, by `python -m oracle.blades_against_core`.
"""

from __future__ import annotations

import pytest

from oracle.blades_against_core import LIMITS, differences
from oracle.drawn_joints import KINDS, Drawn, drawn_joints

# Three blades take the dense elements long: two joints of those.
JOINTS = [each for kind in KINDS for each in drawn_joints(kind, 2 if kind == "three" else 10)]


@pytest.mark.parametrize(("label", "drawn"), JOINTS, ids=[label for label, _ in JOINTS])
def test_core_agrees_with_dense_elements(label: str, drawn: Drawn) -> None:
    found = list(differences(drawn, held=2, every_case=False))
    over = [each for each in found if abs(each.value) > LIMITS[each.figure]]
    assert not over, label
