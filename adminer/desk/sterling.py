"""Pounds, shillings and pence as people write and read them; the records keep pounds as a decimal."""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Final

CURRENCIES: Final = ("GBP", "AUP")  # 20 shillings of 12 pence to the pound
_PENCE: Final = 240
_QUARTERS: Final = {"": 0, "¼": 1, "½": 2, "¾": 3}
_TYPED: Final = re.compile(
    r"^(?:£ ?(?P<pounds>\d{1,5}))? ?(?:(?P<shillings>\d{1,3}) ?(?:/|s\b\.?))? ?"
    r"(?:-|(?P<pence>\d{1,3})? ?(?P<part>[¼½¾])? ?(?:d\b\.?)?)?$"
)
_SIGN: Final = re.compile(r"[£/sd]")
_EXACT: Final = Decimal("0.000001")  # of a pound, as the records keep it; a farthing is more than a thousandth


def pounds_of(text: str) -> Decimal | None:
    """Return the pounds of what a person typed: 1/6, 9/-, 2s. 3d., 4½d, £1 2s. 6d.; None where it is no such sum."""
    typed = " ".join(text.lower().split())
    found = _TYPED.match(typed)
    if not found or not _SIGN.search(typed) or not re.search(r"[\d¼½¾]", typed):
        return None
    pounds, shillings, pence = (int(found[name] or 0) for name in ("pounds", "shillings", "pence"))
    farthings = ((pounds * 20 + shillings) * 12 + pence) * 4 + _QUARTERS[found["part"] or ""]
    return (Decimal(farthings) / (4 * _PENCE)).quantize(_EXACT)


def sterling_words(value: Decimal) -> str | None:
    """Return a sum in pounds as people write it: £1 2s. 6d., 9s., 4½d.; None where it is no whole farthings."""
    farthings = round(value * _PENCE * 4)
    if abs(Decimal(farthings) / (4 * _PENCE) - value) > _EXACT:
        return None
    whole, quarters = divmod(farthings, 4)
    shillings, pence = divmod(whole, 12)
    pounds, shillings = divmod(shillings, 20)
    part = next(sign for sign, count in _QUARTERS.items() if count == quarters)
    words = [f"£{pounds}"] if pounds else []
    words += [f"{shillings}s."] if shillings else []
    words += [f"{pence or ''}{part}d."] if pence or part else []
    return " ".join(words) or "0d."
