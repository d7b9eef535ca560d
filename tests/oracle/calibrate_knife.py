"""Simulation-based calibration of a knife's log: hidden knives against what the log tells of them.

Prints a table: standardised errors (estimate less truth, in its own standard deviation), their mean
and standard deviation, and how the chi-squared's percentiles are spread. `python calibrate_knife.py
500` draws so many knives from what is expected of any; faces within what a maker would begin with.
"""

from __future__ import annotations

import sys
from collections import defaultdict
from collections.abc import Callable
from pathlib import Path

import numpy as np

import backspring as bs
from backspring.fit.estimate import PULLS, READINGS, STRESS
from backspring.fit.knife_model import PLACE
from hidden_knife import HiddenKnife

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON, OSPREY, WREN = (bs.load(DESIGNS / f"{name}.toml") for name in ("heron", "osprey", "wren"))
Errors = dict[str, list[float]]


def walk(design: bs.Design, rng: np.random.Generator) -> tuple[HiddenKnife, bs.Knife, list[float]]:
    """Measure unloaded, grind one trip without depths, measure loaded, pull."""
    hidden, knife, deep = HiddenKnife(design, rng), bs.Knife(design), []
    knife.measure(**hidden.readings("unloaded"))
    closed = "closed" if design.core.tang.kick is None else "kick"
    faces = ("half_stop", closed) if hidden.model.square else (closed,)
    with knife.together():
        for face in faces:
            deep.append(float(rng.uniform(0.03, 0.12)))
            hidden.ground(face, deep[-1])
            knife.ground(face)
        knife.measure(**hidden.readings("unloaded"))
    knife.measure(**hidden.readings("loaded"))
    knife.measure(**hidden.pulls())
    return hidden, knife, deep


def errors_of(design: bs.Design, count: int, seed: int) -> tuple[Errors, list[float], int]:
    """Standardised errors by name, chi-squared percentiles, and logs that were refused."""
    from scipy.stats import chi2

    rng, errors, percentiles, refused = np.random.default_rng(seed), defaultdict(list), [], 0
    for _ in range(count):
        try:
            hidden, knife, deep = walk(design, rng)
        except bs.InvalidInput:
            refused += 1
            continue
        found = knife.estimate()
        for each, true in zip(found.ground, deep, strict=True):
            errors[f"depth off {each.face}"].append((each.depth_mm - true) / each.sd_mm)
        truth = (*hidden.true_readings(), *hidden.true_pulls())
        truths = dict(zip((*READINGS, *PULLS, STRESS), truth, strict=True))
        for name, figure in found.figures.items():
            if name in truths:
                errors[name].append((figure.value - truths[name]) / figure.sd)
        for name in ("friction", "youngs_modulus_mpa", "preload_mm", "extra_root_share"):
            prior, learned = found.priors[name], found.unknowns[name]
            true = prior.drawn + hidden.causes[PLACE[name]]
            errors[name].append((learned.value - true) / learned.sd)
        percentiles.append(float(chi2.cdf(found.misfit.chi_squared, found.misfit.freedom)))
    return errors, percentiles, refused


def table(design: bs.Design, count: int, seed: int, say: Callable[[str], None] = print) -> None:
    """Print the table of one design."""
    from scipy.stats import kstest

    errors, percentiles, refused = errors_of(design, count, seed)
    say(f"{design.name}: {count} hidden knives, {refused} refused")
    say(f"  {'figure':<26}{'mean z':>8}{'sd z':>8}")
    for name, values in errors.items():
        say(f"  {name:<26}{np.mean(values):8.3f}{np.std(values):8.3f}")
    say(f"  chi-squared percentiles uniform: p = {kstest(percentiles, 'uniform').pvalue:.3f}")


if __name__ == "__main__":
    number = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    for place, drawn in enumerate((HERON, OSPREY, WREN)):
        table(drawn, number, 11 + place)
