"""Shape of what `backspring evidence` prints."""

from __future__ import annotations

from backspring.document.shapes import COUNT, TEXT, TRUTH, list_of, table

EVIDENCE = [
    table(
        figures=COUNT,
        outside=COUNT,
        sources=list_of(table("most_used?", file=TEXT, source=TEXT, figures=COUNT, outside=COUNT)),
        not_run=list_of(table(file=TEXT, why=TEXT)),
        broken=list_of(table(test=TEXT, why=TEXT)),
        rows=list_of(
            table(
                "ours? theirs difference? allowed used?",
                file=TEXT,
                case=TEXT,
                unit=TEXT,
                by_share=TRUTH,
                within=TRUTH,
            )
        ),
    )
]
