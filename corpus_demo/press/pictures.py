"""Pictures of tableware as the adverts of the period showed it: retouched plates and cups in grey tones."""

from __future__ import annotations

from math import cos, pi, sin
from random import Random

from .facts import Motif
from .motifs import drawing

DEFS = (
    '<radialGradient id="glaze" cx=".38" cy=".3" r=".85"><stop offset="0" stop-color="#fff"/>'
    '<stop offset=".6" stop-color="#eee"/><stop offset=".85" stop-color="#c4c4c4"/>'
    '<stop offset="1" stop-color="#909090"/></radialGradient>'
    '<linearGradient id="side" x1="0" x2="1"><stop offset="0" stop-color="#b0b0b0"/><stop offset=".3" stop-color="#fff"/>'
    '<stop offset=".7" stop-color="#d8d8d8"/><stop offset="1" stop-color="#777"/></linearGradient>'
    '<linearGradient id="hollow" x1="0" x2="1"><stop offset="0" stop-color="#888"/>'
    '<stop offset="1" stop-color="#e6e6e6"/></linearGradient>'
    '<linearGradient id="cloth" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#555"/>'
    '<stop offset="1" stop-color="#aaa"/></linearGradient>'
)


def _ellipse(x: float, y: float, rx: float, ry: float, fill: str, extra: str = "") -> str:
    return f'<ellipse cx="{x:.1f}" cy="{y:.1f}" rx="{rx:.1f}" ry="{ry:.1f}" fill="{fill}" {extra}/>'


def _shadow(x: float, y: float, rx: float, ry: float) -> str:
    return _ellipse(x + rx * 0.08, y + ry * 0.16, rx * 1.02, ry, "#444", 'opacity=".55"')


def _motif(motif: Motif, x: float, y: float, size: float, flat: float, turn: float = 0.0) -> str:
    k = size / 24
    return (
        f'<g transform="translate({x:.1f} {y:.1f}) scale({k:.3f} {k * flat:.3f}) rotate({turn:.0f})">'
        f"{drawing(motif)}</g>"
    )


def plate(x: float, y: float, r: float, flat: float, motif: Motif, *, centre: bool = True) -> str:
    """Draw a plate seen at an angle; `flat` is height over width."""
    parts = [
        _shadow(x, y, r, r * flat),
        _ellipse(x, y, r, r * flat, "url(#glaze)", f'stroke="#333" stroke-width="{r * 0.012:.2f}"'),
        _ellipse(x, y, r * 0.96, r * 0.96 * flat, "none", f'stroke="#666" stroke-width="{r * 0.02:.2f}"'),
        _ellipse(x, y, r * 0.66, r * 0.66 * flat, "url(#glaze)", f'stroke="#999" stroke-width="{r * 0.015:.2f}"'),
    ]
    if motif == "band":
        parts.append(_ellipse(x, y, r * 0.84, r * 0.84 * flat, "none", f'stroke="#555" stroke-width="{r * 0.1:.2f}"'))
    elif motif != "plain":
        count = 9 if motif in ("frost", "star") else 3
        for k in range(count):
            a = 2 * pi * k / count - pi / 2
            px, py = x + r * 0.81 * cos(a), y + r * 0.81 * flat * sin(a)
            parts.append(_motif(motif, px, py, r * (0.2 if count > 3 else 0.36), flat, a * 180 / pi + 90))
        if centre and count == 3:
            parts.append(_motif(motif, x, y + r * 0.05, r * 0.75, flat))
    return "".join(parts)


def cup(x: float, y: float, r: float, motif: Motif, *, saucer: bool = True) -> str:
    """Draw a cup, on its saucer where wanted; (x, y) is the middle of its rim."""
    body = f"M{x - r:.1f} {y:.1f} C{x - r * 0.95:.1f} {y + r * 0.9:.1f} {x - r * 0.55:.1f} {y + r * 1.15:.1f} {x - r * 0.4:.1f} {y + r * 1.2:.1f}"
    body += f" L{x + r * 0.4:.1f} {y + r * 1.2:.1f} C{x + r * 0.55:.1f} {y + r * 1.15:.1f} {x + r * 0.95:.1f} {y + r * 0.9:.1f} {x + r:.1f} {y:.1f}Z"
    handle = f"M{x + r * 0.92:.1f} {y + r * 0.2:.1f} c{r * 0.7:.1f} {-r * 0.3:.1f} {r * 0.75:.1f} {r * 0.75:.1f} {-r * 0.15:.1f} {r * 0.6:.1f}"
    parts = (
        [plate(x, y + r * 1.15, r * 1.75, 0.34, "plain")] if saucer else [_shadow(x, y + r * 1.15, r * 0.8, r * 0.2)]
    )
    parts += [
        f'<path d="{handle}" fill="none" stroke="#555" stroke-width="{r * 0.2:.2f}"/>',
        f'<path d="{handle}" fill="none" stroke="#eee" stroke-width="{r * 0.1:.2f}"/>',
        f'<path d="{body}" fill="url(#side)" stroke="#333" stroke-width="{r * 0.03:.2f}"/>',
        _ellipse(x, y, r, r * 0.3, "url(#hollow)", f'stroke="#333" stroke-width="{r * 0.03:.2f}"'),
    ]
    if motif not in ("plain", "band"):
        parts.append(_motif(motif, x - r * 0.1, y + r * 0.72, r * 0.85, 1.0))
    return "".join(parts)


