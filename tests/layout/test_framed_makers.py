"""A page of makers' adverts, each framed, within one rule around them all."""

from __future__ import annotations

from adminer.layout.framed_makers import framed_makers
from adminer.layout.rules import Rect, RuleWork
from adminer.layout.type_lines import TypeLine

WHOLE: Rect = (0, 0, 600, 700)
AROUND: Rect = (10, 10, 590, 690)
FRAMES: tuple[Rect, ...] = ((20, 50, 580, 260), (20, 270, 290, 520), (20, 530, 580, 680))
TITLE = TypeLine((150, 20, 450, 32), 12, "THE HEARTH ADVERTISER")


def advert(left: float, top: float, foot: str) -> list[TypeLine]:
    texts = ["Sent by post on three days' trial", "Plain, 3/11; best, 5/6", foot]
    return [TypeLine((left, top + 20 * n, left + 200, top + 20 * n + 12), 12, text) for n, text in enumerate(texts)]


SIGNED = [
    *advert(40, 60, "THE CORBELLE CO."),
    *advert(40, 280, "9, Weaver's Quay, Osterby"),
    *advert(40, 540, "Thorne & Co"),
]
LOOSE = advert(320, 290, "Of all chemists")


def regions(lines: list[TypeLine], frames: tuple[Rect, ...] = FRAMES) -> list[Rect]:
    return sorted(part.rect for part in framed_makers(AROUND, RuleWork((), (AROUND, *frames), ()), lines, WHOLE))


def test_each_frame_of_a_page_of_makers_is_an_advert_and_so_is_what_lost_its_frame() -> None:
    assert regions([TITLE, *SIGNED]) == sorted(FRAMES)
    assert regions([TITLE, *SIGNED, *LOOSE]) == sorted([*FRAMES, (320, 290, 520, 342)])


def test_panels_that_do_not_say_whose_they_are_or_stand_under_a_name_are_one_advert() -> None:
    unsigned = [TypeLine(n.rect, n.height, "Carriage paid") for n in SIGNED]
    assert regions([TITLE, *unsigned]) == []
    assert regions([TypeLine((100, 15, 500, 45), 30, "THE CORBELLE STORES"), *SIGNED]) == []
    assert regions([TITLE, *SIGNED], FRAMES[:2]) == []
