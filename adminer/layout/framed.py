"""The frames of a picture that may be adverts: what holds them, what only looks like one, what cuts one in two."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise, permutations
from typing import Final

from adminer.layout.appeal import is_advert, is_signed, is_signed_off
from adminer.layout.borders import borders, without_common
from adminer.layout.paper import PRICE, Paper, is_one_advert
from adminer.layout.parted import parted, sides_as_rules
from adminer.layout.rules import LEVEL, Rect, RuleWork, area_of, centre, level_rules, shared
from adminer.layout.scratches import lies_on, mended, scratches
from adminer.layout.type_lines import TypeLine, around, ends_of, usual_size

_LEAST_ADVERT: Final = 0.03  # of the picture: smaller frames are panels or coupons
_LEAST_OF_PAPER: Final = 0.006  # of the page of a paper: cards of a barber, a theatre
_EDGE: Final = 0.985  # of the picture: larger is the edge of the scan
_LEAST_LINES: Final = 3  # of an advert; also those among which its head is
_TOUCHING: Final = 0.006  # of the height of the picture: frames no further apart share a rule
_STRIP: Final = 0.025  # of the height of the picture: a line of type between two rules of an advert
_APART: Final = 0.5  # type sizes of white between two borders, at least
_INSET: Final = (0.004, 0.08)  # of its own width: how far a panel set into an advert stands from the sides of its frame
_INSIDE: Final = 0.8  # of a frame: it stands in another
_MOST: Final = 0.7  # of a line or a rectangle that stands in a frame
_TOUCHED: Final = 0.05  # of a frame that another cuts: less is the width of their rules
_WITHIN: Final = 0.9  # of the smaller of two frames: one holds the other
_FEWEST_COLUMNS: Final = 2  # of a list under the head of its advert
_LISTED: Final = 0.15  # of lines that tell prices: more is a list, not an article
_SAME: Final = 0.85  # of the larger of two frames: they are edges of one border
_GUTTER: Final = 2.0  # type sizes from a column rule to its column at most
_CORNER: Final = 0.012  # of the longer side: how far a panel that heads an advert may reach from its frame
_HEADING: Final = 0.4  # of the width of a frame: the part of such a panel that no letters break


def outer_frames(work: RuleWork, lines: Sequence[TypeLine], whole: Rect) -> list[Rect]:
    """Return the frames with type in them that no other frame holds, the edge of the scan itself left out."""
    return _rejoined(outermost(frames_with_type(work, lines, whole, _EDGE * area_of(whole))), _TOUCHING * whole[3])


def frames_with_type(work: RuleWork, lines: Sequence[TypeLine], whole: Rect, most: float) -> list[Rect]:
    """Return the frames large enough for an advert of a picture, and smaller than `most` pixels, with type in them."""
    framed = [f for f in work.frames if _LEAST_ADVERT * area_of(whole) < area_of(f) < most]
    return [f for f in framed if len(held_in(lines, f)) >= _LEAST_LINES]


def frames_of_paper(
    work: RuleWork, lines: Sequence[TypeLine], whole: Rect, head: Sequence[TypeLine] = ()
) -> list[Rect]:
    """Return the frames of adverts on the page of a paper: small ones too, none that rules close around articles.

    A scratch of the film cuts no frame, and a rule of an advert's own cuts no advert. No advert holds the whole
    running `head` of the paper.
    """
    longer = max(whole[2], whole[3])
    drawn = [_with_panel(frame, work.panels, longer) for frame in work.frames]
    for border in sorted(borders(work.rules, longer), key=area_of):
        if not any(shared(border, other) > _SAME * max(area_of(border), area_of(other)) for other in drawn):
            drawn.append(border)
    size = usual_size(lines)
    paper = Paper.of(lines, size, level_rules(work.rules))
    for border in sorted(borders(work.rules, longer, leaning=True), key=area_of):
        held = held_in(lines, border)
        advert = held and paper.advertises(held) and not paper.tells(held)
        if advert and not any(_collides(border, other) for other in drawn):
            drawn.append(border)
    drawn = [frame for frame in drawn if not head or len(held_in(head, frame)) < len(head)]
    scratched = [s for s in scratches(work.rules, lines) if s[3] - s[1] > s[2] - s[0]]  # upright, as sides are
    framed = [f for f in drawn if _LEAST_OF_PAPER * area_of(whole) < area_of(f) < _EDGE * area_of(whole)]
    framed = mended(framed, scratched, _TOUCHING * whole[3])
    framed = [f for f in framed if held_in(lines, f)]
    own = without_common(framed, longer)
    common, framed = [f for f in framed if f not in own], own
    framed = chosen([f for f in framed if not _is_column(f, lines, paper, work.rules)], lines, paper)
    framed = [f for f in framed if not any(lies_on(f, side, s) for side in (0, 2) for s in scratched)]
    framed = _whole_adverts(_rejoined(framed, _TOUCHING * whole[3]), lines, paper, _STRIP * whole[3])
    # the sides of adverts with borders of their own may run on into each other
    cells = [f for f in framed if _is_cell(f, paper, work.rules) and not any(within(f, outer) for outer in common)]
    headed = [f for f in framed if f not in cells or _is_named(held_in(lines, f), paper)]
    filled = [(f, held_in(lines, f)) for f in headed]
    adverts = [(f, held) for f, held in filled if _is_framed_advert(f, held, paper, work.rules)]
    through = sides_as_rules(work)
    found = [part for f, held in adverts for part in parted(f, held, through)]
    return [*found, *_dark_adverts(work.panels, found, lines, paper)]


def _dark_adverts(panels: Sequence[Rect], found: Sequence[Rect], lines: Sequence[TypeLine], paper: Paper) -> list[Rect]:
    """Return the dark panels in no frame that are whole adverts set in white: a head, text, and whose it is."""
    alone = [(p, held_in(lines, p)) for p in panels if not any(shared(p, f) for f in found)]
    return [
        panel
        for panel, held in alone
        if len(held) > _LEAST_LINES
        and paper.is_large(min(held, key=lambda n: n.rect[1]))
        and is_signed(held)
        and is_advert(held, paper)
    ]


def _is_framed_advert(frame: Rect, held: Sequence[TypeLine], paper: Paper, rules: Sequence[Rect]) -> bool:
    """Say whether a frame holds an advert, if only a card: a head, or a firm alone, in a border of its own, no text."""
    card = not _is_cell(frame, paper, rules) and not paper.has_text(held) and any(map(paper.is_large, held))
    if len(held) < _LEAST_LINES:
        return card and len(held) > 1 and is_signed(held)
    return card or is_advert(held, paper) or is_signed_off(held, paper)


def _collides(border: Rect, other: Rect) -> bool:
    """Say whether a border is another or cuts it in two."""
    common = shared(border, other)
    return common > _SAME * max(area_of(border), area_of(other)) or _TOUCHED * area_of(other) < common < _WITHIN * min(
        area_of(border), area_of(other)
    )


def chosen(frames: Sequence[Rect], lines: Sequence[TypeLine], paper: Paper) -> list[Rect]:
    """Return the frames that are adverts: of those that hold others either the frame or what it holds.

    A frame around adverts has articles between them or nothing; the frame of an advert has its head outside its panels.
    """
    found: list[Rect] = []
    for outer in outermost(frames):
        inner = [f for f in frames if f is not outer and shared(f, outer) > _INSIDE * area_of(f)]
        parts = chosen(inner, lines, paper)
        held = held_in(lines, outer)
        loose = outside_of(held, parts)
        found += parts if parts and _are_adverts(parts, loose, held, paper) else [outer]
    return found


def _are_adverts(parts: Sequence[Rect], loose: Sequence[TypeLine], held: Sequence[TypeLine], paper: Paper) -> bool:
    panels = [held_in(held, part) for part in parts]
    if not loose and _stand_apart(parts, paper.size) and all(is_advert(panel, paper) for panel in panels):
        return True  # the rules that close around them are their own
    if not all(len(panel) >= _LEAST_LINES and _is_headed(panel, paper) for panel in panels):
        return False
    priced = sum(bool(PRICE.search(n.text)) for n in loose)
    if paper.has_text(loose) and paper.tells(loose) and priced < _LISTED * len(loose):
        return True
    # what has prices beside the panels is an advert of its own under a head, else a list of theirs
    return len(parts) > 1 and not _heads(loose, held, paper) and _is_headed(loose, paper) == bool(priced)


def _heads(loose: Sequence[TypeLine], held: Sequence[TypeLine], paper: Paper) -> bool:
    """Say whether what stands outside the panels of a frame is set to be seen and first or last in it."""
    return any(n in loose and paper.is_display(n) for n in ends_of(held, _LEAST_LINES))


def _is_column(frame: Rect, lines: Sequence[TypeLine], paper: Paper, rules: Sequence[Rect]) -> bool:
    """Say whether rules close around running text that fills the white between them: columns, not an advert.

    Between the rules of columns, which run on past it, less of it need be running text: a notice may stand under it.
    No article ends with a name set to be seen.
    """
    held = held_in(lines, frame)
    if is_signed_off(held, paper) or _is_list(held, paper):
        return False
    if paper.has_text(held) and paper.tells(held) and _is_cell(frame, paper, rules):
        return True
    if not paper.is_text(held):
        return False
    text = around([line.rect for line in held if id(line) in paper.running], frame)
    return max(text[0] - frame[0], frame[2] - text[2]) < _GUTTER * paper.size


def _is_list(lines: Sequence[TypeLine], paper: Paper) -> bool:
    """Say whether what seems running text are the rows of a list, each with its price at its end."""
    rows = [n for n in lines if id(n) in paper.running]
    prices = [centre(n.rect)[1] for n in lines if PRICE.search(n.text)]
    priced = sum(any(n.rect[1] < middle < n.rect[3] for middle in prices) for n in rows)
    return bool(rows) and priced >= _LISTED * len(rows)


def _is_cell(frame: Rect, paper: Paper, rules: Sequence[Rect]) -> bool:
    """Say whether the sides of a frame are rules between columns, which run on past it."""
    slack = _GUTTER * paper.size
    tall = [r for r in rules if r[3] - r[1] > frame[3] - frame[1] + slack and r[3] - r[1] > LEVEL * (r[2] - r[0])]
    tall = [r for r in tall if r[1] < frame[1] + slack and r[3] > frame[3] - slack]
    return all(any(abs(centre(r)[0] - frame[side]) < paper.size for r in tall) for side in (0, 2))


def _is_headed(lines: Sequence[TypeLine], paper: Paper) -> bool:
    return any(map(paper.is_display, sorted(lines, key=lambda n: n.rect[1])[:_LEAST_LINES]))


def _is_named(lines: Sequence[TypeLine], paper: Paper) -> bool:
    """Say whether the first or last lines of an advert are set to be seen: its head, its firm."""
    return any(map(paper.is_display, ends_of(lines, _LEAST_LINES)))


def outermost(frames: Sequence[Rect]) -> list[Rect]:
    """Return the frames that no other holds, the largest first."""
    outer: list[Rect] = []
    for frame in sorted(frames, key=area_of, reverse=True):
        if not any(shared(frame, other) > _INSIDE * area_of(frame) for other in outer):
            outer.append(frame)
    return outer


def _with_panel(frame: Rect, panels: Sequence[Rect], longer: float) -> Rect:
    """Return a frame with the dark panel right over it, in which the head of an advert is set in white.

    Of the panel at least the stretch beside the letters is found.
    """
    slack = _CORNER * longer
    for panel in panels:
        beyond = max(frame[0] - panel[0], panel[2] - frame[2])
        wide = panel[2] - panel[0] > _HEADING * (frame[2] - frame[0])
        if wide and beyond < slack and panel[1] < frame[1] and abs(frame[1] - panel[3]) < slack:
            return min(frame[0], panel[0]), panel[1], max(frame[2], panel[2]), frame[3]
    return frame


def _whole_adverts(frames: Sequence[Rect], lines: Sequence[TypeLine], paper: Paper, strip: float) -> list[Rect]:
    """Put the frames one under the other together where what parts them are rules of one advert."""
    for over, under in permutations(frames, 2):
        aligned = max(abs(over[0] - under[0]), abs(over[2] - under[2])) < paper.size
        if (
            aligned
            and abs(under[1] - over[3]) < strip
            and not (_stand_apart((over, under), paper.size) and _each_is_whole(over, under, lines))
            and is_one_advert(held_in(lines, over), held_in(lines, under), paper)
        ):
            joined = around([over, under], over)
            return _whole_adverts([joined, *(f for f in frames if f not in (over, under))], lines, paper, strip)
    for over in frames:
        row = _row_under(over, frames, paper.size)
        if row and is_one_advert(held_in(lines, over), held_in(lines, around(row, over)), paper):
            joined = around([over, *row], over)
            return _whole_adverts([joined, *(f for f in frames if f not in (over, *row))], lines, paper, strip)
    return list(frames)


def _row_under(over: Rect, frames: Sequence[Rect], slack: float) -> list[Rect]:
    """Return the columns of a list right under a frame, from left to right, which rules part and which fill its width.

    None are returned where they do not end at one height.
    """
    under = sorted(f for f in frames if f is not over and abs(f[1] - over[3]) < slack)
    row = [f for f in under if f[0] > over[0] - slack and f[2] < over[2] + slack]
    if len(row) < _FEWEST_COLUMNS or max(row[0][0] - over[0], over[2] - row[-1][2]) > slack:
        return []
    close = all(two[0] - one[2] < slack and abs(one[3] - two[3]) < slack for one, two in pairwise(row))
    return row if close else []


def _each_is_whole(over: Rect, under: Rect, lines: Sequence[TypeLine]) -> bool:
    """Say whether white alone, no line of type, stands between two frames that both hold more than a name."""
    middles = (centre(n.rect) for n in lines)
    between = any(over[0] < x < over[2] and over[3] < y < under[1] for x, y in middles)
    return not between and all(len(held_in(lines, frame)) >= _LEAST_LINES for frame in (over, under))


def _stand_apart(frames: Sequence[Rect], size: float) -> bool:
    """Say whether white parts each of several frames, one under the other, from the next: two rules, not one."""
    return len(frames) > 1 and all(
        under[1] - over[3] > _APART * size for over, under in pairwise(sorted(frames, key=lambda f: f[1]))
    )


def _rejoined(frames: Sequence[Rect], touching: float) -> list[Rect]:
    """Put the frames together that a panel set into an advert from side to side has cut apart.

    Such a panel is narrower than the frame by a little white on both sides and shares a rule with what is above or
    below it; adverts that stand one under the other have sides of their own.
    """
    for panel in frames:
        cut = [f for f in frames if _set_into(panel, f) and _apart(panel, f) <= touching]
        if cut:
            whole = around([panel, *cut], panel)
            return _rejoined([whole, *(f for f in frames if f is not panel and f not in cut)], touching)
    return list(frames)


def _apart(a: Rect, b: Rect) -> float:
    """Return how far two rectangles stand from having one rule between them, one above the other."""
    return min(abs(a[1] - b[3]), abs(b[1] - a[3]))


def _set_into(panel: Rect, frame: Rect) -> bool:
    low, high = (share * (panel[2] - panel[0]) for share in _INSET)
    return all(low <= inset <= high for inset in (panel[0] - frame[0], frame[2] - panel[2]))


def within(rect: Rect, frame: Rect) -> bool:
    """Say whether most of a rectangle lies in a frame."""
    return shared(rect, frame) > _MOST * max(1.0, area_of(rect))


def held_in(lines: Sequence[TypeLine], frame: Rect) -> list[TypeLine]:
    """Return the lines that stand in a frame."""
    return [line for line in lines if within(line.rect, frame)]


def outside_of(lines: Sequence[TypeLine], frames: Sequence[Rect]) -> list[TypeLine]:
    """Return the lines that stand in none of some frames."""
    return [line for line in lines if not any(within(line.rect, frame) for frame in frames)]