def bowl(x: float, y: float, r: float, motif: Motif) -> str:
    """Draw an open bowl; (x, y) is the middle of its rim."""
    body = f"M{x - r:.1f} {y:.1f} C{x - r * 0.8:.1f} {y + r * 0.7:.1f} {x - r * 0.4:.1f} {y + r * 0.75:.1f} {x:.1f} {y + r * 0.76:.1f}"
    body += f" C{x + r * 0.4:.1f} {y + r * 0.75:.1f} {x + r * 0.8:.1f} {y + r * 0.7:.1f} {x + r:.1f} {y:.1f}Z"
    return (
        _shadow(x, y + r * 0.7, r * 0.7, r * 0.16)
        + f'<path d="{body}" fill="url(#side)" stroke="#333" stroke-width="{r * 0.025:.2f}"/>'
        + _ellipse(x, y, r, r * 0.34, "url(#hollow)", f'stroke="#333" stroke-width="{r * 0.025:.2f}"')
        + (_motif(motif, x, y + r * 0.48, r * 0.5, 0.9) if motif not in ("plain", "band") else "")
    )


def pitcher(x: float, y: float, r: float, motif: Motif, *, lid: bool = False) -> str:
    """Draw a creamer, or with a lid a covered sugar; (x, y) is the middle of its rim."""
    body = f"M{x - r * 0.6:.1f} {y:.1f} C{x - r * 1.2:.1f} {y + r * 0.8:.1f} {x - r * 0.9:.1f} {y + r * 1.4:.1f} {x - r * 0.5:.1f} {y + r * 1.5:.1f}"
    body += f" L{x + r * 0.5:.1f} {y + r * 1.5:.1f} C{x + r * 0.9:.1f} {y + r * 1.4:.1f} {x + r * 1.2:.1f} {y + r * 0.8:.1f} {x + r * 0.6:.1f} {y:.1f}Z"
    handle = f"M{x + r * 0.7:.1f} {y + r * 0.2:.1f} c{r * 0.9:.1f} {-r * 0.2:.1f} {r * 0.9:.1f} {r * 1:.1f} {r * 0.15:.1f} {r * 0.8:.1f}"
    top = (
        _ellipse(x, y - r * 0.08, r * 0.66, r * 0.3, "url(#glaze)", f'stroke="#333" stroke-width="{r * 0.03:.2f}"')
        + _ellipse(x, y - r * 0.42, r * 0.13, r * 0.13, "#ddd", f'stroke="#333" stroke-width="{r * 0.03:.2f}"')
        if lid
        else _ellipse(x, y, r * 0.6, r * 0.18, "url(#hollow)", f'stroke="#333" stroke-width="{r * 0.03:.2f}"')
        + f'<path d="M{x - r * 0.6:.1f} {y:.1f} l{-r * 0.35:.1f} {-r * 0.12:.1f} l{r * 0.25:.1f} {r * 0.3:.1f}Z" fill="#ccc" stroke="#333" stroke-width="{r * 0.03:.2f}"/>'
    )
    return (
        _shadow(x, y + r * 1.45, r * 0.85, r * 0.2)
        + f'<path d="{handle}" fill="none" stroke="#444" stroke-width="{r * 0.2:.2f}"/>'
        + f'<path d="{body}" fill="url(#side)" stroke="#333" stroke-width="{r * 0.03:.2f}"/>'
        + top
        + (_motif(motif, x, y + r * 0.8, r * 0.9, 1.0) if motif not in ("plain", "band") else "")
    )


