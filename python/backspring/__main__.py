"""Runs the command: `python -m backspring`."""

import sys

from backspring.cli import main

if __name__ == "__main__":
    sys.exit(main())
