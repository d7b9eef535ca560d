"""An independent solution, pressure free to spread on the pad: drawn joints of every kind.

Of each kind and figure the joint that uses most of what is allowed; see core_against_slow.py. How
many there are in all is asked with --joints: as many of each kind in designs.py and, with outlines
for tangs, bows, liners that give and play, in designs_as_built.py. The tests have a few of each.
Joints on a stop are those of test_stop_against_core.py, of several blades those of
long_blades_against_core.py.
"""

from __future__ import annotations

import pytest

from agreement import Agree
from oracle.core_against_slow import compared, compared_worst, farthest
from oracle.designs import KINDS, Design, generated_designs
from oracle.designs_as_built import AS_BUILT

JOINTS, SEED = 500, 20
LABELS = [label for label, _ in [*KINDS, *AS_BUILT]]


def drawn(joints: int) -> dict[str, list[Design]]:
    """So many joints by kind, the first kinds having one more where they do not go in evenly."""
    each, more = divmod(joints, len(LABELS))
    found: dict[str, list[Design]] = {label: [] for label in LABELS}
    for kinds in (KINDS, AS_BUILT):
        for label, design in generated_designs((each + 1) * len(kinds), SEED, kinds):
            kind = label.rsplit(" ", 1)[0]
            if len(found[kind]) < each + (LABELS.index(kind) < more):
                found[kind].append(design)
    return found


@pytest.mark.parametrize("kind", LABELS)
def test_drawn_joints(agree: Agree, request: pytest.FixtureRequest, kind: str) -> None:
    joints = drawn(request.config.getoption("--joints") or JOINTS)[kind]
    both = (each for slow in joints for way in (compared, compared_worst) for each in way(slow))
    for figure, each in farthest(both).items():
        case = f"{kind}, worst of {len(joints)} joints: {figure}"
        agree(case, each.core, each.slow, rel=each.share, abs=each.amount)
