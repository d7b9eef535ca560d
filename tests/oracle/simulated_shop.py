"""A shop whose knives share known habits: what a folder of their logs tells of these.

`python simulated_shop.py 40` draws so many hidden Herons from known means and spreads, logs each,
pools the logs, and prints what is told beside what is true; then what the next knives' estimates
are worth with the habits and without. Friction and modulus are the knife's; a depth that is
stated is off by the shop's own share, and by a caliper's error beside it.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

import numpy as np

import backspring as bs
from backspring.fit.causes import PLACE
from backspring.fit.log_entry import Entry, FigureEntry, GroundEntry, MeasuredEntry
from backspring.fit.log_file import write_log
from backspring.fit.priors import DEPTH_MM
from hidden_knife import HiddenKnife

HERON_FILE = Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml"
HERON = bs.load(HERON_FILE)
# Mean and standard deviation between knives, and of depths between trips.
TRUE = {
    "friction": (0.17, 0.015),
    "youngs_modulus_share": (-0.015, 0.004),
    "depth_share": (0.08, 0.06),
}
FACES = ("half_stop", "closed")


def shop_knife(rng: np.random.Generator) -> HiddenKnife:
    """Draw one knife of the shop."""
    hidden, drawn = HiddenKnife(HERON, rng), HERON.core
    modulus = drawn.spring.elastic.youngs_modulus_mpa
    rubs, share = (rng.normal(*TRUE[name]) for name in [*TRUE][:2])
    hidden.causes[PLACE["friction"]] = rubs - drawn.friction.spring
    hidden.causes[PLACE["youngs_modulus_mpa"]] = share * modulus
    return hidden


def shop_log(hidden: HiddenKnife, whole: bool = True) -> list[Entry]:
    """Log readings before and after a trip with its depths stated; `whole`: and then the pulls."""
    entries = [_read(hidden, "unloaded"), _read(hidden, "loaded")]
    for face in FACES:
        stated = float(hidden.rng.uniform(0.05, 0.12))
        off = stated * (1.0 + hidden.rng.normal(*TRUE["depth_share"]))
        hidden.ground(face, off + hidden.rng.normal(0.0, DEPTH_MM))
        entries.append(GroundEntry(face, stated))
    if not whole:
        return entries
    entries.append(_read(hidden, "loaded"))
    pulls, hung = hidden.pulls(), hidden.hung()
    entries += [FigureEntry(f"{name}_n", float(pulls[name])) for name in ("pull", "closing_pull")]
    return [*entries, FigureEntry("moved_mm", float(hung["moved"]), 32.0, 2000 * 9.80665e-3)]


def fill(folder: Path, count: int, rng: np.random.Generator) -> None:
    """Write the logs of so many knives of the shop, and their design beside them."""
    (folder / "heron.toml").write_bytes(HERON_FILE.read_bytes())
    for number in range(1, count + 1):
        write_log(folder / f"knife {number:02}.csv", HERON, shop_log(shop_knife(rng)))


def next_knives(
    habits: bs.ShopHabits, count: int, rng: np.random.Generator
) -> dict[str, np.ndarray]:
    """Errors of pull and loaded readings, a row a knife, with habits and without.

    The next knives are ground to a stated depth and not read since. Standardised with the
    standard deviation that the estimate has of itself.
    """
    errors: dict[str, list[list[float]]] = {"with": [], "without": []}
    for _ in range(count):
        hidden = shop_knife(rng)
        entries = tuple(shop_log(hidden, whole=False))
        truths = (*hidden.true_readings(), hidden.true_pulls()[0])
        for name, expected in (("with", habits), ("without", None)):
            knife = bs.Knife(HERON, habits=expected)
            knife._entries = entries
            found = knife.figures
            told = [
                found[each] for each in ("half_stop_loaded_mm", "closed_loaded_mm", "peak_pull_n")
            ]
            off = [each.value - true for each, true in zip(told, truths, strict=True)]
            errors[name].append([*off, *(o / each.sd for o, each in zip(off, told, strict=True))])
    return {name: np.array(rows) for name, rows in errors.items()}


def _read(hidden: HiddenKnife, state: str) -> MeasuredEntry:
    read = hidden.readings(state)
    half, closed = float(read["half_stop"]), float(read["closed"])
    return MeasuredEntry(state, half, closed, read["repeatability"])


def main(count: int) -> None:
    """Print the tables."""
    rng = np.random.default_rng(5)
    with tempfile.TemporaryDirectory() as folder:
        fill(Path(folder), count, rng)
        habits = bs.shop_habits(folder)
    print(habits)
    for name, (mean, spread) in TRUE.items():
        habit = habits[name]
        print(f"{name}: true mean {mean:g}, spread {spread:g}; told {habit}")
    for name, rows in next_knives(habits, count, rng).items():
        rms = np.sqrt(np.mean(rows**2, axis=0))
        print(
            f"next knives {name} habits: rms error half-stop {1000 * rms[0]:.1f} um, closed "
            f"{1000 * rms[1]:.1f} um, pull {rms[2]:.2f} N; standardised {rms[3:].round(2)}"
        )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 40)
