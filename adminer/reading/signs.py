"""Give back the dollar and cent signs that were read as something like them, from what the network half saw."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from adminer.reading.placed import PlacedWord

HALF_SEEN = 0.01  # probability of the sign at its place; set by eye on a dozen misread prices of the demo
CENTS = re.compile(r"^(?P<head>[^\w$£]*(?:\d+[/-])?)(?P<figures>\d{1,2}[½¼¾]?)(?P<sign>[¢c])(?P<rest>[^\w]*)$")
LOOKS_LIKE_CENTS = re.compile(
    r"^(?P<head>[^\w$£]*(?:\d+[/-])?)(?P<figures>\d{1,2}[½¼¾]?)(?P<sign>[eéèëtf©°<*$CGoO0-9¢])(?P<rest>[.,;:!)\"”]*)$"
)
STERLING = re.compile(r"^(?:\d{1,3}/[-–—]|\d{1,2}½?d)\W*$")  # "30/-", "9½d."
# A "1" before the dash is the stroke rather than a figure whose stroke was lost: "31-" is 3/-, not 31/-.
LIKE_SHILLINGS = re.compile(r"^(\d{1,2}?)(?:(?:[1lI|)\]\[jJ]|(?<=\d[02-9]))[-–—]|/)(?=[^\w\-–—]*$)")
# Pence go no further than 11½, then come shillings: what stands above is a ½ taken for a figure.
PENCE_WITH_HALF = re.compile(r"^(?P<pence>[2-9]|1[01])[1247](?=d[.,;]?$)")
SHILLINGS_OF = 2  # on a page
NEVER_A_FIGURE = "eéèë©°<$"  # after figures and before a space these stand for nothing but a cent sign
HALF_TWICE = re.compile(r"(?<=\d)½[/⁄]?(?:[2z](?=[¢cCdeE])|z$)")
HALF_SPELLED = re.compile(r"^(\d\d)['’]?1/[2z][¢cCeE](?=\W*$)")
HALF_WITH_ONE = re.compile(r"^(\d\d)1½(?=[¢cC])")
HALF_AS_PERCENT = re.compile(r"(?<=\d)%(?=[¢c])")
SLASHED_SIGN = re.compile(r"^(?P<number>(?:[2-9]|1\d)/)[Ss§](?=\d)")
SIGN_TWICE = re.compile(r"(?<=\$)[Ss§](?=\d)")
CENTS_TWICE = re.compile(r"(?<=\d[c¢])[ce¢](?=\W*$)")
POINT_SIGN = re.compile(r"^[Ss§](?=\.\d\d\W*$)")
GRAIN_BEFORE = re.compile(r"^[.,·'](?=\d{0,3}\.\d\d[.,·']?$)")
LETTER_NOUGHT = re.compile(r"(?<=\d)[oO](?=[¢ceé]\W*$)")
LETTER_TEN = re.compile(r"^(?P<head>[^\w$£]*)[ilIt][oO](?=[¢c]\W*$)")
LETTER_EIGHT = re.compile(r"(?<=\d)ß|ß(?=\d)")
# Old-style figures are taken for the small letters they stand as high as; a dollar sign for the letter it is made of.
LETTER_AMOUNT = re.compile(r"^(?P<sign>[$S§])(?P<figures>[\dilIroOzgq]{1,3}\.[\dilIroOzgq]{2})(?=\W*$)")
LETTERS_AS_FIGURES = str.maketrans("ilIroOzgq", "111100299")
LETTER_TWO = re.compile(r"^[zZ](?=[¢c]\W*$)")
LOOKS_LIKE_DOLLARS = re.compile(
    r"^(?P<head>[(\"“]*)(?P<sign>[Ss§8BE35])(?P<figures>\d{1,3}(?:,\d{3})*(?:\.\d\d)?)(?P<rest>[^\w]*)$"
)


def restore_signs(words: Sequence[PlacedWord]) -> list[PlacedWord]:
    """Return the words with misread "$", "¢" and "c" put right where the network had an inkling of them.

    Figures are never changed: only a character that the network itself held to be possibly a sign becomes one.
    """
    style = _cent_style(words)
    return [_dollars(_cents(_slips(word), style)) for word in _shillings(words)]


def in_sterling(words: Sequence[PlacedWord]) -> bool:
    """Say whether a page has prices in shillings and pence: one alone may be the end of a broken number."""
    return sum(bool(STERLING.match(word.text) or LIKE_SHILLINGS.match(word.text)) for word in words) >= SHILLINGS_OF


def _shillings(words: Sequence[PlacedWord]) -> list[PlacedWord]:
    """Put a slash before the dash of shillings where it was read as "1", ")" or not at all, on a page that has more.

    Among pence and shillings, "91d" is 9½d: nobody prints ninety-one pence.
    """
    if not in_sterling(words):
        return list(words)
    return [
        _retexted(word, PENCE_WITH_HALF.sub(r"\g<pence>½", LIKE_SHILLINGS.sub(r"\1/-", word.text))) for word in words
    ]


def _retexted(word: PlacedWord, text: str) -> PlacedWord:
    return word if text == word.text else replace(word, text=text)


def _slips(word: PlacedWord) -> PlacedWord:
    """Put right what can only be figures before a cent sign: "3oc", "zc", halves as "17½/2c", "171/2c", "17%c"."""
    text = HALF_WITH_ONE.sub(r"\1½", HALF_AS_PERCENT.sub("½", HALF_TWICE.sub("½", word.text)))
    text = SIGN_TWICE.sub("", SLASHED_SIGN.sub(r"\g<number>$", text))
    text = CENTS_TWICE.sub("", text)
    text = GRAIN_BEFORE.sub("", POINT_SIGN.sub("$", HALF_SPELLED.sub(r"\1½¢", text)))
    text = LETTER_TWO.sub("2", LETTER_NOUGHT.sub("0", LETTER_EIGHT.sub("8", text)))
    text = LETTER_AMOUNT.sub(_amount, LETTER_TEN.sub(r"\g<head>10", text))
    return _retexted(word, text)


def _amount(found: re.Match[str]) -> str:
    """Return an amount with figures for its letters; without a dollar sign some must be figures, or two noughts."""
    figures = found["figures"]
    if found["sign"] != "$" and not (any(c.isdigit() for c in figures) or figures.lower().endswith("oo")):
        return found[0]
    return f"${figures.translate(LETTERS_AS_FIGURES)}"


def _cent_style(words: Sequence[PlacedWord]) -> str:
    """Return the cent sign that this page uses, by what was read without doubt."""
    votes = {"¢": 0.0, "c": 0.0}
    for word in words:
        found = CENTS.match(word.text)
        if found:
            votes[found["sign"]] += word.confidence
    return "c" if votes["c"] > votes["¢"] else "¢"


def _cents(word: PlacedWord, style: str) -> PlacedWord:
    found = LOOKS_LIKE_CENTS.match(word.text)
    if word.form or not found or found["sign"] in "¢c":
        return word
    sign = found["sign"]
    seen = word.cent >= HALF_SEEN
    if not (seen or sign in NEVER_A_FIGURE or (sign in "tf" and len(found["figures"]) == 2)):
        return word
    text = f"{found['head']}{found['figures']}{style}{found['rest']}"
    return replace(word, text=text, confidence=min(word.confidence, 0.9))


def _dollars(word: PlacedWord) -> PlacedWord:
    found = LOOKS_LIKE_DOLLARS.match(word.text)
    if word.form or not found:
        return word
    sign, figures = found["sign"], found["figures"]
    enough = HALF_SEEN if "." in figures or sign not in "8BE35" else 0.3
    seen = word.dollar >= enough and not found["head"] and not found["rest"].startswith("/")
    if not (seen or (sign in "Ss§" and (len(figures) > 1 or word.dollar > HALF_SEEN / 10))):
        return word
    text = f"{found['head']}${figures}{found['rest']}"
    return replace(word, text=text, confidence=min(word.confidence, 0.9))
