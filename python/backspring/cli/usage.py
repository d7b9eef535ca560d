"""Refuses a command line that cannot be understood, or that asks for what is not done."""

from __future__ import annotations


class UsageError(Exception):
    """The command line cannot be understood."""
