"""`backspring outline`: a design file out of a drawing, or a scan, of its parts."""

from __future__ import annotations

import argparse
from pathlib import Path

from backspring.cli.answer import Answer
from backspring.cli.given_design import add_own_steels
from backspring.cli.pictures import write_picture
from backspring.outline.reading import read_outline
from backspring.report.outline import outline_report
from backspring.whole_file import replace_file, require_free

_VALUES = {
    "steel": ("spring.steel", "the steel's name"),
    "hardness": ("spring.hardness", 'hardness, as "45 HRC"'),
    "width": ("spring.width", "width of the stock"),
    "dial": ("fit.dial", "station of the indicator"),
}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add = parser.add_argument
    add(
        "drawing",
        metavar="FILE",
        help="a drawing as .dxf or .svg, the tang as it stands open; or a "
        "scan of the parts side by side, as .png, .jpg or .tif",
    )
    for part in ("spring", "tang", "liner"):
        add(f"--{part}", metavar="LAYER", help=f"layer of the {part}, where it is not called so")
    add("--name", metavar="NAME", help="name of the pattern (default: the file's)")
    add(
        "--fit",
        metavar="LENGTH",
        help="fit outlines with lines and arcs this near, 0 for none "
        "(default: those traced from a scan, within 0.05 mm)",
    )
    add("--scale", metavar="SCALE", help='of a scan: "50 mm = 1181 px" (default: its own dpi)')
    add("--dpi", metavar="DPI", help="dots an inch of a scan, instead of --scale")
    add("--hole", metavar="LENGTH", help="drill of the spring's holes: tells where an edge ends")
    for option, (_, meaning) in _VALUES.items():
        add(f"--{option}", metavar="VALUE", help=meaning)
    add_own_steels(parser)
    add("--picture", metavar="FILE", help="picture of what was taken for what, .png or .svg")
    add("-o", "--output", metavar="FILE", help="write the design file")
    add("--force", action="store_true", help="write over a file that is there")


def run(options: argparse.Namespace) -> Answer:
    """Answer with the design file's text and what was taken for what."""
    require_free(options.output, options.force)
    values = {
        key: _quoted(getattr(options, option), option == "steel")
        for option, (key, _) in _VALUES.items()
        if getattr(options, option) is not None
    }
    reading = read_outline(
        options.drawing,
        units=options.units,
        spring=options.spring,
        tang=options.tang,
        liner=options.liner,
        name=options.name,
        values=values,
        fit=options.fit,
        scale=options.scale,
        dpi=options.dpi,
        hole=options.hole,
    )
    data = reading.to_dict()
    if options.output is not None:
        reading.design  # noqa: B018  what is written can be read
        replace_file(Path(options.output), [reading.text.encode()])
        data["output"] = options.output
    if options.picture is not None:
        write_picture(options.picture, lambda picture: picture.outline_picture(reading))
        data["picture"] = options.picture
    return Answer("pass", data, outline_report(reading, options.output))


def _quoted(text: str, is_name: bool) -> str:
    """Write a value as a file has it: a bare number, or text; a steel may be called 1095."""
    try:
        float(text)
    except ValueError:
        is_name = True
    return f'"{text}"' if is_name else text
