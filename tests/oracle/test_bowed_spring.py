"""A chain of stiff links with turns of any size: the Heron bowed by 3 mm.

The core has a bow's length, README tells the lever that it leaves out; see bowed_spring.py.
"""

from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from agreement import Agree

from .bowed_spring import arch, changes

HERON = bs.load(Path(__file__).parents[2] / "data" / "designs" / "heron.toml")


def test_the_length_of_a_bow_costs_what_the_core_says(agree: Agree) -> None:
    outward, inward = changes(friction=0.0)
    stations = np.linspace(-34.0, 27.0, 31)
    rows = [[float(x), float(arch(3.0)(x))] for x in stations]
    bowed, straight = (
        bs.check(design).strokes[0].peak_pull_n
        for design in (HERON.replace(**{"spring.mid_line": rows}), HERON)
    )
    # The chain turns by some 0.1 rad, which costs a hundredth of its own part.
    by_length = 0.5 * (outward + inward)
    agree("share of pull that the bow's length costs", bowed / straight - 1.0, by_length, rel=0.03)
    assert 0.5 * (outward - inward) == pytest.approx(0.008, abs=0.001)
