"""Runs the command: `python -m backspring`."""

import sys

from backspring.cli import entry

if __name__ == "__main__":
    sys.exit(entry())
