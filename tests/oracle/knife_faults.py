"""How often a knife's log refuses what a maker got wrong, and what he got right.

Each case is a hidden knife with a sound first reading and a trip to the grinder that is logged with
one mistake, or with none. `python knife_faults.py 100` prints the counts.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

import numpy as np

import backspring as bs
from hidden_knife import DIAL_MM, HiddenKnife

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")
Trip = Callable[[HiddenKnife, bs.Knife, np.random.Generator], None]


def _ground(hidden: HiddenKnife, rng: np.random.Generator) -> dict[str, float]:
    off = {face: float(rng.uniform(0.04, 0.12)) for face in ("half_stop", "closed")}
    for face, depth in off.items():
        hidden.ground(face, depth)
    return off


def sound(hidden: HiddenKnife, knife: bs.Knife, rng: np.random.Generator) -> None:
    """Log nothing wrong: one depth as it was aimed at, the other unknown."""
    off = _ground(hidden, rng)
    knife.ground("half_stop", rng.normal(off["half_stop"], 0.003 + 0.05 * off["half_stop"]))
    knife.ground("closed")
    knife.measure(**hidden.readings("loaded"))


def tenfold(hidden: HiddenKnife, knife: bs.Knife, rng: np.random.Generator) -> None:
    """State a depth ten times too large."""
    off = _ground(hidden, rng)
    knife.ground("half_stop", 10.0 * off["half_stop"])
    knife.ground("closed")
    knife.measure(**hidden.readings("loaded"))


def wrong_face(hidden: HiddenKnife, knife: bs.Knife, rng: np.random.Generator) -> None:
    """Log one face where the other was ground."""
    hidden.ground("half_stop", float(rng.uniform(0.04, 0.12)))
    knife.ground("closed")
    knife.measure(**hidden.readings("loaded"))


def swapped(hidden: HiddenKnife, knife: bs.Knife, rng: np.random.Generator) -> None:
    """Give the two readings the wrong way round, after one face was ground.

    They differ by eight repeatabilities at least: a swap of readings that are alike is none.
    """
    hidden.ground("half_stop", float(rng.uniform(0.04, 0.12)))
    knife.ground("half_stop")
    read = hidden.readings("loaded")
    while abs(read["half_stop"] - read["closed"]) < 8 * DIAL_MM:
        hidden.ground("half_stop", 2 * DIAL_MM)
        read = hidden.readings("loaded")
    knife.measure(**read | {"half_stop": read["closed"], "closed": read["half_stop"]})


def refused(trip: Trip, count: int, seed: int) -> int:
    """Count the logs of so many hidden knives that are refused."""
    rng, found = np.random.default_rng(seed), 0
    for _ in range(count):
        hidden, knife = HiddenKnife(HERON, rng), bs.Knife(HERON)
        knife.measure(**hidden.readings("unloaded"))
        knife.measure(**hidden.readings("loaded"))
        stood = knife.entries
        try:
            with knife.together():
                trip(hidden, knife, rng)
        except bs.InvalidInput:
            found += 1
            assert knife.entries == stood
    return found


if __name__ == "__main__":
    number = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    for each in (tenfold, wrong_face, swapped, sound):
        print(f"{each.__name__:<12}{refused(each, number, 31):4d} of {number} refused", flush=True)
