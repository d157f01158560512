"""The rows a journal gives to tables of the database: what was corrected, and which clippings are one advert."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from adminer.records import Box
from adminer.store.facts import shown as shown_value
from adminer.store.journal import Act, active


@dataclass(frozen=True, slots=True)
class CorrectionRow:
    """Hold one row of the table `corrections`: one changed field of one act."""

    act_no: int
    acted_at: datetime
    who: str
    act: str
    clipping_id: str
    box: Box | None
    field: str
    old: str | None
    new: str | None
    offer_id: str | None
    found: bool


def correction_table_row(row: CorrectionRow) -> dict[str, Any]:
    """Return a row of the table `corrections` by column name."""
    box = row.box
    place = {"x": box.x, "y": box.y, "w": box.w, "h": box.h} if box else {}
    names = ("act_no", "acted_at", "who", "act", "clipping_id", "field", "old", "new", "offer_id", "found")
    return {**{name: getattr(row, name) for name in names}, **place}


def same_advert_rows(acts: Iterable[Act]) -> list[dict[str, Any]]:
    """Return the rows of the table `said_same`: pairs of clippings that persons say show one advert."""
    rows = []
    for act in active(acts):
        if act.act == "same_advert" and act.new.get("same_advert") not in (None, act.clipping_id):
            # one order for both ways of saying it, so that of a pair only one is counted
            first, second = sorted((act.clipping_id, str(act.new["same_advert"])))
            rows.append({"clipping_id": second, "other_id": first, "act_no": act.act_no})
    return rows


def correction_rows(act: Act, fact_id: str | None, *, found: bool) -> list[CorrectionRow]:
    """Return a row for every field an act changed; `fact_id` is what it was matched with, None where nothing was."""
    at = datetime.fromisoformat(act.at.replace("Z", "+00:00")).replace(tzinfo=None)
    names = sorted({*act.old, *act.new}) if act.act != "confirm" else ["status"]
    return [
        CorrectionRow(
            act_no=act.act_no,
            acted_at=at,
            who=act.who,
            act=act.act,
            clipping_id=act.clipping_id,
            box=act.box,
            field=name,
            old=shown_value(act.old.get(name)),
            new="confirmed" if act.act == "confirm" else shown_value(act.new.get(name)),
            offer_id=fact_id,
            found=found,
        )
        for name in names
    ]
