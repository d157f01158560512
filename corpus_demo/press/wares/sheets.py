"""Draws the sheets of adverts of many wares: who signs, how wide, how worn."""

from __future__ import annotations

from dataclasses import replace
from random import Random

from ..facts import AdvertSpec, ScanSpec, Source
from ..story import worn
from .copybook import brand

STYLES = (("bill", 7), ("single", 2), ("prose", 2))
SOURCES: tuple[tuple[Source, int], ...] = (("newsprint", 4), ("microfilm", 4), ("photocopy", 2), ("magazine", 2), ("phone", 1))  # fmt: skip
TOWNS = ("Alderwick", "Brackholt", "Cinderholt Falls", "Ivelmere", "Kestrel Bay", "Rudd City")


def make_wares(seed: int, count: int) -> tuple[ScanSpec, ...]:
    """Draw `count` sheets; the same seed gives the same."""
    return tuple(_sheet(seed * 10_007 + k) for k in range(count))


def _sheet(seed: int) -> ScanSpec:
    rng = Random(f"wares {seed}")
    style = rng.choices([s for s, _ in STYLES], [weight for _, weight in STYLES])[0]
    source = rng.choices([s for s, _ in SOURCES], [weight for _, weight in SOURCES])[0]
    base = rng.uniform(12, 21)
    house, town = f"{brand(rng)} & {brand(rng)}", rng.choice(TOWNS)
    advert = AdvertSpec(
        style, "house", house, (), "", town=town, addresses=(f"{rng.randint(2, 900)} Main Street, {town}",)
    )
    return ScanSpec(
        f"wares-{seed:07d}.png", (advert,), seed, round(base * rng.uniform(26, 52)), round(base, 1), replace(worn(source, rng), tear=False), None, noted=False, ad_type="wares",
    )  # fmt: skip
