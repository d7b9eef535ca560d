"""One joint, not to scale, with every length of the design file as a dimension."""

from __future__ import annotations

from backspring.picture import palette
from backspring.picture.canvas import Picture
from backspring.picture.dimensions import Sheet, arc_places

_ROOM = (210.0, 218.0)


def key_drawing() -> Picture:
    """Draw where each length of [spring], [tang], [fit] and [blade] is measured, by its key."""
    width = palette.WIDTH_IN
    figure = Picture(figsize=(width, width * _ROOM[1] / _ROOM[0]), dpi=palette.DPI)
    axes = figure.add_axes((0.0, 0.0, 1.0, 1.0))
    axes.set(xlim=(0.0, _ROOM[0]), ylim=(0.0, _ROOM[1]))
    axes.set_axis_off()
    sheet = Sheet(axes)
    _spring(sheet)
    _close_up(sheet)
    _tang(sheet)
    _fit(sheet)
    _blade(sheet)
    return figure


def _spring(sheet: Sheet) -> None:
    """Draw the spring with its stations, and its cross-section."""
    belly, rear, middle, pivot = 182.0, 24.0, 82.0, 142.0
    sheet.title(4.0, 212.0, "Spring and stations, counted from the middle pin")
    back = [
        (152.0, belly + 9.0),
        (112.0, belly + 9.0),
        (middle, belly + 14.0),
        (12.0, belly + 11.0),
    ]
    sheet.steel([(12.0, belly), (152.0, belly), *back])
    sheet.chain_line([(12.0, belly + 5.5), (middle, belly + 7.0), (112.0, 186.5), (152.0, 186.5)])
    sheet.leader("spring.mid_line", (46.0, belly + 6.2), (46.0, 203.0))
    sheet.circle((rear, belly + 7.4), 2.4)
    sheet.chain_line([(rear - 5.0, belly + 7.4), (rear + 5.0, belly + 7.4)])
    sheet.dimension(
        "spring.pin_hole_offset", (14.0, belly + 5.55), (14.0, belly + 7.4), (20.0, 200.0)
    )
    sheet.circle((middle, belly + 7.0), 3.0)
    sheet.circle((middle, belly + 7.0), 2.4, filled=True)
    sheet.leader("spring.pin_clearance: how much wider than the pin", (84.7, 190.0), (106.0, 203.0))
    sheet.dimension("spring.pin_hole", (79.0, belly + 7.0), (85.0, belly + 7.0), (62.0, 207.0))
    sheet.dimension("spring.thickness", (127.0, belly), (127.0, belly + 9.0), (127.0, 197.0))
    sheet.across("fit.dial", middle, 146.0, 152.0, belly)
    sheet.across("tang.pivot", middle, pivot, 170.0, belly)
    sheet.across("spring.rear_pin", middle, rear, 170.0, belly)
    sheet.across("spring.pad, its rear edge", middle, 130.0, 164.0, belly)
    sheet.across("spring.pad, its front edge", middle, 152.0, 158.0, belly)
    sheet.circle((pivot, 177.0), 1.4)
    sheet.steel([(180.0, belly), (196.0, belly), (196.0, belly + 12.0), (180.0, belly + 12.0)])
    sheet.across("spring.width", 180.0, 196.0, 176.0, belly)
    sheet.words("cut across", (188.0, 198.0))


def _close_up(sheet: Sheet) -> None:
    """Draw a hollow belly with a step, larger."""
    sheet.title(142.0, 146.0, "A belly that is not straight")
    hollow = arc_places((164.0, 91.0), 40.0, 124.0, 56.0)
    root = arc_places((192.0, 121.7), 2.5, 90.0, 0.0)
    sheet.steel([*hollow, *root, (194.5, 116.0), (206.0, 116.0), (206.0, 141.0), (141.6, 141.0)])
    sheet.line((164.0, 113.0), (164.0, 131.0), arrow=True)
    sheet.words("spring.curve_radius", (164.0, 113.0))
    sheet.leader("spring.kink_radius", (193.6, 123.4), (184.0, 107.0))
    sheet.dashed([(x, y + 2.0) for x, y in hollow])
    sheet.dimension("spring.soft_skin", (150.0, 128.5), (149.4, 130.5), (156.0, 136.5))


def _tang(sheet: Sheet) -> None:
    """Draw a tang with half-stop and kick, the blade open, and a round end beside it."""
    sheet.title(4.0, 146.0, "Tang, the blade open")
    x, y = 58.0, 114.0
    left, top, low, ahead = x - 22.0, y + 20.0, y - 19.0, x + 26.0
    corner_up = arc_places((left + 6.0, top - 6.0), 6.0, 90.0, 180.0)
    corner_down = arc_places((left + 6.0, low + 6.0), 6.0, 180.0, 270.0)
    nose = arc_places((x + 30.0, low - 1.0), 3.0, 200.0, 340.0)
    teeth = [(x + 36.0 + 1.5 * (i % 2), low + 1.0 + 3.0 * i) for i in range(12)]
    sheet.steel(
        [
            (ahead, top),
            *corner_up,
            *corner_down,
            (x + 27.2, low),
            *nose,
            *teeth,
            (x + 34.0, top - 4.0),
        ]
    )
    sheet.circle((x, y), 5.0)
    sheet.circle((x, y), 4.2, filled=True)
    sheet.leader("tang.pivot_clearance", (x + 4.6, y + 1.0), (x + 17.0, y + 8.0))
    sheet.dimension("tang.open", (x - 9.0, y), (x - 9.0, top), (x - 9.0, y + 13.0))
    sheet.dimension("tang.closed", (x - 5.0, y), (x - 5.0, low), (x - 5.0, y - 12.0))
    sheet.dimension("tang.half_stop", (x, y), (left, y), (left - 9.6, y))
    sheet.across("tang.front", x, ahead, top + 5.0, top)
    sheet.across("tang.kick.distance", x, x + 30.0, low - 9.0, low - 4.0)
    sheet.dimension(
        "tang.kick.height", (x + 21.0, low), (x + 21.0, low - 4.0), (x + 12.0, low + 4.5)
    )
    sheet.dashed([(x + 19.0, low - 4.0), (x + 30.0, low - 4.0)])
    sheet.leader("tang.kick.radius", (x + 32.4, low - 2.8), (x + 46.0, low - 8.0))
    sheet.leader("tang.corner_radius", (left + 1.8, top - 1.8), (left - 10.0, top + 5.0))
    sheet.leader("tang.corner_radius", (left + 1.8, low + 1.8), (left - 10.0, low - 5.0))
    end = arc_places((118.0, y), 17.0, 110.0, 250.0)
    sheet.steel([(120.0, y + 16.0), *end, (120.0, y - 16.0)])
    sheet.circle((118.0, y), 3.0)
    sheet.line((118.0, y), (102.2, y + 6.2), arrow=True)
    sheet.words("tang.round_end", (112.0, y + 22.0))
    sheet.words("or tang.outline", (117.0, y - 19.5))


