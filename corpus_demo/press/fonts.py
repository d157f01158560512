"""The faces the press sets type in: installed once as files by npm, embedded in every sheet from disk."""

from __future__ import annotations

import subprocess
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FOLDER = ROOT / ".work" / "press-fonts"
VERSION = "5.3.0"


@dataclass(frozen=True, slots=True)
class Face:
    """Name one package of the font project with the cuts the press uses."""

    package: str
    family: str
    weights: tuple[int, ...] = (400,)
    italics: tuple[int, ...] = ()


FACES = (
    Face("league-gothic", "League Gothic"),
    Face("anton", "Anton"),
    Face("oswald", "Oswald", (400, 700)),
    Face("archivo-narrow", "Archivo Narrow", (400, 700), (400, 700)),
    Face("francois-one", "Francois One"),
    Face("alfa-slab-one", "Alfa Slab One"),
    Face("rokkitt", "Rokkitt", (400, 700, 900)),
    Face("bevan", "Bevan"),
    Face("ultra", "Ultra"),
    Face("bodoni-moda", "Bodoni Moda", (400, 700, 900), (400, 700)),
    Face("libre-bodoni", "Libre Bodoni", (400, 700), (400, 700)),
    Face("abril-fatface", "Abril Fatface"),
    Face("old-standard-tt", "Old Standard TT", (400, 700)),
    Face("libre-caslon-text", "Libre Caslon Text", (400, 700), (400,)),
    Face("sorts-mill-goudy", "Sorts Mill Goudy", (400,), (400,)),
    Face("libre-baskerville", "Libre Baskerville", (400, 700)),
    Face("jost", "Jost", (400, 500, 700, 900)),
    Face("libre-franklin", "Libre Franklin", (400, 700, 900)),
    Face("news-cycle", "News Cycle", (400, 700)),
    Face("pacifico", "Pacifico"),
    Face("yellowtail", "Yellowtail"),
    Face("kaushan-script", "Kaushan Script"),
    Face("playball", "Playball"),
    Face("leckerli-one", "Leckerli One"),
    Face("limelight", "Limelight"),
    Face("chango", "Chango"),
    Face("bowlby-one", "Bowlby One"),
    Face("special-elite", "Special Elite"),
    Face("permanent-marker", "Permanent Marker"),
    Face("unifrakturcook", "UnifrakturCook", (700,)),
)


def cuts() -> list[tuple[str, int, str, Path]]:
    """List every cut as (family, weight, style, file)."""
    found = []
    for face in FACES:
        base = FOLDER / "node_modules" / "@fontsource" / face.package / "files"
        for weight in face.weights:
            for style in ("normal", "italic") if weight in face.italics else ("normal",):
                found.append((face.family, weight, style, base / f"{face.package}-latin-{weight}-{style}.woff2"))
    return found


def missing() -> list[str]:
    """Name the files of cuts that are not installed."""
    return [path.name for *_, path in cuts() if not path.is_file()]


def install() -> None:
    """Fetch the packages with npm into the ignored working folder; a development step, never a run-time one."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    packages = [f"@fontsource/{face.package}@{VERSION}" for face in FACES]
    subprocess.run(
        ["npm", "install", "--no-save", "--no-audit", "--no-fund", "--prefix", str(FOLDER), *packages], check=True
    )


def stylesheet() -> str:
    """Return the @font-face rules of all cuts, pointing at the installed files."""
    return "\n".join(
        f"@font-face{{font-family:'{family}';font-weight:{weight};font-style:{style};src:url('{path.as_uri()}')}}"
        for family, weight, style, path in cuts()
    )
