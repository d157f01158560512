"""Decals of the invented lines: small drawings in shades of grey that a halftone screen will break up."""

from __future__ import annotations

from math import cos, pi, sin

from .facts import Motif


def _flower(x: float, y: float, r: float, petals: int, tone: str, eye: str) -> str:
    parts = []
    for k in range(petals):
        a = 2 * pi * k / petals + x
        px, py = x + r * 0.62 * cos(a), y + r * 0.62 * sin(a)
        turn = a * 180 / pi
        parts.append(
            f'<ellipse cx="{px:.2f}" cy="{py:.2f}" rx="{r * 0.5:.2f}" ry="{r * 0.3:.2f}" fill="{tone}" '
            f'stroke="#333" stroke-width="{r * 0.06:.2f}" transform="rotate({turn:.1f} {px:.2f} {py:.2f})"/>'
        )
    parts.append(f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{r * 0.3:.2f}" fill="{eye}"/>')
    return "".join(parts)


def _leaf(x: float, y: float, length: float, turn: float, tone: str) -> str:
    d = f"M0 0 C{length * 0.3:.2f} {-length * 0.32:.2f} {length * 0.8:.2f} {-length * 0.2:.2f} {length:.2f} 0 "
    d += f"C{length * 0.8:.2f} {length * 0.2:.2f} {length * 0.3:.2f} {length * 0.32:.2f} 0 0Z"
    return (
        f'<path d="{d}" fill="{tone}" transform="translate({x:.2f} {y:.2f}) rotate({turn:.1f})"/>'
        f'<path d="M0 0L{length:.2f} 0" stroke="#ccc" stroke-width="{length * 0.04:.2f}" '
        f'transform="translate({x:.2f} {y:.2f}) rotate({turn:.1f})"/>'
    )


def _stem(d: str, width: float = 0.6) -> str:
    return f'<path d="{d}" fill="none" stroke="#444" stroke-width="{width}"/>'


def _tansy() -> str:
    buttons = ((-4, -6, 3), (3, -7, 3.2), (0, -1, 3.4), (-8, 0, 2.6), (8, -1, 2.6))
    return (
        _stem("M0 12C-1 6-3 0-4-6M0 12C1 6 2 0 3-7M0 12C-4 8-7 4-8 0M0 12C4 8 7 4 8-1")
        + _leaf(-1, 8, 9, 200, "#555")
        + _leaf(1, 9, 9, -20, "#666")
        + _leaf(0, 5, 7, 230, "#777")
        + "".join(_flower(x, y, r, 9, "#bbb", "#222") for x, y, r in buttons)
    )


def _frost() -> str:
    arms = []
    for k in range(6):
        arms.append(
            f'<g transform="rotate({60 * k})"><path d="M0 0V-10M0-4L-3-7M0-4L3-7M0-7L-2-9M0-7L2-9" '
            'stroke="#555" stroke-width=".9" fill="none"/></g>'
        )
    return "".join(arms) + '<circle r="1.6" fill="#333"/>'


def _wheat() -> str:
    ears = []
    for dx, turn in ((-4, -18), (0, 0), (4, 18)):
        grains = "".join(
            f'<ellipse cx="{s * 1.3}" cy="{-4 - 2.2 * k}" rx="1" ry="1.9" fill="#777" stroke="#222" stroke-width=".3" '
            f'transform="rotate({s * 25} {s * 1.3} {-4 - 2.2 * k})"/>'
            for k in range(5)
            for s in (-1, 1)
        )
        ears.append(f'<g transform="translate({dx} 4) rotate({turn})">{_stem("M0 9V-14", 0.7)}{grains}</g>')
    return "".join(ears) + _leaf(0, 10, 9, 205, "#888") + _leaf(0, 10, 9, -25, "#888")


def _sorrel() -> str:
    leaves = "".join(
        _leaf(x, y, 8, t, tone) for x, y, t, tone in ((0, 3, 200, "#444"), (0, 3, -20, "#666"), (0, 7, 150, "#555"))
    )
    berries = "".join(
        f'<circle cx="{x}" cy="{y}" r="1.7" fill="#222" stroke="#ddd" stroke-width=".4"/>'
        for x, y in ((0, -9), (-2.5, -6.5), (2.5, -6.5), (-1.4, -3.5), (1.6, -3.2), (0, -6))
    )
    return _stem("M0 12C1 6 0 0 0-9") + leaves + berries


def _quince() -> str:
    return (
        _stem("M-9 8C-3 4 3-2 9-9", 1)
        + _leaf(-4, 4, 8, 240, "#555")
        + _leaf(2, -2, 8, 30, "#666")
        + _flower(-2, 0, 4.5, 5, "#ddd", "#333")
        + _flower(6, -7, 3.6, 5, "#ccc", "#333")
    )


def _star() -> str:
    points = []
    for k in range(16):
        r = 10 if k % 2 == 0 else 3
        points.append(f"{r * sin(pi * k / 8):.2f},{-r * cos(pi * k / 8):.2f}")
    return f'<polygon points="{" ".join(points)}" fill="#555"/>'


def drawing(motif: Motif) -> str:
    """Return the motif in a square of about 24 units around the origin."""
    match motif:
        case "tansy":
            return _tansy()
        case "frost":
            return _frost()
        case "wheat":
            return _wheat()
        case "sorrel":
            return _sorrel()
        case "quince":
            return _quince()
        case "star":
            return _star()
        case _:
            return ""
