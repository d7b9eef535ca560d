"""Write the comments of the C++ headers as one table of docstrings for the bindings.

A `///` block above a declaration, or `///<` behind it, is filed under `<name>`; inside a struct,
class or enum under `<Struct>_<name>`. The texts of overloads are joined. The headers are read line
by line: clang-format holds their indentation, so that shows which struct a member belongs to.
"""

import argparse
import re
import sys
from pathlib import Path

HEADINGS = {
    "param": "Parameters",
    "returns": "Returns",
    "throws": "Raises",
    "source": "Source",
    "note": "Notes",
}
NAMED_TEXT = re.compile(r"(\w+(?:,\s*\w+)*)\s+(\S.*)")
SCOPE = re.compile(r"(?:struct|class|enum class|enum)\s+(\w+)")
Line = tuple[int, str]  # line number, text


class BadComment(Exception):
    """A comment that no docstring can be made of: line number, reason."""


def plain(declaration: str) -> str:
    """The declaration without attributes, access labels and template arguments."""
    text = re.sub(r"\[\[.*?\]\]|\b(?:public|private|protected):|->", " ", declaration)
    while (shorter := re.sub(r"<[^<>]*>", " ", text)) != text:
        text = shorter
    return re.sub(r"^\s*template\b", "", text).strip()


def declared_names(declaration: str) -> list[str]:
    """The names that a declaration introduces: one, or several fields on a line."""
    text = plain(declaration)
    if re.search(r"\boperator\b", text):
        return []
    if named := SCOPE.match(text) or re.match(r"using\s+(\w+)", text):
        return [named[1]]
    if function := re.match(r"[^={]*?(\w+)\s*\(", text):
        return [function[1]]
    return re.findall(r"(\w+)\s*(?:,|$)", re.sub(r"=[^,]*|\{[^}]*\}?|\[[^\]]*\]|;", "", text))


def tidy(comment: list[Line], declaration: str) -> str:
    """One comment as plain text, its tags under numpydoc headings."""
    body: list[str] = []
    sections: dict[str, list[str]] = {}
    target, indent = body, ""
    for number, line in comment:
        tag = re.match(r"\s*@(\w+)\s*(.*)", line)
        if tag is None:
            target = target if line.strip() else body
            target.append(line if target is body else indent + line.strip())
            continue
        kind, text = tag[1], tag[2].strip()
        if kind not in HEADINGS:
            raise BadComment(number, f"unknown tag @{kind}; known: @{', @'.join(HEADINGS)}")
        target, indent = sections.setdefault(kind, []), ""
        if kind in ("param", "throws"):
            indent = "    "
            named = NAMED_TEXT.fullmatch(text)
            if named is None:
                raise BadComment(number, f"@{kind} needs a name and a text")
            for name in re.findall(r"\w+", named[1]) if kind == "param" else []:
                if not re.search(rf"\b{name}\b", declaration):
                    raise BadComment(number, f"@param {name}: the declaration has no such name")
            target.append(named[1])
            text = named[2]
        if text:
            target.append(indent + text)
    parts = ["\n".join(body).strip()]
    for kind, heading in HEADINGS.items():
        if kind in sections:
            parts.append("\n".join([heading, "-" * len(heading), *sections[kind]]))
    return "\n\n".join(part for part in parts if part)


def read_header(text: str) -> dict[str, list[str]]:
    """Docstrings by key; a key has several when its name is overloaded."""
    docs: dict[str, list[str]] = {}
    scopes: dict[int, str] = {}  # open structs by indentation
    above: list[Line] = []
    behind: list[Line] = []
    declaration = ""

    def flush() -> None:
        nonlocal declaration
        indent = len(declaration) - len(declaration.lstrip())
        parents = [name for depth, name in sorted(scopes.items()) if depth < indent]
        for comment in filter(None, (above, behind)):
            for name in declared_names(declaration):
                key = "_".join([*parents, name])
                docs.setdefault(key, []).append(tidy(comment, declaration))
            comment.clear()
        if declaration.rstrip().endswith("{") and (scope := SCOPE.match(plain(declaration))):
            scopes[indent] = scope[1]
        declaration = ""

    for number, line in enumerate(text.splitlines(), 1):
        code, mark, remark = re.match(r"(.*?)(///<|///|//|$)(.*)", line).groups()
        balanced = declaration.count("(") == declaration.count(")")
        goes_on_behind = mark == "///<" and not code.strip()
        if balanced and re.search(r"[;{},]\s*$", declaration) and not goes_on_behind:
            flush()
        if code.startswith(("#", "namespace")):
            above.clear()
        elif code.strip():
            if code.lstrip().startswith("}"):
                flush()
                indent = len(code) - len(code.lstrip())
                scopes = {depth: name for depth, name in scopes.items() if depth < indent}
            else:
                declaration += code if not declaration else " " + code.strip()
        if mark == "///<":
            behind.append((number, remark.strip()))
        elif mark == "///":
            above.append((number, remark.removeprefix(" ").rstrip()))
    flush()
    return docs


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--output", type=Path, required=True)
    parser.add_argument("headers", type=Path, nargs="+")
    arguments = parser.parse_args()
    docs: dict[str, list[str]] = {}
    for header in sorted(arguments.headers):
        try:
            for key, texts in read_header(header.read_text(encoding="utf-8")).items():
                docs.setdefault(key, []).extend(texts)
        except BadComment as problem:
            sys.exit("{}:{}: {}".format(header, *problem.args))
    lines = ['#include "docstring_table.hpp"', "", "namespace backspring::python {", ""]
    lines += ["const DocstringTable& docstring_table() {", "    static const DocstringTable table{"]
    for key, texts in sorted(docs.items()):
        joined = "\n\n".join(dict.fromkeys(texts))
        lines.append(f'        {{"{key}", R"doc({joined})doc"}},')
    lines += ["    };", "    return table;", "}", "", "}  // namespace backspring::python", ""]
    arguments.output.parent.mkdir(parents=True, exist_ok=True)
    arguments.output.write_text("\n".join(lines), encoding="utf-8")


if __name__ == "__main__":
    main()
