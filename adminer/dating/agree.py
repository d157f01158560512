"""The stated rule for a page's date, an advert's validity and a clipping's note that disagree."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal, Protocol

from adminer.dating.edtf import DateBounds

DatedBy = Literal["printed", "note"]

RULE = (
    "The days an advert prints for its prices come first, when they fit the paper's date; then the paper's date as the "
    "owner noted it; then the paper's date as printed on the page. What disagrees is shown, never averaged."
)
# adverts run from about three weeks before to ten weeks after the issue they stand in; common practice, no source
_BEFORE, _AFTER = timedelta(days=21), timedelta(days=75)


class Dated(Protocol):
    """Say what a date needs to be weighed against others; a DateFact has it."""

    @property
    def kind(self) -> str:
        """Return validity, dateline, expiry or printed."""

    @property
    def text(self) -> str:
        """Return the date as printed."""

    @property
    def earliest(self) -> date | None:
        """Return the first day it may mean."""

    @property
    def latest(self) -> date | None:
        """Return the last day it may mean."""


@dataclass(frozen=True, slots=True)
class Settled:
    """Hold the days an advert was valid, what dated it, and in plain words what of it disagrees and what agrees."""

    valid_from: date | None
    valid_to: date | None
    dated_by: DatedBy | None
    disagreements: tuple[str, ...] = ()
    agreements: tuple[str, ...] = ()


def settle(facts: Iterable[Dated], note: DateBounds | None) -> Settled:
    """Return an advert's validity from the dates read on it and the owner's note, by `RULE`.

    `facts` are those of one advert and its page; `note` the bounds of the noted date of publication.
    """
    dated = [f for f in facts if f.earliest is not None or f.latest is not None]
    datelines = [f for f in dated if f.kind == "dateline"]
    validities = [f for f in dated if f.kind == "validity"]
    others = [f for f in dated if f.kind == "printed"]
    paper = note if note is not None and (note.earliest or note.latest) else _of(datelines)
    said = list(_against_note(datelines, note))
    agreed = tuple(_with_date_line(datelines, validities, note))
    for fact in validities:
        if paper is None or _fits(fact, paper):
            said += [
                f"'{fact.text}' and '{other.text}' are both printed as days of the sale"
                for other in validities
                if other is not fact and not _touch(fact, other) and (other.earliest, fact.earliest) != (None, None)
            ][:1]
            if paper is note:
                said += [
                    f"'{fact.text}' does not fit the page's date line '{line.text}'"
                    for line in datelines
                    if not _fits(fact, DateBounds(line.earliest, line.latest))
                ]
            return Settled(fact.earliest or _first(paper), fact.latest, "printed", tuple(said), agreed)
        said.append(f"'{fact.text}' does not fit the paper's date {_shown(paper)}; the paper's date is kept")
    if paper is not None:
        return Settled(paper.earliest, paper.latest, "printed" if paper != note else "note", tuple(said), agreed)
    if len({(f.earliest, f.latest) for f in others}) == 1:
        return Settled(others[0].earliest, others[0].latest, "printed", tuple(said))
    return Settled(None, None, None, tuple(said))


def _with_date_line(datelines: Sequence[Dated], validities: Sequence[Dated], note: DateBounds | None) -> Iterable[str]:
    for line in datelines[:1]:
        day = DateBounds(line.earliest, line.latest)
        if note is not None and not list(_against_note([line], note)):
            yield f"the page's date line '{line.text}' agrees with the note"
        for fact in validities[:1]:
            if _fits(fact, day):
                yield f"the page's date line '{line.text}' fits the days of the offer, '{fact.text}'"


def _of(facts: Sequence[Dated]) -> DateBounds | None:
    return DateBounds(facts[0].earliest, facts[0].latest) if facts else None


def _first(paper: DateBounds | None) -> date | None:
    return paper.earliest if paper and paper.earliest == paper.latest else None


def _against_note(datelines: Sequence[Dated], note: DateBounds | None) -> Iterable[str]:
    if note is None:
        return
    for fact in datelines:
        early = note.earliest is not None and fact.latest is not None and fact.latest < note.earliest
        late = note.latest is not None and fact.earliest is not None and fact.earliest > note.latest
        if early or late:
            yield f"the page prints '{fact.text}', the note says {_shown(note)}; the note is kept"


def _fits(fact: Dated, paper: DateBounds) -> bool:
    early = paper.earliest is not None and fact.latest is not None and fact.latest < paper.earliest - _BEFORE
    late = paper.latest is not None and fact.earliest is not None and fact.earliest > paper.latest + _AFTER
    return not early and not late


def _touch(one: Dated, other: Dated) -> bool:
    after = one.earliest is not None and other.latest is not None and other.latest < one.earliest
    before = one.latest is not None and other.earliest is not None and other.earliest > one.latest
    return not after and not before


def _shown(bounds: DateBounds) -> str:
    if bounds.earliest == bounds.latest and bounds.earliest is not None:
        return bounds.earliest.isoformat()
    return f"{bounds.earliest or 'open'} to {bounds.latest or 'open'}"
