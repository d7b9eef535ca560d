"""Many designs at once: in the core's threads, or in chunks on an executor."""

from backspring.study.many import check_many
from backspring.study.many_checks import ManyChecks

__all__ = ["ManyChecks", "check_many"]
