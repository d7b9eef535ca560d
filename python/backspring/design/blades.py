"""The blades of a design file: the first in its own tables, further ones in [[blades]]."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from backspring.design.core_design import FIRST_BLADE
from backspring.design.fields import row_of
from backspring.design.nesting import require_shallow
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid

_OLD = (
    'is written as one of [[blades]] now: put name = "second", end = "rear" and pad under '
    "[[blades]], and call its tables [blades.tang], [blades.fit] and [blades.blade]"
)

# Beyond what the core lets stand at both ends, so that its own rule tells what is near.
_MOST_BLADES = 20
_EXCLUSIVE = {"fit.preload": "rear_pin_offset", "fit.rear_pin_offset": "preload"}


def name_blades(data: Mapping[str, Any]) -> tuple[dict[str, Any], list[Fault]]:
    """Key the list of further blades by their names, and tell what is wrong with the list.

    A blade without a name of its own is taken under its number, so that the rest can be read.
    """
    tables, faults = dict(data), list[Fault]()
    if "second" in tables:
        del tables["second"]
        faults.append(Fault("unknown-key", "second", _OLD))
    given = tables.pop("blades", None)
    if given is None:
        return tables, faults
    if not isinstance(given, list | tuple) or not all(isinstance(each, Mapping) for each in given):
        faults.append(Fault("bad-value", "blades", "must be tables, each headed [[blades]]"))
        return tables, faults
    if len(given) > _MOST_BLADES:
        message = f"must be at most {_MOST_BLADES} tables, got {len(given)}"
        faults.append(Fault("bad-value", "blades", message))
        return tables, faults
    first = tables.get("blade", {})
    taken = [first.get("name", FIRST_BLADE) if isinstance(first, Mapping) else FIRST_BLADE]
    tables["blades"] = {}
    for number, blade in enumerate(given):
        name = blade.get("name")
        key = name if isinstance(name, str) and name.strip() and "." not in name else str(number)
        if isinstance(name, str) and "." in name:
            message = f'must be of letters, digits, - and _, got "{name}"'
            faults.append(Fault("bad-value", f"blades.{key}.name", message))
        if key in taken:
            message = f'must differ from every other blade\'s name, got "{key}"'
            key = str(number)
            faults.append(Fault("bad-value", f"blades.{key}.name", message))
        taken.append(key)
        tables["blades"][key] = dict(blade)
    return tables, faults


def listed_blades(content: dict[str, Any]) -> dict[str, Any]:
    """Write content with its further blades as the list that a file holds."""
    if not isinstance(content.get("blades"), dict):
        return content
    return content | {"blades": list(content["blades"].values())}


def unknown_blade(key: str, blade: str, blades: Sequence[str]) -> InvalidInput:
    """Make the exception that tells which blades there are."""
    message = f'no blade is called "{blade}": known are {", ".join(blades)}'
    return invalid([Fault("unknown-blade", key, message)])


def key_in_file(key: str, blade: str, blades: Sequence[str]) -> str:
    """Return where the content holds a key as one of the blades has it.

    "tang.closed" is that blade's own, "blades.pen.tang.closed" is pen's whichever the first is.
    """
    inner = key.removeprefix("spring.") if key == "spring.pad" else key
    if key.startswith("blades."):
        _, blade, inner = f"{key}..".split(".", 2)
        inner = inner.rstrip(".")
        if not inner:
            raise invalid([Fault("unknown-key", key, 'needs a key, as "tang.closed", behind it')])
        if blade not in blades:
            raise unknown_blade(key, blade, blades)
    elif row_of(f"blades.{blade}.{inner}") is None or inner == "name":
        return key
    if blade != blades[0]:
        return f"blades.{blade}.{inner}"
    return {"pad": "spring.pad", "name": "blade.name"}.get(inner, inner)


def put(data: dict[str, Any], key: str, value: Any) -> None:
    """Put a value in place of what content holds under a key, and of what it excludes."""
    require_shallow({key: value})
    *sections, name = key.split(".")
    table = data
    for section in sections:
        table = table.setdefault(section, {})
        if not isinstance(table, dict):
            raise invalid([Fault("unknown-key", key, f'unknown key "{key}"')])
    table.pop(_EXCLUSIVE.get(key, ""), None)
    table[name] = copied(value)


def copied(value: Any) -> Any:
    """Copy tables, so that a change of one leaves the other; other values never change in place."""
    return {k: copied(each) for k, each in value.items()} if isinstance(value, dict) else value
