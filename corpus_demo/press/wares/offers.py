"""Sets one offer as the habits of its printer want it."""

from __future__ import annotations

from html import escape
from random import Random

from .. import pictures
from ..sheet import Sheet
from ..styles.parts import LEADERS, unit_words
from .copybook import Ware
from .habits import Habits

IN_LINE = 1.25  # em of body type: a price no larger stands in a line of words
FRAMES = {
    "none": "",
    "box": "border:.12em solid #111;padding:.4em;",
    "over": "border-top:.12em solid #111;padding:.2em 0;",
}
SHAPES = ("plate", "cup", "setting", "glass", "wide", "row")


def offer(sheet: Sheet, ware: Ware, habits: Habits, rng: Random) -> str:
    """Set an offer."""
    name, told, price = _name(ware, habits), _told(ware, habits), _prices(sheet, ware, habits)
    lines = f"<div>{name}</div>" + (f'<div style="font-size:{habits.detail}em">{told}</div>' if told else "")
    match habits.arrangement:
        case "run_in":
            body = f'<p class="copy">{name}{habits.between + told if told else ""}{rng.choice((", ", ". ", " ", " . . . . "))}{price}</p>'
        case "leading":
            body = f'<p class="copy">{price}{rng.choice((" for ", " — ", ". "))}{name}{habits.between + told if told else ""}</p>'
        case "row":
            leader = sheet.look.leader
            under = f'<div class="fine">{told}</div>' if told else ""
            body = f'<div class="row {leader}"><span class="it">{name}</span><span class="ld">{LEADERS[leader]}</span><span>{price}</span></div>{under}'
        case "over":
            body = f"{lines}<div>{price}</div>"
        case "under":
            body = f"<div>{price}</div>{lines}"
        case "left":
            body = _beside(f'<div style="flex:none">{price}</div><div>{lines}</div>')
        case "right":
            body = _beside(f'<div style="flex:1">{lines}</div><div style="flex:none">{price}</div>')
        case "ends":
            body = f'<div>{name}</div><p class="copy" style="font-size:{habits.detail}em">{told + ". " if told else ""}{price}</p>'
        case "caption":
            body = (
                f'{_picture(sheet, rng)}<div>{name} {price}</div><div style="font-size:{habits.detail}em">{told}</div>'
            )
        case "table":
            return f'<tr><td>{name}{habits.between + told if told else ""}</td><td class="n">{price}</td></tr>'
    picture = _picture(sheet, rng) if rng.random() < habits.pictures and habits.arrangement != "caption" else ""
    frame = FRAMES[habits.frame]
    return f'<div style="{frame}text-align:{habits.align};margin-bottom:{habits.loose}em">{picture}{body}</div>'


def _beside(parts: str) -> str:
    return f'<div style="display:flex;gap:.6em;align-items:center">{parts}</div>'


def _picture(sheet: Sheet, rng: Random) -> str:
    drawn = pictures.table("plain", rng.randint(0, 9999), shape=rng.choice(SHAPES))
    return f'<div style="width:{rng.randint(40, 85)}%;margin:.2em auto">{drawn}</div>'


def _name(ware: Ware, habits: Habits) -> str:
    text = ware.item.text
    words = {"as is": text, "capitals": text.upper(), "words": " ".join(w[:1].upper() + w[1:] for w in text.split())}
    weight = "font-weight:700;" if habits.bold else ""
    return f'<span style="{weight}font-size:{habits.name}em;line-height:1.05">{escape(words[habits.case])}</span>'


def _told(ware: Ware, habits: Habits) -> str:
    text = (", " if len(ware.details) < 4 else "; ").join(ware.details)
    opens = habits.between == ". " or habits.arrangement in ("over", "under", "ends", "left", "right")
    return escape(text[:1].upper() + text[1:] if opens else text)


def _prices(sheet: Sheet, ware: Ware, habits: Habits) -> str:
    """Set the price with the words that lead to it, and the former price before or behind it; or a price a size."""
    lead, *others = ware.item.tags
    small = habits.price <= IN_LINE
    told = f'<span style="font-size:{habits.detail}em">'
    weight = 700 if habits.bold else 400
    wrap = f'<span class="{"in" if small else "big"}" style="font-size:{habits.price}em;font-weight:{weight}">'
    if lead.label:
        each = (
            f"{told}{sheet.label(t)}</span> {wrap}{sheet.price(t, ware.item, small=small)}</span>"
            for t in (lead, *others)
        )
        return "; ".join(each)
    before = f"{told}{escape(ware.before)}</span> " if ware.before else ""
    unit = f" {told}{unit_words(lead)}</span>" if lead.unit else ""
    mine = f"{before}{wrap}{sheet.price(lead, ware.item, small=small)}</span>{unit}"
    was = " ".join(
        f'<span class="fine">{sheet.label(tag)} {sheet.price(tag, ware.item, small=True)}</span>' for tag in others
    )
    return f"{was} {mine}" if was and habits.former_first else f"{mine} {was}".strip()
