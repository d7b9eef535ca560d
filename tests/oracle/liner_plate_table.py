"""Prints the seat of many liners as plane-stress plates beside the core's beam with holes.

Run from `tests`: `python -m oracle.liner_plate_table`; about five minutes on one core.
"""

from .liner_plate import seat_mm_per_n
from .test_liner_plate import METALS, beam_seat_mm_per_n, plate


def main() -> None:
    print("metal           thick  high  pin deep   plate      beam      off")
    worst = 0.0
    for metal in METALS:
        for height in (8.0, 10.0, 12.0, 14.0, 16.0):
            for depth in (1.5, 2.0, 3.0):
                liner = plate(metal, 1.0, height, depth)
                solid, beam = seat_mm_per_n(liner, 2), beam_seat_mm_per_n(metal, liner)
                off = beam / solid - 1.0
                worst = max(worst, abs(off))
                print(
                    f"{metal.name:15} {1.0:5.1f} {height:5.1f} {depth:9.1f}  "
                    f"{solid:.3e}  {beam:.3e}  {off:+.1%}",
                    flush=True,
                )
    print(f"farthest off {worst:.1%}")


if __name__ == "__main__":
    main()
