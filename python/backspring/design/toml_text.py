"""Reads TOML; what is wrong is loaded only where something is."""

from __future__ import annotations

import tomllib
from typing import Any

from backspring.design.nesting import has_long_key
from backspring.faults import Fault, invalid


def parse_toml(text: str, path: str) -> dict[str, Any]:
    """Read a TOML text; raises InvalidInput with what is wrong, line by line."""
    deep = Fault("unreadable", "", "brackets or keys are nested too deep", path)
    if has_long_key(text):
        raise invalid([deep])
    try:
        return tomllib.loads(text)
    except ValueError as error:
        from backspring.design.toml_faults import toml_faults

        raise invalid(toml_faults(error, text, path)) from None
    except RecursionError:
        raise invalid([deep]) from None
