"""Writes sections as one HTML file that needs nothing besides itself.

No script, no network, no font from outside; on paper A4, no table, list or drawing cut in two.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from html import escape

from backspring.report.page_parts import Drawing, Part, Section, Words
from backspring.report.tables import Lines, TextTable

# Said to the browser too: whatever stood in a name, nothing would be fetched or run.
POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"
_STYLE = """
@page { size: A4; margin: 0.6in; }
@page { @bottom-left { content: NAME; font-size: 8pt; }
  @bottom-right { content: counter(page) " / " counter(pages); font-size: 8pt; } }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 60rem; padding: 1rem; color: #222; background: #fff;
  font: 1rem/1.4 system-ui, "Segoe UI", "DejaVu Sans", Arial, sans-serif; }
h1 { font-size: 1.7rem; margin: 0 0 0.3rem; overflow-wrap: anywhere; }
h2 { font-size: 1.25rem; margin: 1.6rem 0 0.5rem; border-bottom: 2px solid #222;
  overflow-wrap: anywhere; }
h3, caption { font-size: 1rem; font-weight: 600; margin: 0.9rem 0 0.3rem; text-align: left; }
p { margin: 0.3rem 0; }
ul { margin: 0.3rem 0; padding-left: 1.3rem; }
li, td, figcaption { overflow-wrap: anywhere; }
nav { font-size: 0.9rem; margin: 0.5rem 0; }
nav a { margin-right: 0.8rem; white-space: nowrap; display: inline-block; color: #005a8c; }
table { border-collapse: collapse; width: 100%; margin: 0.9rem 0; font-size: 0.85rem;
  font-variant-numeric: tabular-nums; }
table.words td:first-child { overflow-wrap: break-word; }
table.words td:nth-child(2) { min-width: 8em; }
th, td { padding: 0.15rem 0.45rem; border-bottom: 1px solid #ccc; vertical-align: top; }
th { text-align: right; border-bottom-color: #222; font-weight: 600; vertical-align: bottom; }
td { text-align: right; }
th:first-child, td:first-child, table.words th, table.words td { text-align: left; }
td.fails, td.missed { font-weight: 700; background: #ffe3d1; }
td.close { font-weight: 700; background: #fff2cc; }
figure { margin: 1rem 0; }
figure svg { display: block; width: 100%; height: auto; }
figcaption { font-size: 0.9rem; color: #444; }
@media print {
  html { font-size: 9.5pt; }
  body { max-width: none; padding: 0; }
  nav { display: none; }
  h1, h2, h3, caption { break-after: avoid; }
  tr, li, figure, ul, table, section.whole { break-inside: avoid; }
  table.long { break-inside: auto; }
  thead { display: table-header-group; }
}
"""
# A table with more rows would not fit on a page, and is cut between rows.
_LONG = 30
# A section of more than so many parts goes over several pages, and is cut between parts.
_WHOLE = 3
_JUDGED = ("fails", "close", "missed")
_WAY = re.compile(r"[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff]")


def page_html(title: str, subtitle: str, sections: Sequence[Section]) -> str:
    """Write the page; `title` is the design's name, `subtitle` what the page says of it."""
    style = _STYLE.replace("NAME", _style_text(title))
    return "\n".join(
        [
            '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8" />',
            f'<meta http-equiv="Content-Security-Policy" content="{POLICY}" />',
            '<meta name="viewport" content="width=device-width, initial-scale=1" />',
            f"<title>{escape(title)}</title>\n<style>{style}</style>\n</head>\n<body>",
            f"<h1>{_name(title)}</h1>\n<p>{escape(subtitle)}</p>",
            f"<nav>{''.join(_links(sections))}</nav>",
            *(_section(number, each) for number, each in enumerate(sections, start=1)),
            "</body>\n</html>\n",
        ]
    )


def _style_text(text: str) -> str:
    """Write text in a style: each letter that could mean something there, by its number."""
    plain = (each if each.isascii() and each.isalnum() else f"\\{ord(each):06x}" for each in text)
    return f'"{"".join(plain)}"'


def _name(name: str) -> str:
    """Write a name so that one written from right to left turns no words beside it."""
    return f"<bdi>{escape(name)}</bdi>"


def _heading(section: Section) -> str:
    title = escape(section.title)
    return title if section.blade is None else f"{_name(section.blade)}: {title}"


def _links(sections: Sequence[Section]) -> Iterator[str]:
    for number, each in enumerate(sections, start=1):
        yield f'<a href="#s{number}">{_heading(each)}</a>\n'


def _section(number: int, section: Section) -> str:
    whole = ' class="whole"' if len(section.parts) <= _WHOLE else ""
    parts = "\n".join(map(_part, section.parts))
    heading = f"<h2>{number}. {_heading(section)}</h2>"
    return f'<section id="s{number}"{whole}>\n{heading}\n{parts}\n</section>'


def _part(part: Part) -> str:
    if isinstance(part, Drawing):
        return f"<figure>{part.svg}<figcaption>{_text(part.caption)}</figcaption></figure>"
    if isinstance(part, Lines):
        heading = f"<h3>{_text(part.heading)}</h3>\n" if part.heading else ""
        items = "\n".join(f"<li>{_text(line)}</li>" for line in part.lines)
        return f"{heading}<ul>\n{items}\n</ul>"
    return _table(part)


def _table(table: TextTable) -> str:
    names = ["words"] if isinstance(table, Words) else []
    names += ["long"] if len(table.rows) > _LONG else []
    kind = f' class="{" ".join(names)}"' if names else ""
    caption = f"<caption>{_text(table.title)}</caption>" if table.title else ""
    heads = "".join(f"<th>{_text(head)}</th>" for head in table.heads)
    rows = "\n".join(f"<tr>{''.join(map(_cell, row))}</tr>" for row in table.rows)
    head = f"<thead><tr>{heads}</tr></thead>"
    return f"<table{kind}>{caption}\n{head}\n<tbody>\n{rows}\n</tbody></table>"


def _cell(cell: str) -> str:
    judged = f' class="{cell}"' if cell in _JUDGED else ""
    return f"<td{judged}>{_text(cell)}</td>"


def _text(text: str) -> str:
    """Write text; where letters run from right to left, numbers beside them keep their places."""
    written = escape(text)
    return f'<span dir="ltr">{written}</span>' if _WAY.search(text) else written
