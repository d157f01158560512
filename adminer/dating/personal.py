"""Evidence a person added, struck out or linked: the file evidence.toml in a clippings folder.

[[add]]
advert = "3f2a...-a1"               # advert id, or a clipping id for all its adverts
dates = "1951-05/1953"              # EDTF: what the evidence says
reason = "dated on the back in pencil"
source = "seen by M. B., 3 May 2024"
trust = 0.9                         # chance that it holds, 0.9 where not given

[[strike]]
advert = "3f2a...-a1"
kind = "staple prices"              # all clues of this kind, or only those whose text has `text` in it
text = ""
reason = "prices are of a later page"

[[link]]
adverts = ["3f2a...-a1", "77b0..."]   # of one issue, for instance front and reverse of one clipping
reason = "reverse of the same clipping"
"""

from __future__ import annotations

import json
import tomllib
from collections.abc import Collection
from pathlib import Path
from typing import Annotated, Final

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from adminer.dating.edtf import bounds_of
from adminer.dating.evidence.base import Clue
from adminer.dating.evidence.shapes import faded, within
from adminer.dating.months import MONTHS, index_of
from adminer.errors import FolderError

FILE_NAME: Final = "evidence.toml"
KIND: Final = "added by a person"


class _Entry(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class Added(_Entry):
    """Hold one piece of evidence a person added."""

    advert: str
    dates: str
    reason: str
    source: str = "the owner of the file"
    trust: Annotated[float, Field(gt=0, lt=1)] = 0.9


class Struck(_Entry):
    """Hold a kind of clue (or one clue, by part of its text) that a person struck out for an advert."""

    advert: str
    kind: str
    text: str = ""
    reason: str = ""


class Linked(_Entry):
    """Hold adverts that a person says are of one issue."""

    adverts: tuple[str, ...]
    reason: str = ""


Entry = Added | Struck | Linked


class PersonalEvidence(_Entry):
    """Hold all that evidence.toml says."""

    add: tuple[Added, ...] = ()
    strike: tuple[Struck, ...] = ()
    link: tuple[Linked, ...] = ()

    def added_to(self, advert_id: str) -> tuple[Added, ...]:
        """Return what a person added to an advert or to its whole clipping."""
        return tuple(added for added in self.add if _meant(added.advert, advert_id))

    def linked(self, advert_id: str, known: Collection[str]) -> tuple[str, ...]:
        """Return which of the known adverts a person linked with this one; a linked clipping means all its adverts."""
        named = [a for link in self.link if any(_meant(a, advert_id) for a in link.adverts) for a in link.adverts]
        return tuple(other for other in known if any(_meant(a, other) for a in named)) if named else ()


def load_personal(folder: Path) -> PersonalEvidence:
    """Read evidence.toml of a clippings folder; a missing file is no evidence. FolderError where it is broken."""
    path = folder / FILE_NAME
    try:
        data = tomllib.loads(path.read_text(encoding="utf-8-sig"))
        personal = PersonalEvidence.model_validate(data)
    except FileNotFoundError:
        return PersonalEvidence()
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise FolderError("cannot be understood", file=FILE_NAME, why=str(error), remedy="correct that line") from None
    except ValidationError as error:
        first = error.errors()[0]
        place = ".".join(str(part) for part in first["loc"])
        raise FolderError(
            f"has a wrong entry '{place}'", file=FILE_NAME, why=first["msg"].lower(), remedy="correct that entry"
        ) from None
    for added in personal.add:
        bounds_of(added.dates)
    return personal


def told_by(added: Added) -> str:
    """Return the words of the clue that an added entry makes."""
    return f"{added.reason}: {added.dates}"


def added_clues(personal: PersonalEvidence, advert_id: str) -> list[Clue]:
    """Return the clues a person added to an advert or to its whole clipping."""
    found = []
    for added in personal.added_to(advert_id):
        bounds = bounds_of(added.dates)
        first = index_of(bounds.earliest) if bounds.earliest else 0
        last = index_of(bounds.latest) if bounds.latest else MONTHS - 1
        likelihood = faded(within(first, last, 1e-6), added.trust)
        found.append(
            Clue(
                KIND,
                told_by(added),
                added.source,
                likelihood,
                None,
                bounds.earliest,
                bounds.latest,
            )
        )
    return found


def is_struck(personal: PersonalEvidence, advert_id: str, clue: Clue) -> bool:
    """Say whether a person struck this clue out for this advert."""
    return any(
        _meant(s.advert, advert_id) and s.kind == clue.kind and s.text.lower() in clue.text.lower()
        for s in personal.strike
    )


def _meant(named: str, advert_id: str) -> bool:
    # a clipping id stands for all its adverts, which are named "<clipping>-a1" and so on
    return named == advert_id or advert_id.startswith(f"{named}-a")


def written(entry: Entry) -> str:
    """Return an entry as the TOML that evidence.toml takes."""
    table = "add" if isinstance(entry, Added) else "strike" if isinstance(entry, Struck) else "link"
    lines = [f"[[{table}]]"]
    for name, value in entry.model_dump().items():
        # JSON strings of printable text are TOML strings
        lines.append(f"{name} = {json.dumps(value, ensure_ascii=False)}")
    return "\n".join(lines) + "\n"


def append_entry(folder: Path, entry: Entry) -> None:
    """Add an entry at the end of evidence.toml; what stands there stays as it was written.

    Raises FolderError where the file is broken, OSError where the disk refuses.
    """
    load_personal(folder)
    if isinstance(entry, Added):
        bounds_of(entry.dates)
    path = folder / FILE_NAME
    before = path.read_text(encoding="utf-8-sig") if path.is_file() else ""
    if before and not before.endswith("\n"):
        before += "\n"
    fresh = path.with_name(f".{FILE_NAME}.writing")
    fresh.write_text(before + ("\n" if before else "") + written(entry), encoding="utf-8")
    fresh.replace(path)
