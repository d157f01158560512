"""Fills newspaper columns with invented local news, and writes the line of the date."""

from __future__ import annotations

from random import Random

from .facts import AdvertSpec, ScanSpec

SUBJECTS: tuple[str, ...] = (
    "The Grange committee", "A delegation of shopkeepers", "The harbour board", "Miss Adela Thornquist", "The county agent",
    "The volunteer brigade", "A party of surveyors", "The school trustees", "The band of the reserve", "Mr. Orrin Felgate",
)  # fmt: skip
VERBS: tuple[str, ...] = (
    "met Tuesday evening to consider", "reported at length upon", "will shortly undertake", "declined to comment on",
    "spoke warmly in favor of", "returned last night from an inspection of", "has been asked to examine", "voted to postpone",
)  # fmt: skip
OBJECTS: tuple[str, ...] = (
    "the repair of the lower bridge", "the widening of Mill Lane", "a new roof for the reading room", "the spring flower show",
    "the purchase of a second pumper", "the closing hours of the ferry", "a course of evening lectures", "the condition of the orchard road",
)  # fmt: skip
TAILS: tuple[str, ...] = (
    "and expects a decision before the month is out.", "but no date was fixed.", "at a cost not yet made known.", "to the satisfaction of those present.",
    "and thanked the ladies for the refreshments.", "subject to the consent of the council.", "as was foreseen in these columns.", "weather permitting.",
)  # fmt: skip
HEADS: tuple[str, ...] = (
    "Bridge Repairs Again Put Off", "Flower Show Date Is Set", "Ferry Hours Under Study", "Reading Room to Have New Roof", "Orchard Road Found Wanting",
    "Brigade Asks Second Pumper", "Lecture Course Announced", "Mill Lane to Be Widened", "Trustees Hear Report", "Council Delays Vote",
)  # fmt: skip
TABLEWARE: tuple[str, ...] = (
    "Graceful shapes and clear, fresh color that will not wash away.", "Every piece is perfect, and each one matches what you have at home.",
    "Think of the compliments when company comes.", "Sturdy enough for every day, and pretty enough for Sunday.", "Detached pieces make a welcome gift for a bride.",
    "The decoration lies under the glaze.", "Begin with one setting and add to it as your budget allows.", "You will be proud to own it, and prouder still of what you saved.",
    "See the complete showing at our store this week.", "A fresh and dainty pattern on a smooth ivory body.", "Our buyers took the whole output of the kiln to bring you this value.",
)  # fmt: skip
PANTRY: tuple[str, ...] = (
    "Shop early for the best choice.", "Our produce comes in fresh each morning.", "Courteous clerks and honest weight.", "You save on every item, not on a few.",
)  # fmt: skip
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def sentence(rng: Random) -> str:
    """Make one sentence of news."""
    return f"{rng.choice(SUBJECTS)} {rng.choice(VERBS)} {rng.choice(OBJECTS)} {rng.choice(TAILS)}"


def column(rng: Random, sentences: int) -> str:
    """Make a column of articles with heads."""
    parts: list[str] = []
    left = sentences
    heads = rng.sample(HEADS, 6)
    while left > 0 and heads:
        size = rng.randint(5, 9)
        parts.append(f"<h4>{heads.pop()}</h4><p>{' '.join(sentence(rng) for _ in range(size))}</p>")
        left -= size
    return "".join(parts)


def selling(spec: AdvertSpec) -> tuple[str, ...]:
    """Write a paragraph of standing copy for an advert that has none of its own."""
    rng = Random(f"selling {spec.headline} {spec.town} {spec.line} {spec.valid}")
    bank = PANTRY if spec.line is None and spec.style in ("grocery", "handbill") else TABLEWARE
    return (" ".join(rng.sample(bank, rng.choice((1, 2, 3, 4)) if bank is TABLEWARE else 1)),)


def dateline(spec: ScanSpec) -> str:
    """Write the date as the folio line of a page has it; nothing where the page is meant to be undated."""
    day = spec.published
    if day is None or not spec.noted:
        return ""
    return f"{WEEKDAYS[day.weekday()]}, {day:%B} {day.day}, {day.year}"
