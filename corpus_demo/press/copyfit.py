"""Fills newspaper columns with invented local news, and writes the line of the date."""

from __future__ import annotations

from random import Random

from .facts import ScanSpec

SUBJECTS = ("The Grange committee", "A delegation of shopkeepers", "The harbour board", "Miss Adela Thornquist", "The county agent")
SUBJECTS += ("The volunteer brigade", "A party of surveyors", "The school trustees", "The band of the reserve", "Mr. Orrin Felgate")
VERBS = ("met Tuesday evening to consider", "reported at length upon", "will shortly undertake", "declined to comment on")
VERBS += ("spoke warmly in favour of", "returned last night from an inspection of", "has been asked to examine", "voted to postpone")
OBJECTS = ("the repair of the lower bridge", "the widening of Mill Lane", "a new roof for the reading room", "the spring flower show")
OBJECTS += ("the purchase of a second pumper", "the closing hours of the ferry", "a course of evening lectures", "the condition of the orchard road")
TAILS = ("and expects a decision before the month is out.", "but no date was fixed.", "at a cost not yet made known.", "to the satisfaction of those present.")
TAILS += ("and thanked the ladies for the refreshments.", "subject to the consent of the council.", "as was foreseen in these columns.", "weather permitting.")
HEADS = ("Bridge Repairs Again Put Off", "Flower Show Date Is Set", "Ferry Hours Under Study", "Reading Room to Have New Roof", "Orchard Road Found Wanting")
HEADS += ("Brigade Asks Second Pumper", "Lecture Course Announced", "Mill Lane to Be Widened", "Trustees Hear Report", "Council Delays Vote")
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


def dateline(spec: ScanSpec) -> str:
    """Write the date as the folio line of a page has it; nothing where the page is meant to be undated."""
    day = spec.published
    if day is None or not spec.noted:
        return ""
    return f"{WEEKDAYS[day.weekday()]}, {day:%B} {day.day}, {day.year}"
