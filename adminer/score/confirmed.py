"""What a person confirmed or corrected at the desk as the truth: how good the reading of this very file is."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from pathlib import Path

from adminer.intake.identity import clipping_id_of, digest_of
from adminer.records import Clipping, Offer, PageReading, ParsedPage
from adminer.score.truth import TrueName, TruePage, TruePrice
from adminer.store.journal import Act
from adminer.store.overlay import overlay_page
from adminer.store.readings import SUFFIX, load_reading

_JUDGED = ("confirmed", "corrected")


def truth_of_confirmed(pages: Iterable[ParsedPage], acts: Sequence[Act]) -> tuple[TruePage, ...]:
    """Return the truth that the journal states of pages as they were read, without those nobody has looked at.

    A page on which every offer was judged is complete: whatever else the reading finds there is wrong. On the
    others only what was judged is asked for, so that precision is not measured there.
    """
    by_clipping: dict[str, list[Act]] = defaultdict(list)
    for act in acts:
        by_clipping[act.clipping_id].append(act)
    truth = []
    for page in pages:
        laid = overlay_page(page, by_clipping.get(page.clipping.clipping_id, ())).page
        offers = [offer for advert in laid.adverts for offer in advert.offers]
        sure = [offer for offer in offers if offer.status in _JUDGED]
        if not any(offer.status != "read" for offer in offers):
            continue
        complete = all(offer.status != "read" for offer in offers)
        truth.append(
            TruePage(
                file=page.clipping.file,
                leaf=page.clipping.leaf,
                prices=tuple(price for offer in sure for price in _true_prices(offer)),
                prices_complete=complete,
                lines=tuple(_true_names(sure)) if complete else None,
            )
        )
    return tuple(truth)


def _true_prices(offer: Offer) -> list[TruePrice]:
    return [
        TruePrice(
            text_as_printed=price.text,
            amount=price.amount,
            currency=price.currency,
            item_text=offer.item,
            box=price.box,
            condition=price.condition,
            form=price.form,
        )
        for price in offer.prices
    ]


def _true_names(offers: Iterable[Offer]) -> list[TrueName]:
    return [
        TrueName(text=offer.line.text, line_id=offer.line.entry_id, box=offer.line.box)
        for offer in offers
        if offer.line and offer.line.entry_id
    ]


def kept_readings(readings: Path, scans: Path) -> list[tuple[Clipping, PageReading]]:
    """Take the newest kept reading of every page whose scan is still there, in the order of the files."""
    newest: dict[str, Path] = {}
    for path in sorted(readings.glob(f"*{SUFFIX}"), key=lambda p: p.stat().st_mtime):
        newest[path.name.split(".")[0]] = path
    files = {
        clipping_id_of(digest_of(path), 1): path.relative_to(scans).as_posix()
        for path in sorted(scans.rglob("*"), reverse=True)
        if path.is_file()
    }
    pages = []
    for clipping_id, path in newest.items():
        kept, file = load_reading(path), files.get(clipping_id.split("-")[0])
        if kept is None or kept.reading is None or file is None:
            continue
        made = kept.reading
        clipping = Clipping(clipping_id, file, kept.sha256, kept.leaf, made.width, made.height, made.recipe)
        pages.append((clipping, made))
    return sorted(pages, key=lambda page: (page[0].file, page[0].leaf))
