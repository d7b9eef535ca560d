"""What a move of a panel's slider takes beside a whole check: ratios from one run, and ms."""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path

import backspring as bs

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
ASKED_MS = 50.0


def processor_ms(work: Callable[[int], object], rounds: int) -> float:
    """Processor time of one round [ms], so that others on the machine do not count."""
    start = time.process_time()
    for each in range(rounds):
        work(each)
    return 1000.0 * (time.process_time() - start) / rounds


def main(rounds: int) -> None:
    for path in sorted(DESIGNS.glob("*.toml")):
        design = bs.load(path)
        if design.of_all_blades:
            design = design.seen_from(design.blades[0])
        panel = bs.panel(design)
        check_ms = processor_ms(lambda _, of=design: bs.check(of), rounds)
        for name, slider in panel.sliders.items():
            low, high = slider.value, min(slider.value + 4 * slider.step, slider.max)

            def move(number: int, slider=slider, ends=(high, low)) -> None:  # type: ignore[no-untyped-def]
                slider.value = ends[number % 2]

            move_ms = processor_ms(move, rounds)
            share = move_ms / ASKED_MS
            print(
                f"{design.name:12} {name:28} {move_ms:6.1f} ms, {share:4.0%} of what is asked, "
                f"{move_ms / check_ms:5.1f} checks"
            )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 20)
