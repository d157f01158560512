"""Templates to pages: escaping always on, hostile characters written out, one set of words for all pages."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date, datetime
from decimal import Decimal
from typing import Any, Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from starlette.requests import Request
from starlette.responses import HTMLResponse

from adminer.desk.desk import Desk
from adminer.desk.plain import finalize
from adminer.desk.sterling import CURRENCIES as STERLING
from adminer.desk.sterling import sterling_words

SECTIONS: Final = (
    ("/in", "In"),
    ("/check", "Checking"),
    ("/names", "Names"),
    ("/ask", "Asking"),
    ("/look", "Looking"),
    ("/journal", "Journal"),
)
_CURRENCY_WORDS: Final = {"EGP-piastre": "piastres", "GBP": "pounds", "AUP": "pounds"}
STATUS_WORDS: Final = {"read": "to check", "confirmed": "confirmed", "corrected": "corrected", "rejected": "rejected"}
CONDITION_WORDS: Final = {
    "everyone": "for everyone",
    "cardholder": "with the card",
    "without_card": "without the card",
    "coupon": "with coupon",
    "with_purchase": "with purchase",
    "stamps": "with stamps",
    "former": "former price",
    "comparison": "comparison price",
}


def money(amount: Decimal | str, currency: str = "USD") -> str:
    """Return an amount as people write it: 69¢, $1.39, 12½¢, 1s. 6d., 4 piastres; other currencies with their code."""
    value = Decimal(amount)
    words = sterling_words(value) if currency in STERLING else None
    if words:
        return words
    if currency != "USD":
        return f"{value.normalize():f} {_CURRENCY_WORDS.get(currency, currency)}"
    if value < 1:
        whole, half = divmod(value * 100, 1)
        if half in (0, Decimal("0.5")):
            return f"{int(whole) or ''}½¢" if half else f"{int(whole)}¢"
    return f"${value:,.2f}"


def typed_amount(amount: Decimal | str, currency: str) -> str:
    """Return an amount as a form shows it and takes it back."""
    if amount == "" or currency not in STERLING:
        return str(amount)
    return sterling_words(Decimal(amount)) or str(amount)


def price_words(price: Any) -> str:
    """Return a price with its quantity and unit, for instance "2 for 25¢" or "$1.39 a doz"."""
    words = money(price.amount, price.currency)
    if 0 < price.per_quantity < 1 and price.per_unit:
        return f"{words} for {price.per_quantity.normalize():f} {price.per_unit}"
    if price.per_quantity != 1:
        words = f"{price.per_quantity.normalize():f} for {words}"
    if price.per_unit:
        words += f" a {price.per_unit}" if price.per_unit != "each" else " each"
    return words


def words_of(name: str | None) -> str:
    """Return an id of the vocabulary as words: dinner_plate as dinner plate."""
    return re.sub(r"[_:]+", " ", name or "")


def edtf_words(edtf: str | None, before_one: str = "") -> str:
    """Return an EDTF date or set as a person says it: between …, or …; `before_one` goes before each single date."""
    text = edtf or ""
    if not (text.startswith("[") and text.endswith("]")):
        return f"{before_one}{text}" if text else ""
    parts = []
    for part in text[1:-1].split(","):
        first, dots, last = part.partition("..")
        parts.append(f"between {first} and {last}" if dots and first and last else f"{before_one}{part}")
    return " or ".join(parts)


def cell(value: Any) -> str:
    """Return a value of an answer as a table cell shows it."""
    if value is None:
        return "–"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:.3g}" if abs(value) < 1000 else f"{value:,.0f}"
    if isinstance(value, datetime):
        return value.strftime("%Y-%m-%d %H:%M")
    if isinstance(value, date | Decimal | int):
        return str(value)
    return str(value)


def make_environment() -> Environment:
    """Return the environment of all templates."""
    environment = Environment(
        loader=PackageLoader("adminer.desk"),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=finalize,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.globals.update(
        sections=SECTIONS,
        status_words=STATUS_WORDS,
        condition_words=CONDITION_WORDS,
        money=money,
        price_words=price_words,
        typed_amount=typed_amount,
        words_of=words_of,
        edtf_words=edtf_words,
        cell=cell,
    )
    environment.tests["day"] = lambda value: isinstance(value, date)
    return environment


ENVIRONMENT: Final = make_environment()


def page(request: Request, desk: Desk, template: str, context: Mapping[str, Any], *, status: int = 200) -> HTMLResponse:
    """Return a page of the desk; `here` in the context names its section."""
    common = {"folder_title": desk.folder.settings.title, "path": request.url.path, "who": desk.who, "here": ""}
    html = ENVIRONMENT.get_template(template).render({**common, **context})
    # what is still a lone surrogate (a file name of another system) must not end the page
    return HTMLResponse(html.encode("utf-8", "replace").decode(), status_code=status)
