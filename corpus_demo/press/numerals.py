"""Sets a price in the forms of the period: raised cents with and without a rule, cent signs, multiples, fractions."""

from __future__ import annotations

from decimal import Decimal

from adminer.records import PriceForm

from .facts import Tag
from .looks import Look

HALVES = {Decimal("0.5"): ("1", "2"), Decimal("0.25"): ("1", "4"), Decimal("0.75"): ("3", "4")}


def pick_form(tag: Tag, look: Look, *, small: bool) -> PriceForm:
    """Choose the form a compositor of this look gives a price; small prices stand in rows and running text."""
    cents = tag.amount * 100
    if tag.quantity > 1:
        return "multiple"
    if cents != cents.to_integral_value():
        return "fraction"
    if tag.amount < 1:
        if small:
            return look.small_cents
        return look.big_cents
    if tag.amount == tag.amount.to_integral_value() and tag.role in ("down_payment", "instalment", "up_to"):
        return "dollars_whole"
    return look.small_dollars if small else look.big_dollars


def _fraction(part: Decimal) -> str:
    above, below = HALVES[part]
    return f'<span class="fr"><sup>{above}</sup>&frasl;<sub>{below}</sub></span>'


def _split(amount: Decimal) -> tuple[str, str]:
    whole, _, cents = f"{amount:.2f}".partition(".")
    return whole, cents


def as_printed(tag: Tag, form: PriceForm, look: Look) -> str:
    """Write a price as a transcriber would, raised cents set off by a space."""
    whole, cents = _split(tag.amount)
    sign = look.cent_sign
    count = int(tag.amount * 100)
    match form:
        case "multiple":
            amount = _short(tag.amount, sign)
            return f"{tag.quantity}/{amount}" if look.slash else f"{tag.quantity} for {amount}"
        case "fraction":
            half = {Decimal("0.5"): "½", Decimal("0.25"): "¼", Decimal("0.75"): "¾"}[tag.amount * 100 - count]
            return f"{count}{half}{sign}"
        case "cents_sign" | "raised_cent_sign":
            return f"{count}{sign}"
        case "raised_cents":
            return f"${whole} {cents}"
        case "raised_cents_bare":
            return f"{whole} {cents}"
        case "dollars_whole":
            return f"${whole}"
        case "bare":
            return f"{whole}.{cents}" if tag.amount >= 1 else str(count)
        case _:
            return f"${whole}.{cents}" if tag.amount >= 1 else f"$.{cents}"


def _short(amount: Decimal, sign: str) -> str:
    if amount < 1:
        return f"{int(amount * 100)}{sign}"
    return f"${int(amount)}" if amount == amount.to_integral_value() else f"${amount:.2f}"


def markup(tag: Tag, form: PriceForm, look: Look) -> str:
    """Return the markup of a price; superior figures are boxes of their own, as type is."""
    whole, cents = _split(tag.amount)
    count = int(tag.amount * 100)
    rule = " ul" if look.rule_under_cents else ""
    match form:
        case "raised_cents":
            sign = "cur up" if look.raised_dollar else "cur"
            return f'<span class="rc"><i class="{sign}">$</i><i>{whole}</i><i class="cts{rule}">{cents}</i></span>'
        case "raised_cents_bare":
            return f'<span class="rc"><i>{whole}</i><i class="cts{rule}">{cents}</i></span>'
        case "raised_cent_sign":
            return f'<span class="rc"><i>{count}</i><i class="cts sg">{look.cent_sign}</i></span>'
        case "fraction":
            return f"{count}{_fraction(tag.amount * 100 - count)}{look.cent_sign}"
        case "multiple" if not look.slash and look.stack:
            return f'<span class="stk"><i class="for">{tag.quantity} for</i> <i>{_short(tag.amount, look.cent_sign)}</i></span>'
        case "multiple" if not look.slash:
            return f'{tag.quantity} <span class="for">for</span> {_short(tag.amount, look.cent_sign)}'
        case _:
            return as_printed(tag, form, look)
