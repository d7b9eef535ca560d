"""README's Python examples run as printed, and its commands are the ones that exist."""

import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_the_python_examples_run_one_after_the_other() -> None:
    examples = re.findall(r"```python\n(.*?)```", README, flags=re.DOTALL)
    done = subprocess.run(
        [sys.executable, "-c", "\n".join(examples)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.startswith("Heron: opens with ")
    assert "first take" in done.stdout
    assert all(len(example.strip().splitlines()) <= 12 for example in examples)


def test_the_first_screen_names_the_command_that_runs_all_tests() -> None:
    first_screen = README.split("## Caution")[0]
    assert "```sh\ntests/run\n```" in first_screen
    assert "backspring check data/designs/heron.toml" in first_screen


def test_the_pictures_exist() -> None:
    pictures = re.findall(r"!\[[^]]*\]\(([^)]+)\)", README)
    assert pictures
    assert all((ROOT / picture).is_file() for picture in pictures)
