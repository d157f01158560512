"""Sets whole adverts of many wares, and adverts of one thing that talk at length before they name its price."""

from __future__ import annotations

from html import escape
from random import Random

from ..facts import AdvertSpec
from ..sheet import Sheet
from ..styles.parts import signature
from .copybook import NOTES, SLOGANS, TALK, Ware, brand, trades, ware
from .habits import Habits, draw_habits
from .offers import offer

SIZED = 0.08


def bill(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set an advert of many wares in one to three departments, each alike."""
    rng = Random(f"bill {seed}")
    habits, parts = draw_habits(rng, sheet.measure), []
    for _ in range(rng.choice((1, 1, 2, 3))):
        trade = rng.choice(sorted(trades()))
        count = rng.choice((1, 2, 3, 4, 5, 6, 7, 9))
        wares = [ware(rng, trade, told=habits.told, former=habits.former, sized=SIZED) for _ in range(count)]
        head = _head(rng.choice((*SLOGANS, trade.title(), "")), rng.choice((1.5, 2, 2.6)))
        parts.append(head + _offers(sheet, wares, habits, rng))
        if rng.random() < 0.3:
            habits = draw_habits(rng, sheet.measure)
    slogan, talk = _head(rng.choice(SLOGANS), rng.choice((2.4, 3, 4))), _talk(rng, 1)
    opening = slogan + talk if rng.random() < 0.5 else slogan
    return opening + "".join(parts) + _notes(rng) + signature(sheet, spec, 2.4)


def single(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set an advert of one thing: a slogan, its name, talk, and its price within or after the talk."""
    rng = Random(f"single {seed}")
    one = ware(rng, rng.choice(sorted(trades())), told=0.8, former=0.0)
    price = sheet.price(one.item.tags[0], one.item, small=True)
    told = ". ".join(d[0].upper() + d[1:] for d in one.details)
    name = f'<div class="h2" style="font-size:{rng.choice((1.8, 2.4, 3))}em">{escape(one.item.text)}</div>'
    close = rng.choice(("Price", "Sent prepaid for", "At all dealers,", "Now only", "It costs you but", "Complete,"))
    within = f'<p class="copy">{_sentences(rng, 2)} {escape(told)}. {close} {price}. {_sentences(rng, 1)}</p>'
    after = f'<p class="copy">{escape(told)}. {_sentences(rng, 3)}</p><div style="text-align:center;font-size:{rng.choice((1, 1.6, 2.6))}em">{close} {price}</div>'
    head = _head(rng.choice((*SLOGANS, f"{brand(rng)} {brand(rng)}")), rng.choice((1.6, 2.6)))
    order = (head, name) if rng.random() < 0.6 else (name, head)
    return "".join(order) + _talk(rng, 2) + rng.choice((within, after)) + _notes(rng) + signature(sheet, spec, 1.8)


def prose(sheet: Sheet, spec: AdvertSpec, seed: int) -> str:
    """Set paragraphs that name several wares each with its price among the words."""
    rng = Random(f"prose {seed}")
    paragraphs = []
    for _ in range(rng.randint(2, 4)):
        trade = rng.choice(sorted(trades()))
        said = [_sentences(rng, 1)] if rng.random() < 0.6 else []
        said += [_said(sheet, ware(rng, trade, told=0.4, former=0.0), rng) for _ in range(rng.randint(2, 5))]
        opening = f"<b>{escape(trade.title())}.</b> " if rng.random() < 0.4 else ""
        paragraphs.append(f'<p class="copy">{opening}{" ".join(said)}</p>')
    return _head(rng.choice(SLOGANS), 2.4) + "".join(paragraphs) + _notes(rng) + signature(sheet, spec, 2)


def _said(sheet: Sheet, one: Ware, rng: Random) -> str:
    """Say in a sentence what a thing costs."""
    text, price = one.item.text, sheet.price(one.item.tags[0], one.item, small=True)
    name = escape(text[0].lower() + text[1:] if text.startswith("The ") or rng.random() < 0.5 else text)
    first = name[0].upper() + name[1:]
    details = escape(", ".join(one.details))
    told = f", {details}" if details else ""
    between = f"{told}," if told else ""
    forms = (
        f"{first}{between} at {price}.",
        f"{price} buys {name}{told}.",
        f"We offer {name} for {price}{told}.",
        f"A {name} like this{between} would be cheap at more than our price of {price}.",
        f"{first}, {price}.",
        f"Take home {name}; {details + ';' if details else ''} {price} is all we ask.",
    )
    return rng.choice(forms)


def _offers(sheet: Sheet, wares: list[Ware], habits: Habits, rng: Random) -> str:
    cells = []
    for one in wares:
        if rng.random() < habits.talk and habits.arrangement != "table":
            cells.append(f'<div style="text-align:{habits.align}">{_sentences(rng, 1)}</div>')
        cells.append(offer(sheet, one, habits, rng))
    if habits.arrangement == "table":
        return f"<table{' class=ruled' if habits.ruled else ''}>{''.join(cells)}</table>"
    if habits.arrangement in ("under", "left", "right", "caption", "over") and habits.across > 1:
        columns = f"grid-template-columns:repeat({habits.across},minmax(0,1fr))"
        return f'<div class="grid" style="{columns}">{"".join(f"<div>{one}</div>" for one in cells)}</div>'
    return (
        f'<div class="flow" style="column-count:{habits.across}">{"".join(f"<div>{one}</div>" for one in cells)}</div>'
    )


def _head(text: str, size: float) -> str:
    return f'<div class="h" style="font-size:{size}em">{escape(text)}</div>' if text else ""


def _talk(rng: Random, paragraphs: int) -> str:
    return "".join(f'<p class="copy">{_sentences(rng, rng.randint(1, 4))}</p>' for _ in range(paragraphs))


def _sentences(rng: Random, count: int) -> str:
    return escape(" ".join(rng.sample(TALK, count)))


def _notes(rng: Random) -> str:
    return f'<div class="fine ctr">{escape(" ".join(rng.sample(NOTES, rng.randint(1, 3))))}</div>'