def tumbler(x: float, y: float, r: float, motif: Motif) -> str:
    """Draw a glass tumbler; (x, y) is the middle of its rim."""
    body = f"M{x - r:.1f} {y:.1f} L{x - r * 0.75:.1f} {y + r * 2.6:.1f} L{x + r * 0.75:.1f} {y + r * 2.6:.1f} L{x + r:.1f} {y:.1f}Z"
    return (
        f'<path d="{body}" fill="url(#side)" opacity=".75" stroke="#222" stroke-width="{r * 0.05:.2f}"/>'
        + _ellipse(x, y, r, r * 0.25, "#eee", f'stroke="#222" stroke-width="{r * 0.05:.2f}"')
        + _ellipse(x, y + r * 2.6, r * 0.75, r * 0.18, "#777")
        + (_motif(motif, x, y + r * 1.3, r * 1.1, 1.0) if motif not in ("plain", "band") else "")
    )


def can(x: float, y: float, r: float, word: str) -> str:
    """Draw a tin with a paper label; (x, y) is the middle of its lid."""
    return (
        f'<rect x="{x - r:.1f}" y="{y:.1f}" width="{2 * r:.1f}" height="{2.3 * r:.1f}" fill="url(#side)" stroke="#222" stroke-width="{r * 0.04:.2f}"/>'
        f'<rect x="{x - r:.1f}" y="{y + r * 0.45:.1f}" width="{2 * r:.1f}" height="{1.3 * r:.1f}" fill="#444"/>'
        f'<text x="{x:.1f}" y="{y + r * 1.25:.1f}" font-family="Anton" font-size="{r * 0.6:.1f}" fill="#eee" text-anchor="middle" textLength="{r * 1.7:.1f}" lengthAdjust="spacingAndGlyphs">{word}</text>'
        + _ellipse(x, y, r, r * 0.26, "#ccc", f'stroke="#222" stroke-width="{r * 0.04:.2f}"')
    )


def _wrap(body: str, w: float, h: float, cloth: str) -> str:
    ground = f'<rect width="{w}" height="{h}" fill="{cloth}"/>' if cloth != "none" else ""
    return f'<svg class="pic" viewBox="0 0 {w} {h}"><defs>{DEFS}</defs>{ground}{body}</svg>'


def table(motif: Motif, seed: int, *, shape: str = "wide") -> str:
    """Draw a laid group: plates standing, cup and saucer, bowl, creamer and sugar, in one of several arrangements."""
    rng = Random(f"table {seed}")
    cloth = rng.choice(("none", "url(#cloth)", "#ddd", "none"))
    if shape == "tall":
        body = plate(100, 90, 88, 0.96, motif) + bowl(55, 205, 42, motif) + cup(140, 195, 30, motif)
        return _wrap(body, 200, 265, cloth)
    if shape == "setting":
        flat = rng.uniform(0.5, 0.75)
        body = (
            plate(120, 95, 105, flat, motif) + plate(245, 70, 62, flat, motif, centre=False) + cup(270, 125, 34, motif)
        )
        return _wrap(body, 340, 190, cloth)
    if shape == "plate":
        return _wrap(plate(100, 100, 94, rng.uniform(0.85, 1), motif), 200, 200, cloth)
    if shape == "cup":
        return _wrap(cup(75, 35, 40, motif), 150, 120, cloth)
    if shape == "row":
        body = plate(70, 75, 62, 0.95, motif) + plate(180, 92, 44, 0.95, motif, centre=False) + cup(275, 75, 27, motif)
        body += bowl(375, 95, 40, motif) + pitcher(460, 85, 26, motif) + pitcher(535, 85, 26, motif, lid=True)
        return _wrap(body, 590, 150, cloth)
    if shape == "glass":
        return _wrap("".join(tumbler(35 + 62 * k, 25 + 6 * (k % 2), 26, motif) for k in range(4)), 258, 115, cloth)
    order = [plate(95, 85, 80, 0.97, motif), plate(250, 105, 60, 0.97, motif, centre=False)]
    order += [cup(330, 95, 32, motif), bowl(180, 165, 46, motif), pitcher(425, 100, 30, motif)]
    return _wrap("".join(order), 480, 215, cloth)


def pantry(seed: int, word: str) -> str:
    """Draw two or three tins."""
    rng = Random(f"pantry {seed}")
    return _wrap(
        "".join(can(30 + 50 * k, 14 + 8 * (k % 2), 22, word) for k in range(rng.choice((2, 3)))), 160, 80, "none"
    )
