"""`[steel]` of a design file: a steel of one's own, with the fields that a steel's file has."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

from backspring.faults import Fault
from backspring.steel import known
from backspring.steel.files import all_sources, parse_steel
from backspring.steel.records import Source, Steel

TABLE = "steel"
# Within it, what its figures cite.
SOURCES = "sources"
_NAME = "spring.steel"
_OWN_SOURCE = "own-steel-table"


class SteelTable(NamedTuple):
    """The table as plain data, the steel made of it, and what is wrong with it."""

    content: Mapping[str, Any] | None = None
    steel: known.Own | None = None
    faults: tuple[Fault, ...] = ()

    @property
    def failed(self) -> frozenset[str]:
        """Keys that need no fault of their own, for the table has one."""
        return frozenset({_NAME} if self.faults else ())


def read_steel_table(table: Any) -> SteelTable:
    """Read the table; its numbers are in the units that its keys name, whatever the file's are."""
    if table is None:
        return SteelTable()
    if not isinstance(table, Mapping):
        where = f"must be a table, as [{TABLE}]; the steel's name belongs in [spring]"
        return SteelTable(faults=(Fault("bad-value", TABLE, where),))
    try:
        content = _plain(table)
        faults, steel = _read(content)
    except RecursionError:
        nested = Fault("bad-value", TABLE, "brackets are nested too deep")
        return SteelTable(faults=(nested,))
    if steel is None:
        return SteelTable(faults=tuple(faults))
    return SteelTable(content, steel)


def with_name(tables: Mapping[str, Any], steel: known.Own | None) -> Mapping[str, Any]:
    """Let the spring be of this steel where it does not name one."""
    spring = tables.get("spring")
    if steel is None or not isinstance(spring, Mapping) or spring.get("steel") is not None:
        return tables
    return {**tables, "spring": {**spring, "steel": steel[0].name}}


def names_by_table(changes: Iterable[str], used: Steel, own: known.Own) -> bool:
    """Whether the table, where these keys change, goes on naming the steel in use."""
    changed = any(key.partition(".")[0] == TABLE for key in changes)
    return changed and used is own[0] and _NAME not in changes


def _read(content: dict[str, Any]) -> tuple[list[Fault], known.Own | None]:
    # What most designs have no need of waits for one that does.
    from backspring.design.own_steel_checks import Checked
    from backspring.design.own_steel_defaults import with_defaults
    from backspring.design.own_steel_fields import STEEL

    rest = {key: each for key, each in content.items() if key != SOURCES}
    faults: list[Fault] = []
    cited = _sources(content.get(SOURCES, {}), faults)
    checked = Checked({*all_sources(), *cited}, _WHERE)
    checked.table(STEEL, rest, "")
    for called in (rest.get("name"), *_listed(rest.get("also_called"))):
        if isinstance(called, str) and known.is_known(called):
            message = f'"{called}" is taken: there is such a steel, shipped or of --steels'
            checked.refuse("name", f"{message}; give this one another name")
    faults += [each._replace(key=f"{TABLE}.{each.key}") for each in checked.faults]
    if faults:
        return faults, None
    cited[_OWN_SOURCE] = Source("the design's own [steel]", "own", "memory")
    return [], (parse_steel(with_defaults(rest, _OWN_SOURCE)), cited)


_WHERE = f"describe it under [{TABLE}.{SOURCES}.KEY]"


def _sources(tables: Any, faults: list[Fault]) -> dict[str, Source]:
    key = f"{TABLE}.{SOURCES}"
    if not isinstance(tables, Mapping):
        faults.append(Fault("bad-value", key, f"must be tables, each headed [{key}.KEY]"))
        return {}
    from backspring.design.own_steel_checks import read_sources

    found, wrong = read_sources(tables)
    faults += [each._replace(key=f"{key}.{each.key}") for each in wrong]
    return found


def _listed(value: Any) -> list[Any]:
    return value if isinstance(value, list) else []


def _plain(value: Any) -> Any:
    """Take over a value without what is not given; a whole number is one however it is written."""
    if isinstance(value, Mapping):
        return {str(key): _plain(each) for key, each in value.items() if each is not None}
    if isinstance(value, list | tuple):
        return [_plain(each) for each in value]
    return int(value) if isinstance(value, float) and value.is_integer() else value
