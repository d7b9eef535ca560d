"""Where blades that are free to seat come to rest, and what the dials then show.

Each seats where the energy is least over its own angle, so all torques vanish together: forces and
turns are found at once, with the outlines' rise taken as even, and again until none turns; a turn
that would add to the energy is sought again with the blades held more stiffly. A blade
against its stop stays at 180 degrees, one that the spring has let go of stays where it is.
Independent of the package under test.
"""

from __future__ import annotations

from collections.abc import Mapping

from .blades_contact import BladeContacts, Pressed

OPEN_DEG = 180.0
SEARCH_DEG = 10.0
SETTLED_DEG = 1e-4
LONGEST_DEG = 1.5
MOST_ROUNDS = 60
# How stiffly the blades are held to where they are while the next turn is sought.
FIRST_BED, STIFFEST_BED = 1e4, 1e9


class NoRestError(Exception):
    """A blade finds no rest near where it should."""


def seated(
    contacts: BladeContacts,
    nominal_deg: Mapping[str, float],
    held: Mapping[str, float] | None = None,
) -> Pressed:
    """All blades at rest near their nominal angles, but for those held (and those open)."""
    held = held or {}
    angles = {**nominal_deg, **held}
    free = [name for name in nominal_deg if name not in held and nominal_deg[name] != OPEN_DEG]
    last, bed = contacts.pressed(angles), FIRST_BED
    for _ in range(MOST_ROUNDS):
        turns = contacts.seated_nearer(last, free, bed)
        longest = max(map(abs, turns.values()), default=0.0)
        if longest < SETTLED_DEG and bed <= FIRST_BED:
            return last
        ahead = {name: last.angles_deg[name] + turns.get(name, 0.0) for name in angles}
        then = contacts.pressed(ahead, last) if longest < LONGEST_DEG else None
        if then is None or then.energy_nmm > last.energy_nmm:
            bed *= 10.0
        else:
            last, bed = then, 0.1 * bed
        if bed > STIFFEST_BED:
            return last
        if any(abs(last.angles_deg[name] - nominal_deg[name]) > SEARCH_DEG for name in free):
            raise NoRestError(f"no rest within {SEARCH_DEG} deg")
    raise NoRestError(f"the blades do not come to rest together: {turns}")


def at_positions(contacts: BladeContacts, where: Mapping[str, str]) -> Pressed:
    """Each blade in the named one of its positions."""
    blades = contacts.joint.blades
    return seated(contacts, {b.name: b.positions_deg[where[b.name]] for b in blades})


def all_open(contacts: BladeContacts) -> Pressed:
    """The datum of every reading."""
    return at_positions(contacts, dict.fromkeys(contacts.joint.names, "open"))


def reading_mm(contacts: BladeContacts, pressed: Pressed, name: str) -> float:
    """Back of the spring at a blade's dial, relative to all blades open."""
    datum = contacts.movement_mm(all_open(contacts), name)
    return contacts.movement_mm(pressed, name) - datum
