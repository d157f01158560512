"""Marks every fact of an advert in the page's markup, so that the browser can say where it was printed."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from html import escape
from typing import Any

from adminer.records import PriceForm

from .facts import AdvertSpec, Item, SetOf, Tag, Term, When
from .looks import Look
from .numerals import as_printed, markup, pick_form

Row = dict[str, Any]
# Heads and kickers that are conditions by what they say.
SAYS = (
    (re.compile(r"\bcard holders\b|\bpunch card$", re.IGNORECASE), "cardholder"),
    (re.compile(r"\bweek (?:\d+ )?of \d+", re.IGNORECASE), "schedule"),
)


@dataclass(slots=True)
class Sheet:
    """Collect the facts of one sheet while its markup is written."""

    look: Look
    measure: float  # width of the sheet in ems of body type
    facts: dict[str, Row] = field(default_factory=dict)  # fact id -> truth fields without box
    advert: int = -1
    last: str = ""  # the fact marked last
    _count: dict[str, int] = field(default_factory=dict)

    def _mark(self, kind: str, row: Row, inner: str, cls: str = "") -> str:
        number = self._count.get(kind, 0)
        self._count[kind] = number + 1
        self.last = f"{kind}{number}"
        fact = self.last
        self.facts[fact] = {**row, "_advert": self.advert}
        return f'<span data-f="{fact}" class="{cls}">{inner}</span>' if cls else f'<span data-f="{fact}">{inner}</span>'

    def open_advert(self, spec: AdvertSpec) -> str:
        """Begin an advert; the returned attributes belong on its outer element."""
        self.advert += 1
        fact = f"a{self.advert}"
        valid = {"from": str(spec.valid[0]), "to": str(spec.valid[1])} if spec.valid else None
        self.facts[fact] = {
            "retailer": spec.retailer_text,
            "retailer_id": spec.retailer,
            "city": spec.town,
            "valid": valid,
            "_advert": self.advert,
        }
        return f'data-f="{fact}"'

    def price(self, tag: Tag, item: Item, form: PriceForm | None = None, *, small: bool = False) -> str:
        """Set one price; `small` says that the price stands in running text or a row."""
        form = form or tag.form or pick_form(tag, self.look, small=small)
        row = {
            "text_as_printed": as_printed(tag, form, self.look),
            "amount": float(tag.amount),
            "amount_exact": str(tag.amount),
            "currency": "USD",
            "item_text": tag.item or f"{item.text} {item.size}".strip(),
            "kind": tag.role,
            "condition": tag.condition,
            "condition_text": tag.label or None,
            "per_quantity": tag.quantity,
            "per_unit": tag.unit,
            "form": form,
            "line_id": item.line,
            "piece": item.piece or None,
        }
        return self._mark("p", row, markup(tag, form, self.look), "pr")

    def line(self, text: str | None, line_id: str | None) -> str:
        """Set the name of a line."""
        if not text or not line_id:
            return ""
        return self._mark("l", {"text": text, "line_id": line_id}, escape(text), "ln")

    def date(self, when: When | None, kind: str = "validity") -> str:
        """Set a printed date."""
        return self._mark("d", {"text": when.text, "edtf": when.edtf, "kind": kind}, escape(when.text)) if when else ""

    def term(self, term: Term) -> str:
        """Set a printed condition; a notice of the day binds nobody and is plain text."""
        if term.kind == "notice":
            return self.text(term.text)
        return self._mark("c", {"kind": term.kind, "text": term.text, "value": term.value}, escape(term.text))

    def label(self, tag: Tag) -> str:
        """Set the words that say for whom a price holds."""
        if tag.condition == "everyone":
            return f'<span class="lab">{escape(tag.label)}</span>' if tag.label else ""
        return self._mark("c", {"kind": tag.condition, "text": tag.label, "value": None}, escape(tag.label), "lab")

    def text(self, words: str) -> str:
        """Set a line of type that also serves as a transcript line."""
        for pattern, kind in SAYS:
            if pattern.search(words):
                return self._mark("c", {"kind": kind, "text": words, "value": None}, escape(words))
        return self._mark("t", {"text": words}, escape(words))

    def item_text(self, item: Item) -> str:
        """Set what an item is called; the name of its line among the words ("Tansy Morn dinner plate") is one more fact."""
        name = (item.line or "").replace("_", " ").title()
        whole = self.text(item.text)
        if not name or item.line_text or name not in item.text:
            return whole
        fact = self._mark("l", {"text": name, "line_id": item.line}, escape(name))
        return whole.replace(escape(name), fact, 1)

    def set_words(self, composition: SetOf, item: Item) -> str:
        """Set the words of a set: the list of its pieces, or what the maker calls it."""
        words = composition.words or ", ".join(text for _, _, text in composition.listed)
        row = {
            "text": words,
            "stated": composition.stated,
            "listed": [[piece, count] for piece, count, _ in composition.listed],
            "line": item.line,
        }
        return self._mark("s", row, escape(words))

    def retailer(self, text: str, cls: str = "logo") -> str:
        """Set the signature of a shop."""
        return self._mark("r", {"text": text}, escape(text), cls)
