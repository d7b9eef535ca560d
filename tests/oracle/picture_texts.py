"""Texts that meet on any picture of drawn designs, which are cut off, and missing names.

`python -m oracle.picture_texts 50`, from `tests`, draws fifty designs.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator

import backspring as bs
from drawn_pictures import drawn_pictures
from drawn_texts import wrong_with
from oracle.core_against_slow import as_design
from oracle.designs import generated_designs

SEED = 12


def drawn_designs(count: int) -> Iterator[bs.Design]:
    """Designs of every kind in turn, with what pictures of a blade need."""
    for label, drawn in generated_designs(count, seed=SEED):
        blade = {"nail_nick": 1.1 * drawn["tang"]["pivot"], "mass": "25 g", "length": 80}
        design = as_design(drawn).replace(name=label.capitalize())
        yield design.replace(**{f"blade.{key}": value for key, value in blade.items()})


def main(count: int) -> int:
    looked, wrong = 0, 0
    for design in drawn_designs(count):
        for units in ("mm", "in"):
            for kind, figure in drawn_pictures(design, units):
                looked += 1
                told = wrong_with(figure, design.name)
                wrong += bool(told)
                if told:
                    print(f"{design.name}, {units}, {kind}: {'; '.join(told)}", flush=True)
    print(f"{looked} pictures of {count} designs, {wrong} with texts that meet or are missing")
    return int(wrong > 0)


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 50))