def _fit(sheet: Sheet) -> None:
    """Draw the rear pin out, the spring thought unbent on both pins, and the blade's stop."""
    sheet.title(4.0, 80.0, "Fit: rear pin out")
    sheet.steel([(8.0, 67.0), (66.0, 61.0), (66.0, 68.0), (8.0, 75.0)])
    sheet.steel([(44.0, 63.3), (66.0, 61.0), (66.0, 48.0), (44.0, 48.0)], blade=True)
    sheet.circle((14.0, 70.3), 1.6)
    sheet.circle((14.0, 60.0), 1.6, dashed=True)
    sheet.circle((36.0, 67.8), 1.6)
    sheet.circle((55.0, 54.0), 1.6)
    sheet.dimension("fit.rear_pin_offset", (14.0, 60.0), (14.0, 70.3), (22.0, 54.0))
    sheet.title(76.0, 80.0, "both pins in, the spring thought unbent")
    sheet.dashed([(76.0, 63.0), (134.0, 63.0), (134.0, 70.0), (76.0, 70.0), (76.0, 63.0)])
    sheet.steel([(112.0, 66.0), (134.0, 66.0), (134.0, 48.0), (112.0, 48.0)], blade=True)
    sheet.circle((82.0, 66.5), 1.6)
    sheet.circle((104.0, 66.5), 1.6)
    sheet.circle((123.0, 54.0), 1.6)
    sheet.chain_line([(123.0, 47.0), (123.0, 74.0)])
    sheet.dimension("fit.preload", (123.0, 63.0), (123.0, 66.0), (106.0, 58.5))
    sheet.title(146.0, 80.0, "the blade's stop at open")
    sheet.steel([(146.0, 62.0), (178.0, 62.0), (178.0, 73.0), (146.0, 73.0)])
    sheet.steel(
        [
            (154.0, 62.0),
            (178.6, 62.0),
            (178.6, 66.0),
            (178.0, 67.0),
            (178.6, 68.0),
            (178.6, 72.0),
            (188.0, 72.0),
            (188.0, 46.0),
            (154.0, 46.0),
        ],
        blade=True,
    )
    sheet.circle((162.0, 53.0), 1.6)
    sheet.across("fit.stop_face", 162.0, 178.6, 41.0, 53.0)
    sheet.dashed([(172.0, 67.0), (178.0, 67.0)])
    sheet.dimension("fit.stop", (174.0, 62.0), (174.0, 67.0), (160.0, 68.0))


def _blade(sheet: Sheet) -> None:
    """Draw the whole blade, and how it lies closed."""
    sheet.title(4.0, 36.0, "Blade, open; u ahead of the pivot, w outward")
    pivot, height = (22.0, 22.0), 22.0
    edge = [(34.0, 15.0), (88.0, 14.0), (112.0, 25.0)]
    sheet.steel([(12.0, 17.0), (31.0, 17.0), *edge, (90.0, 29.0), (12.0, 29.0)], blade=True)
    sheet.circle(pivot, 1.6)
    sheet.circle((74.0, 26.5), 0.8)
    sheet.across("blade.nail_nick", pivot[0], 74.0, 22.0, height)
    sheet.across("blade.length", 12.0, 112.0, 4.0, 15.0)
    sheet.dimension("blade.height", (84.0, 14.1), (84.0, 29.0), (84.0, 19.0))
    sheet.leader("blade.edge [u, w] of each corner", (88.0, 14.0), (62.0, 9.5))
    sheet.leader("blade.tip [u, w]", (112.0, 25.0), (116.0, 31.0))
    sheet.title(138.0, 36.0, "closed, in the handle")
    sheet.steel([(138.0, 25.0), (168.0, 25.0), (168.0, 31.0), (138.0, 31.0)])
    sheet.dashed([(168.0, 25.0), (206.0, 25.0)])
    sheet.line((138.0, 3.0), (206.0, 3.0))
    sheet.words("rim", (142.0, 3.0))
    sheet.steel([(138.0, 19.0), (186.0, 19.0), (196.0, 9.0), (138.0, 6.0)], blade=True)
    sheet.dimension("blade.edge_clearance", (160.0, 19.0), (160.0, 25.0), (178.0, 22.0))
    sheet.dimension("blade.well", (196.0, 3.0), (196.0, 25.0), (196.0, 15.5))
