"""The refusal of a value, before its key is known."""

from __future__ import annotations

from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid

BAD_VALUE = "bad-value"


def refused(*messages: str) -> InvalidInput:
    """Make the error of a value, with every fault."""
    return invalid([Fault(BAD_VALUE, "", message) for message in messages])
