"""Every notebook runs to its end, its own assertions included, and is stored without outputs."""

from pathlib import Path

import nbformat
import pytest
from nbclient import NotebookClient

NOTEBOOKS = sorted((Path(__file__).parents[2] / "notebooks").glob("*.ipynb"))


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_runs(path: Path) -> None:
    notebook = nbformat.read(path, as_version=4)
    code = [cell for cell in notebook.cells if cell.cell_type == "code"]
    assert not any(cell.outputs or cell.execution_count for cell in code)
    assert any("assert " in cell.source for cell in code)
    NotebookClient(notebook, timeout=300, resources={"metadata": {"path": path.parent}}).execute()


def test_there_are_notebooks() -> None:
    assert NOTEBOOKS
