"""The blades of a design file: the first in its own tables, further ones in [[blades]]."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from backspring.design.core_design import FIRST_BLADE
from backspring.faults import Fault

_OLD = (
    'is written as one of [[blades]] now: put name = "second", end = "rear" and pad under '
    "[[blades]], and call its tables [blades.tang], [blades.fit] and [blades.blade]"
)


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
    if isinstance(given, Mapping):
        given = [{"name": name, **dict(blade)} for name, blade in given.items()]
    if not isinstance(given, list | tuple) or not all(isinstance(each, Mapping) for each in given):
        faults.append(Fault("bad-value", "blades", "must be tables, each headed [[blades]]"))
        return tables, faults
    first = tables.get("blade", {})
    taken = [first.get("name", FIRST_BLADE) if isinstance(first, Mapping) else FIRST_BLADE]
    tables["blades"] = {}
    for number, blade in enumerate(given):
        name = blade.get("name")
        key = name if isinstance(name, str) and name.strip() and "." not in name else str(number)
        if key in taken:
            message = f'must differ from every other blade\'s name, got "{key}"'
            key = str(number)
            faults.append(Fault("bad-value", f"blades.{key}.name", message))
        taken.append(key)
        tables["blades"][key] = dict(blade)
    return tables, faults


def listed_blades(content: dict[str, Any]) -> dict[str, Any]:
    """Write content with its further blades as the list that a file holds."""
    if "blades" not in content:
        return content
    return content | {"blades": list(content["blades"].values())}
