"""A look: the faces, rules and habits of one compositor, drawn from period combinations by a seed."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

from adminer.records import PriceForm


@dataclass(frozen=True, slots=True)
class Look:
    """Hold the type and habits of one composing room."""

    head: str  # display face
    head2: str  # second display face
    body: str
    fine: str  # face of rows and terms
    price: str
    script: str
    logo: str
    caps: bool  # heads in capitals
    big_dollars: PriceForm
    big_cents: PriceForm
    small_cents: PriceForm
    small_dollars: PriceForm
    cent_sign: str
    slash: bool
    stack: bool  # large multiples: "2 for" over the figure
    rule_under_cents: bool
    raised_dollar: bool
    border: str  # css border of the advert
    panel: str  # css class of feature panels: panel-rev, panel-box, panel-box2, panel-tint
    leader: str  # dots, dashes, none
    price_shape: str  # css transform of large figures


GOTHICS = ("League Gothic", "Anton", "Oswald", "Francois One", "Libre Franklin", "Archivo Narrow")
SLABS = ("Alfa Slab One", "Rokkitt", "Bevan", "Ultra")
MODERNS = ("Bodoni Moda", "Abril Fatface", "Libre Bodoni")
FUTURES = ("Jost", "Chango", "Bowlby One", "Limelight")
ROMANS = ("Old Standard TT", "Libre Caslon Text", "Sorts Mill Goudy", "Libre Baskerville", "Rokkitt")
SCRIPTS = ("Pacifico", "Yellowtail", "Kaushan Script", "Playball", "Leckerli One")
FINES = ("Archivo Narrow", "News Cycle", "Libre Franklin", "Jost", "Libre Baskerville", "Rokkitt")
FAMILIES = {"gothic": GOTHICS, "slab": SLABS, "modern": MODERNS, "future": FUTURES}
BORDERS = ("none", ".12em solid #111", ".5em double #111", ".3em solid #111", ".25em dashed #111", ".6em ridge #444")


def draw_look(seed: int, family: str | None = None) -> Look:
    """Draw a look; `family` fixes the display faces (gothic, slab, modern, future)."""
    rng = Random(f"look {seed}")
    heads = FAMILIES[family or rng.choice(tuple(FAMILIES))]
    head = rng.choice(heads)
    price = rng.choice((head, *GOTHICS, *SLABS, "Abril Fatface", "Jost", "Permanent Marker"))
    return Look(
        head=head,
        head2=rng.choice((*GOTHICS, *SLABS, *MODERNS, "Jost")),
        body=rng.choice(ROMANS),
        fine=rng.choice(FINES),
        price=price,
        script=rng.choice(SCRIPTS),
        logo=rng.choice((*SCRIPTS, *SLABS, *GOTHICS, *MODERNS, "Limelight", "Chango")),
        caps=rng.random() < 0.45,
        big_dollars=rng.choices(("raised_cents", "raised_cents_bare", "dollars_point"), (7, 2, 2))[0],
        big_cents=rng.choices(("cents_sign", "raised_cent_sign"), (5, 4))[0],
        small_cents=rng.choices(("cents_sign", "dollars_point"), (8, 1))[0],
        small_dollars=rng.choices(("dollars_point", "raised_cents", "bare"), (10, 3, 1))[0],
        cent_sign="c" if rng.random() < 0.12 else "¢",
        slash=rng.random() < 0.4,
        stack=rng.random() < 0.5,
        rule_under_cents=rng.random() < 0.45,
        raised_dollar=rng.random() < 0.5,
        border=rng.choice(BORDERS),
        panel=rng.choice(("panel-rev", "panel-box", "panel-box", "panel-tint", "panel-box2")),
        leader=rng.choice(("dots", "dots", "dashes", "none")),
        price_shape=rng.choice(("none", "none", "scaleX(.82)", "skewX(-8deg)")),
    )
