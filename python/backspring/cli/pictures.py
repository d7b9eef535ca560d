"""What commands that draw have in common."""

from __future__ import annotations

from backspring.faults import Fault, invalid


def explained(error: ModuleNotFoundError) -> Exception:
    """Turn a missing drawing library into what to install; another error stays as it is."""
    if error.name is None or error.name.split(".")[0] != "matplotlib":
        return error
    message = 'pictures need matplotlib: pip install "backspring[plot]"'
    return invalid([Fault("missing-package", "", message)])
