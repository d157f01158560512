"""Which parts of a picture are adverts: from frames, type and white space; adverts told from editorial matter."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from adminer.layout.appeal import is_signed
from adminer.layout.classified import columns_of, is_classified
from adminer.layout.column_grid import NARROW
from adminer.layout.framed import frames_of_paper, held_in, outer_frames, outside_of
from adminer.layout.framed_makers import framed_makers
from adminer.layout.mail_order import mail_order_adverts
from adminer.layout.newspaper import cut_page
from adminer.layout.notices import notices
from adminer.layout.paper import PRICE, Paper
from adminer.layout.rules import Rect, RuleWork, area_of, centre, level_rules, shared
from adminer.layout.running_head import DATELINE, running_head
from adminer.layout.scratches import scratches
from adminer.layout.type_lines import Part, TypeLine, around, usual_size
from adminer.layout.weighed import weighed_frames

LEAST_FRAMED = 0.06  # of the picture: a page of a paper gives its framed adverts at least this much together
DATED = 0.2  # of the height of the picture: the date of a paper stands over it
CROWD = 0.02  # of its width: the lines of one column are centred no further apart
ELSEWHERE = 0.06  # of its width: those of the next column are centred further off
PAGE_COLUMNS = 3  # columns of running text that make a page of a paper
FULL_HEIGHT = 0.95  # of the height of all type: a frame so high stands beside another advert, or holds the only one
LEAST_WIDTH = 0.25  # of the picture: an advert beside a framed one is at least so wide
LEAST_LINES = 5  # of an advert beside a framed one; of a column of running text
HEAD_TYPE = 1.8  # times the usual type: the name or headline of an advert, the title of a paper
LOOSE = 0.12  # of the type outside frames side by side: more, and they are panels of one advert
GRAIN = 0.05  # of the type outside a lone frame: no more than a page number or a smear
FELLOW = 0.2  # of the largest of frames side by side: less is a coupon
INSIDE = 0.8  # of a panel: it stands in an advert, whose edge was found where its type ends
FRAMED = 0.8  # how sure an advert in a frame is one; one cut out by white and rules is less so
PICTURE = 0.15  # of the width and of the height of the scan: smaller stretches stand in the type
NAME_LINES = 3  # of what is no more than the name of a firm and where it is
BODY_SIZE = 0.3  # of the usual size outside all frames: a line of running text differs by less from it
BODY_LENGTH = 8  # type sizes: and is longer
BODY_FIGURES = 0.12  # of its letters: and tells fewer figures
BODY_OUTSIDE = 0.45  # of the lines outside all frames, and
BODY_OF_ALL = 0.2  # of all lines, that must be running text
BODY_LINES = 24  # as many lines of one small size outside all frames make editorial matter


def find_adverts(work: RuleWork, lines: Sequence[TypeLine], width: int, height: int) -> list[Part]:
    """Cut a picture into adverts and editorial matter.

    A frame that no other holds is an advert where editorial columns stand beside it, or where hardly any type stands
    outside the frames; else frames are panels of one advert that takes the whole of the type.
    """
    whole: Rect = (0.0, 0.0, float(width), float(height))
    if not lines:
        return _parts_of_one(work, lines, whole)
    scratched = scratches(work.rules, lines)
    rules = [rule for rule in work.rules if rule not in scratched]
    if makers := mail_order_adverts(lines, rules, whole):
        return makers
    if page := _parts_of_paper(work, lines, rules, whole):
        return _settled(page, lines)
    return notices(lines, rules) or _parts_of_one(work, lines, whole)


def _parts_of_paper(work: RuleWork, lines: Sequence[TypeLine], rules: Sequence[Rect], whole: Rect) -> list[Part]:
    """Return the parts of a page of a paper, none of what is no such page."""
    top = running_head(lines, whole)
    if top or _is_dated(lines, whole):
        framed = frames_of_paper(work, lines, whole, top)
        outside = outside_of(lines, framed)
        columns = _editorial(outside, lines)
        rest = [line for line in outside if line not in top]
        page = bool(columns) and (_is_page(framed, columns, lines, whole) or _columns_of_text(columns, whole) > 1)
        if page or (top and _is_cut(framed, rest, whole, rules)):
            framed = weighed_frames(work, framed, lines, whole, top)
            outside = outside_of(lines, framed)
            if not top:
                return _page(framed, outside, columns, whole, rules)
            size = usual_size(columns or rest)
            rest = [line for line in outside if line not in top]
            return _under_head(top, framed, cut_page(rest, rules, whole, size) if rest else [])
    return _page_by_its_articles(work, lines, rules, whole)


def _parts_of_one(work: RuleWork, lines: Sequence[TypeLine], whole: Rect) -> list[Part]:
    """Return the one advert that most pictures hold, or the few in frames side by side that fill it."""
    outer = outer_frames(work, lines, whole)
    outside = outside_of(lines, outer)
    drawn = _pictures(work, whole)
    if not outer:
        return [Part(around([*drawn, *(line.rect for line in lines)], whole), "advert", 0.6)]
    loose = sum(area_of(line.rect) for line in outside) / max(1.0, sum(area_of(line.rect) for line in lines))
    largest = max(area_of(frame) for frame in outer)
    signed = any(is_signed(held_in(lines, frame)) for frame in outer)
    if len(outer) > 1 and signed and loose < LOOSE and all(area_of(f) > FELLOW * largest for f in outer):
        return _framed(outer)
    if len(outer) == 1 and (makers := framed_makers(outer[0], work, lines, whole)):
        return makers
    if loose < GRAIN and len(outer) == 1:
        return [Part(outer[0], "advert", 0.9)]
    if len(outer) == 1 and (beside := _neighbour(outer[0], outside, lines, whole)):
        return [Part(outer[0], "advert", 0.7), Part(beside, "advert", 0.6)]
    return [Part(around([*outer, *drawn, *(line.rect for line in outside)], whole), "advert", 0.6)]


def _pictures(work: RuleWork, whole: Rect) -> list[Rect]:
    """Return the dark stretches that are pictures of an advert: the edge of the film is slim, or a ring."""
    shares = [min((panel[side + 2] - panel[side]) / whole[side + 2] for side in (0, 1)) for panel in work.panels]
    return [panel for panel, share in zip(work.panels, shares, strict=True) if PICTURE < share < FULL_HEIGHT]


def _settled(parts: Sequence[Part], lines: Sequence[TypeLine]) -> list[Part]:
    """Return parts without what belongs to an advert beside them: a panel in it, a name that a rule cut from it.

    A panel stands in another advert and does not say whose it is, nor do stray lines; a name says nothing else.
    """
    adverts = [part for part in parts if part.kind == "advert"]
    large = HEAD_TYPE * usual_size(lines)
    settled = list(parts)
    for part in parts:
        if part not in settled:  # it has grown around another
            continue
        held = held_in(lines, part.rect)
        others = [other for other in adverts if other is not part and other in settled]
        stray = part.kind == "editorial" or (part.kind == "advert" and not is_signed(held))
        holder = next((other for other in others if _holds(other, part)), None) if stray else None
        if holder is not None:
            settled.remove(part)
            if part.kind == "advert":
                adverts[adverts.index(holder)] = settled[settled.index(holder)] = _grown(holder, part.rect)
        elif (
            0 < len(held) <= NAME_LINES
            and (is_signed(held) or all(n.type_size > large for n in held))
            and not any(PRICE.search(n.text) for n in held)
        ):
            reach = max(n.height for n in held)
            if home := next((other for other in others if _adjoins(part.rect, other.rect, reach)), None):
                settled.remove(part)
                adverts[adverts.index(home)] = settled[settled.index(home)] = _grown(home, part.rect)
    return settled


def _grown(part: Part, rect: Rect) -> Part:
    return replace(part, rect=around([part.rect, rect], part.rect))


def _holds(outer: Part, inner: Part) -> bool:
    return area_of(outer.rect) > area_of(inner.rect) and shared(outer.rect, inner.rect) > INSIDE * area_of(inner.rect)


def _adjoins(name: Rect, advert: Rect, reach: float) -> bool:
    """Say whether a name stands right over or under an advert, within its width."""
    apart = max(name[1] - advert[3], advert[1] - name[3])
    return apart < reach and name[0] > advert[0] - reach and name[2] < advert[2] + reach


def _neighbour(frame: Rect, outside: Sequence[TypeLine], lines: Sequence[TypeLine], whole: Rect) -> Rect | None:
    """Return the advert beside a framed one whose own border was not found, None where there is none.

    The frame is as high as all the type, nothing stands over or under it, and the rest begins with a head of its own:
    a panel set into an advert stands under the advert's head.
    """
    every, rest = around([line.rect for line in lines], whole), around([line.rect for line in outside], whole)
    tall = frame[3] - frame[1] >= FULL_HEIGHT * (every[3] - every[1])
    apart = rest[0] >= frame[2] or rest[2] <= frame[0]
    if len(outside) < LEAST_LINES or not (tall and apart and rest[2] - rest[0] > LEAST_WIDTH * whole[2]):
        return None
    usual = usual_size(outside)
    head = [line for line in outside if line.rect[1] < rest[1] + (rest[3] - rest[1]) / 3]
    return rest if max(line.height for line in head) > HEAD_TYPE * usual else None


def _editorial(outside: Sequence[TypeLine], lines: Sequence[TypeLine]) -> list[TypeLine]:
    """Return the lines of running text outside all frames, none where there are too few to be columns of a paper."""
    if len(outside) < BODY_LINES:
        return []
    size = usual_size(outside)
    body = [
        line
        for line in outside
        if abs(line.height - size) < BODY_SIZE * size
        and line.rect[2] - line.rect[0] > BODY_LENGTH * size
        and sum(c.isdigit() for c in line.text) < BODY_FIGURES * max(1, len(line.text))
    ]
    mostly = len(body) > BODY_OUTSIDE * len(outside) and len(body) > BODY_OF_ALL * len(lines)
    return body if len(body) >= BODY_LINES and mostly else []


def _is_page(outer: Sequence[Rect], body: Sequence[TypeLine], lines: Sequence[TypeLine], whole: Rect) -> bool:
    """Say whether running text and frames are a page of a paper, not one long-winded advert with its coupon.

    A page has framed adverts of some size, and columns of text side by side or a dateline at its head.
    """
    if sum(area_of(frame) for frame in outer) < LEAST_FRAMED * area_of(whole):
        return False
    return _columns_of_text(body, whole) >= PAGE_COLUMNS or _is_dated(lines, whole)


def _under_head(top: Sequence[TypeLine], framed: Sequence[Rect], cut: Sequence[Part]) -> list[Part]:
    head = around([line.rect for line in top], top[0].rect)
    return [Part(head, "masthead", 0.7), *_framed(framed), *cut]


def _is_cut(outer: Sequence[Rect], rest: Sequence[TypeLine], whole: Rect, rules: Sequence[Rect]) -> bool:
    """Say whether what stands under a running head is a page of a paper though it holds little running text.

    There are columns of classified advertisements, or framed adverts and beside them an article or two that offer
    nothing; else it is one advert that takes the page.
    """
    if any(is_classified(column) for column in columns_of(rest, rules)):
        return True
    if sum(area_of(frame) for frame in outer) < LEAST_FRAMED * area_of(whole) or not rest:
        return False
    paper = Paper.of(rest, usual_size(rest), level_rules(rules))
    if not paper.has_text(rest):
        return False
    parts = cut_page(rest, rules, whole, paper.size)
    return not paper.offers(rest) or any(part.kind == "editorial" for part in parts)


def _page_by_its_articles(work: RuleWork, lines: Sequence[TypeLine], rules: Sequence[Rect], whole: Rect) -> list[Part]:
    """Return the parts of a page of a paper whose head is cut off or was not read, none of what is no such page.

    Beside framed adverts stand two articles, or a long one; where hardly anything is framed, columns of articles.
    """
    framed = frames_of_paper(work, lines, whole)
    outside = outside_of(lines, framed)
    if not outside:
        return []
    paper = Paper.of(outside, usual_size(outside), level_rules(rules))
    cut = cut_page(outside, rules, whole, paper.size)
    articles = [held_in(outside, part.rect) for part in cut if part.kind == "editorial"]
    told = [article for article in articles if paper.has_text(article) and paper.tells(article)]
    long = sum(map(len, told)) >= BODY_LINES
    if sum(map(area_of, framed)) < LEAST_FRAMED * area_of(whole):
        several = len(told) > PAGE_COLUMNS
    else:
        several = (len(told) > 1 and len(told) + len(framed) > PAGE_COLUMNS) or (long and len(framed) > 1)
    if not several:
        return []
    framed = weighed_frames(work, framed, lines, whole)
    rest = outside_of(lines, framed)
    return [*_framed(framed), *(cut_page(rest, rules, whole, paper.size) if rest else [])]


def _framed(frames: Sequence[Rect]) -> list[Part]:
    return [Part(frame, "advert", FRAMED) for frame in frames]


def _columns_of_text(body: Sequence[TypeLine], whole: Rect) -> int:
    """Count the places across the page over which lines of running text are centred, a few lines on each."""
    width = whole[2]
    narrow = [line.rect for line in body if line.rect[2] - line.rect[0] < NARROW * width]
    centres = np.array([centre(rect)[0] for rect in narrow])
    columns = 0
    while len(centres):
        crowd = np.sum(np.abs(centres[:, None] - centres[None]) < CROWD * width, axis=1)
        if crowd.max() < LEAST_LINES:
            break
        centres = centres[np.abs(centres - centres[np.argmax(crowd)]) > ELSEWHERE * width]
        columns += 1
    return columns


def _is_dated(lines: Sequence[TypeLine], whole: Rect) -> bool:
    return any(line.rect[3] < DATED * whole[3] and DATELINE.search(line.text) for line in lines)


def _page(
    outer: list[Rect],
    outside: Sequence[TypeLine],
    body: list[TypeLine],
    whole: Rect,
    rules: Sequence[Rect],
) -> list[Part]:
    """Name the parts of a newspaper page: framed adverts, the strip of title and date on top, columns of text."""
    parts = _framed(outer)
    top = min([line.rect[1] for line in body] + [frame[1] for frame in outer])
    head = [line for line in outside if line.rect[3] <= top + 0.5 * line.height]
    if head and max(line.height for line in head) > HEAD_TYPE * usual_size(body):
        parts.append(Part(around([line.rect for line in head], whole), "masthead", 0.7))
    else:
        head = []
    rest = [line for line in outside if line not in head]
    return parts + cut_page(rest, rules, whole, usual_size(body))
