"""One look for every picture: paper, ink, and two inks more, told apart by shape as well as by colour."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Final

import altair as alt
import vl_convert

PAPER: Final = "#fbf8f1"
INK: Final = "#2a2723"
FAINT: Final = "#b9b1a3"
WITH_CARD: Final = "#1f5f6b"
WITHOUT_CARD: Final = "#a4472f"
FACE: Final = "Georgia, 'Times New Roman', serif"


def dressed(chart: alt.TopLevelMixin) -> dict[str, Any]:
    """Return the chart's Vega-Lite specification in the house look."""
    # not checked against the schema: the charts are our own, tests draw them, and checking takes as long as drawing
    spec: dict[str, Any] = chart.to_dict(validate=False)
    spec["background"] = PAPER
    spec["config"] = {
        "font": FACE,
        "view": {"stroke": None},
        "axis": {
            "labelColor": INK,
            "titleColor": INK,
            "labelFontSize": 12,
            "titleFontSize": 12,
            "titleFontWeight": "normal",
            "gridColor": "#e6dfd1",
            "domainColor": FAINT,
            "tickColor": FAINT,
            "labelLimit": 260,
        },
        "title": {"anchor": "start", "color": INK, "fontSize": 15, "fontWeight": "normal", "subtitleColor": "#6b645a"},
        "legend": {"labelColor": INK, "titleColor": INK, "labelFontSize": 12, "symbolSize": 90, "orient": "top"},
    }
    return spec


def svg_of(chart: alt.TopLevelMixin) -> str:
    """Return the chart as an SVG string, drawn without a network or a browser."""
    drawn: str = vl_convert.vegalite_to_svg(dressed(chart))
    return drawn


def png_of(chart: alt.TopLevelMixin, scale: float = 2.0) -> bytes:
    """Return the chart as PNG bytes; scale 2 suits print."""
    drawn: bytes = vl_convert.vegalite_to_png(dressed(chart), scale=scale)
    return drawn


def write_chart(chart: alt.TopLevelMixin, target: Path) -> None:
    """Write a chart as PNG, or as SVG where the file's name ends so; OSError where the disk refuses."""
    if target.suffix.lower() == ".svg":
        target.write_text(svg_of(chart), encoding="utf-8")
    else:
        target.write_bytes(png_of(chart))
