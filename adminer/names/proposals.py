"""Gather unknown names across adverts, cluster their spellings, and propose them as new entries with their sightings.

A person accepts, merges or rejects a proposal (adminer.names.editing); a rejected one does not come back.
"""

from __future__ import annotations

import tomllib
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

from rapidfuzz import fuzz

from adminer.errors import FolderError
from adminer.names.authority import Authorities
from adminer.names.matching import (
    Spelling,
    fold_house,
    fold_name,
    house_spellings,
    likeness,
    line_spellings,
    words_agree,
)
from adminer.records import Advert, Box

Kind = Literal["line", "maker"]
REJECTED_FILE: Final = "rejected.toml"
PROPOSED: Final = 0.35  # joint score from which a name is proposed: one sighting alone in display type
_ONE_NAME: Final = 84  # rapidfuzz ratio of folded spellings that count as one name
_ONE_LONG_NAME: Final = 79  # the same for names of nine letters and more
_LONG: Final = 9
_NEAR: Final = 70  # ratio from which a known line is shown as a possible home


@dataclass(frozen=True, slots=True)
class NameSighting:
    """Hold one place where an unknown name stands, in pixels of the scan."""

    advert_id: str
    text: str
    box: Box
    score: float
    why: str
    kind: Kind = "line"


@dataclass(frozen=True, slots=True)
class Proposal:
    """Hold a name proposed as a new line or maker: commonest spelling, score, spellings, sightings, near ones."""

    name: str
    score: float
    spellings: tuple[str, ...]
    sightings: tuple[NameSighting, ...]
    near: tuple[str, ...] = ()  # ids of lines with a name somewhat alike
    kind: Kind = "line"


def sightings_of(adverts: Iterable[Advert]) -> list[NameSighting]:
    """Return the unknown names of adverts one by one."""
    return [
        NameSighting(advert.advert_id, link.name, link.box, link.score, link.why, link.kind)
        for advert in adverts
        for link in advert.unknown_names
    ]


def propose(
    sightings: Iterable[NameSighting], authorities: Authorities, rejected: Iterable[str] = ()
) -> tuple[Proposal, ...]:
    """Cluster sightings by spelling and return the clusters worth a person's look, the surest first.

    Sightings in different adverts add up: two guesses of 0.4 make 0.64 (1 - 0.6 * 0.6).
    """
    given = tuple(sightings)
    refused = tuple(fold_name(name) for name in rejected)
    lines, makers = line_spellings(authorities.lines), house_spellings(authorities.makers)
    made = _proposals([s for s in given if s.kind == "line"], lines, refused, "line")
    made += _proposals([s for s in given if s.kind == "maker"], makers, refused, "maker")
    return tuple(sorted(made, key=lambda p: (-p.score, -len(p.sightings), p.name)))


def _proposals(
    sightings: Sequence[NameSighting], known: Sequence[Spelling], rejected: Sequence[str], kind: Kind
) -> list[Proposal]:
    fold = fold_name if kind == "line" else fold_house
    refused = [*rejected, *(spelling.folded for spelling in known)]
    clusters: list[tuple[str, list[NameSighting]]] = []
    for sighting in sorted(sightings, key=lambda s: (-s.score, s.advert_id, s.text)):
        key = fold(sighting.text)
        if not key or any(_alike(key, other, kind) for other in refused):
            continue
        home = next((members for other, members in clusters if _alike(key, other, kind)), None)
        if home is None:
            clusters.append((key, [sighting]))
        else:
            home.append(sighting)
    made = []
    for key, members in clusters:
        score = _joint(members)
        if score < PROPOSED:
            continue
        spelled = Counter(m.text.casefold() for m in members)
        name = min((m.text for m in members), key=lambda text: (-spelled[text.casefold()], text.isupper(), text))
        near = sorted({s.entry_id for s in known if fuzz.ratio(key, s.folded) >= _NEAR})
        made.append(
            Proposal(_titled(name), score, tuple(sorted({m.text for m in members})), tuple(members), tuple(near), kind)
        )
    return made


def _alike(one: str, other: str, kind: Kind) -> bool:
    mine, theirs = one.replace(" ", ""), other.replace(" ", "")
    least = _ONE_NAME if min(len(mine), len(theirs)) < _LONG else _ONE_LONG_NAME
    if kind == "maker":  # "Undine China" is short for "Undine China Works"
        words = min(len(one.split()), len(other.split()))
        one, other = (" ".join(name.split()[:words]) for name in (one, other))
    return mine == theirs or (100 * likeness(one, other) >= least and words_agree(one, other) > 0)


def _joint(members: list[NameSighting]) -> float:
    """Add up the best guess of each advert as independent evidence."""
    best: dict[str, float] = {}
    for m in members:
        best[m.advert_id] = max(m.score, best.get(m.advert_id, 0.0))
    doubt = 1.0
    for score in best.values():
        doubt *= 1 - score
    return round(1 - doubt, 3)


def _titled(name: str) -> str:
    return name.title().replace("'S", "'s") if name.isupper() else name


def read_rejected(folder: Path) -> tuple[str, ...]:
    """Return the names a person has rejected, from names/rejected.toml; none where there is no file."""
    path = folder / REJECTED_FILE
    try:
        data = tomllib.loads(path.read_text(encoding="utf-8-sig"))
    except FileNotFoundError:
        return ()
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise FolderError(
            "the list of rejected names cannot be read",
            file=f"{folder.name}/{REJECTED_FILE}",
            why=str(error),
            remedy="correct that line, or delete the file to have all names proposed again",
        ) from error
    return tuple(str(row["name"]) for row in data.get("rejected", []) if "name" in row)
