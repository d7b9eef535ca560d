"""A steel of which no more is known than a design states."""

from __future__ import annotations

from backspring.steel.records import Figure, Steel


def stated_steel(name: str, youngs_modulus_mpa: float) -> Steel:
    """Make a steel of which no more is known than a design states; the rest is usual for steel."""

    def usual(value: float, low: float, high: float) -> Figure:
        note = "Usual for steel: no data of this one."
        return Figure(value, low, high, "derived", ("common-practice",), note)

    return Steel(
        name=name,
        also_called=(),
        family="as the design states it",
        youngs_modulus_mpa=usual(
            youngs_modulus_mpa, 0.96 * youngs_modulus_mpa, 1.04 * youngs_modulus_mpa
        ),
        poisson=usual(0.29, 0.27, 0.30),
        density_kg_m3=usual(7850.0, 7700.0, 7900.0),
        yield_ratio=usual(0.85, 0.80, 0.92),
        hardness_low_hrc=42.0,
        hardness_high_hrc=52.0,
        hardness_confidence="derived",
        hardness_sources=("common-practice",),
        hardness_note="Usual for springs.",
        conflicts=(),
        cautions=(),
        temper=None,
        embrittlement=(),
        points=(),
    )
