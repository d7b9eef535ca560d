"""Many designs at once: in the core's threads, or in chunks on an executor."""

from backspring.many.many import check_many
from backspring.many.many_checks import ManyChecks

__all__ = ["ManyChecks", "check_many"]
