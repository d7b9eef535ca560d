"""An independent solution, pressure free to spread on the pad: drawn joints of every kind.

Of each kind and figure the joint that uses most of what is allowed; see core_against_slow.py. How
many there are in all is asked with --joints. The tests have four of each kind.
"""

from __future__ import annotations

import pytest

from agreement import Agree
from oracle.core_against_slow import compared, compared_worst, farthest
from oracle.designs import KINDS, generated_designs

JOINTS = 500


@pytest.mark.parametrize("kind", range(len(KINDS)), ids=[label for label, _ in KINDS])
def test_drawn_joints(agree: Agree, request: pytest.FixtureRequest, kind: int) -> None:
    joints = request.config.getoption("--joints") or JOINTS
    drawn = generated_designs(joints, seed=20)[kind :: len(KINDS)]
    found = (each for _, slow in drawn for way in (compared, compared_worst) for each in way(slow))
    for figure, each in farthest(found).items():
        case = f"{KINDS[kind][0]}, worst of {len(drawn)} joints: {figure}"
        agree(case, each.core, each.slow, rel=each.share, abs=each.amount)
