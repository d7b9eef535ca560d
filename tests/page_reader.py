"""Reads a page as a browser does: its elements, its words, its drawings."""

from __future__ import annotations

from html.parser import HTMLParser
from xml.etree import ElementTree

# Elements of HTML that have no end.
VOID = ("meta", "br", "hr", "link", "img", "input")


class PageReader(HTMLParser):
    """Keeps elements, attributes and words, and what is not closed in turn."""

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.wrong: list[str] = []
        self.tags: set[str] = set()
        self.attributes: list[tuple[str, str, str | None]] = []
        self.words: list[str] = []
        self.headings: list[str] = []
        self.feed(html)
        self.close()
        self.wrong += [f"<{tag}> is never closed" for tag in self.open]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.add(tag)
        self.attributes += [(tag, name, value) for name, value in attrs]
        if tag not in VOID:
            self.open.append(tag)
        if tag == "h2":
            self.headings.append("")

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        if not self.open or self.open.pop() != tag:
            self.wrong.append(f"</{tag}> closes nothing, line {self.getpos()[0]}")

    def handle_data(self, data: str) -> None:
        if "style" in self.open:
            return
        self.words.append(data)
        if "h2" in self.open:
            self.headings[-1] += data

    @property
    def text(self) -> str:
        """All words of the page, in turn."""
        return "\n".join(self.words)

    def values(self, name: str) -> list[str]:
        """Values of an attribute wherever it stands."""
        return [value or "" for _, each, value in self.attributes if each == name]


def drawings(html: str) -> list[ElementTree.Element]:
    """Parse each drawing of a page as XML."""
    starts = html.split("<svg")[1:]
    return [
        ElementTree.fromstring("<svg" + each.partition("</svg>")[0] + "</svg>") for each in starts
    ]
