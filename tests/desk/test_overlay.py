"""Corrections are for ever: whatever is read again, a person's word is shown, and no act is dropped."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from adminer.records import Advert, Box, Offer, ParsedPage
from adminer.store.facts import offer_fields
from adminer.store.journal import Act, Journal
from adminer.store.overlay import overlay, overlay_page
from tests.desk.pages import CLIPPING, offer, page

CUP = offer(1, "cup and saucer", "0.69", y=100)
PLATE = offer(2, "dinner plate", "0.49", y=200)
BOWL = offer(3, "soup bowl", "0.39", y=300)
AT = "2026-01-01T00:00:00Z"
PAGE = page((CUP, PLATE, BOWL))


def offers(parsed: ParsedPage) -> dict[str, Offer]:
    return {o.offer_id: o for advert in parsed.adverts for o in advert.offers}


def test_without_acts_the_page_is_as_read() -> None:
    assert overlay((PAGE,), ()) == ((PAGE,), ())


def test_a_correction_outlives_a_reading_that_moves_and_renames_everything(tmp_path: Path) -> None:
    with Journal(tmp_path / "j") as journal:
        old, new = {"item": CUP.item}, {"item": "coffee cup and saucer"}
        journal.append("a", "correct", "offer", CLIPPING, box=CUP.box, old=old, new=new, seen=offer_fields(CUP))
        moved = replace(CUP, offer_id="other", item="cup aml sauter", box=Box(46, 95, 390, 44))
        again = page((replace(PLATE, offer_id=CUP.offer_id), moved, BOWL))
        laid = overlay_page(again, journal.acts)
    by_id = offers(laid.page)
    assert by_id["other"].item == "coffee cup and saucer"
    assert by_id["other"].status == "corrected"
    assert by_id[CUP.offer_id].item == "dinner plate"
    assert [(r.field, r.old, r.new, r.offer_id, r.found) for r in laid.rows] == [
        ("item", "cup and saucer", "coffee cup and saucer", "other", True)
    ]


def test_a_confirmed_offer_keeps_its_values_when_the_next_reading_misreads_it(tmp_path: Path) -> None:
    with Journal(tmp_path / "j") as journal:
        journal.append("a", "confirm", "offer", CLIPPING, box=CUP.box, new=offer_fields(CUP), seen=offer_fields(CUP))
        worse = offer(1, "cap and sauce", "69.00", y=104)
        (shown,) = (o for o in offers(overlay_page(page((worse, PLATE)), journal.acts).page).values() if o.box.y < 150)
    assert (shown.item, shown.prices[0].amount, shown.status) == ("cup and saucer", Decimal("0.69"), "confirmed")


def test_what_a_new_reading_no_longer_finds_is_listed_and_kept(tmp_path: Path) -> None:
    with Journal(tmp_path / "j") as journal:
        seen = offer_fields(BOWL)
        journal.append(
            "a", "correct", "offer", CLIPPING, box=BOWL.box, old={"pieces": None}, new={"pieces": 1}, seen=seen
        )
        laid = overlay_page(page((CUP, PLATE)), journal.acts)
    kept = [o for o in offers(laid.page).values() if o.item == "soup bowl"]
    assert [(o.pieces, o.status) for o in kept] == [(1, "corrected")]
    assert [row.found for row in laid.rows] == [False]


def test_acts_on_a_clipping_that_is_gone_are_listed(tmp_path: Path) -> None:
    with Journal(tmp_path / "j") as journal:
        journal.append(
            "a", "reject", "offer", "gone", box=BOWL.box, new={"status": "rejected"}, seen=offer_fields(BOWL)
        )
        pages, rows = overlay((PAGE,), journal.acts)
    assert pages == (PAGE,)
    assert [(r.clipping_id, r.found) for r in rows] == [("gone", False)]


def test_two_corrections_never_fall_on_one_offer(tmp_path: Path) -> None:
    merged = offer(1, "cup and saucer dinner plate", "0.69", y=100)
    merged = replace(merged, box=Box(40, 100, 400, 140))
    with Journal(tmp_path / "j") as journal:
        for each, name in ((CUP, "cup"), (PLATE, "plate")):
            fields = offer_fields(each)
            journal.append(
                "a",
                "correct",
                "offer",
                CLIPPING,
                box=each.box,
                old={"item": each.item},
                new={"item": name},
                seen=fields,
            )
        laid = overlay_page(page((merged,)), journal.acts)
    assert sorted(o.item for o in offers(laid.page).values()) == ["cup", "plate"]
    assert sorted(r.found for r in laid.rows) == [False, True]


def test_a_drawn_offer_is_not_doubled_when_the_reader_learns_to_see_it(tmp_path: Path) -> None:
    with Journal(tmp_path / "j") as journal:
        fields = offer_fields(BOWL)
        journal.append("a", "add", "offer", CLIPPING, box=BOWL.box, new=fields, seen=fields)
        before = overlay_page(page((CUP, PLATE)), journal.acts)
        after = overlay_page(PAGE, journal.acts)
    assert len(offers(before.page)) == len(offers(after.page)) == 3
    assert all(r.found for r in (*before.rows, *after.rows))


def test_a_split_advert_gives_each_offer_to_the_part_it_stands_in(tmp_path: Path) -> None:
    boxes = [[20, 20, 560, 150], [20, 170, 560, 1000]]
    with Journal(tmp_path / "j") as journal:
        journal.append("a", "split", "advert", CLIPPING, box=PAGE.adverts[0].box, new={"boxes": boxes})
        laid = overlay_page(PAGE, journal.acts)
    assert [[o.item for o in a.offers] for a in laid.page.adverts] == [
        ["cup and saucer"],
        ["dinner plate", "soup bowl"],
    ]
    assert [a.box for a in laid.page.adverts] == [Box(*b) for b in boxes]
    assert all(o.advert_id == a.advert_id for a in laid.page.adverts for o in a.offers)
    assert set(laid.page.word_adverts) == {a.advert_id for a in laid.page.adverts}


@dataclass
class Model:
    """Hold what a person believes the database must show: the value last said and not taken back, by place."""

    said: list[tuple[str, int, str, str]]  # act id, place, item, status

    def shown(self, undone: set[str]) -> dict[int, tuple[str, str]]:
        result: dict[int, tuple[str, str]] = {}
        for act_id, place, item, status in self.said:
            if act_id in undone:
                continue
            was = result.get(place, ("", ""))[1]
            result[place] = (item, "corrected" if status == "confirmed" and was == "corrected" else status)
        return result


STEPS = st.lists(
    st.one_of(
        st.tuples(st.just("correct"), st.integers(0, 7), st.sampled_from(["creamer", "platter", "gravy boat"])),
        st.tuples(st.just("confirm"), st.integers(0, 7), st.just("")),
        st.tuples(st.just("reject"), st.integers(0, 7), st.just("")),
        st.tuples(st.just("undo"), st.integers(0, 30), st.just("")),
        st.tuples(st.just("read"), st.integers(0, 10**6), st.just("")),
    ),
    max_size=60,
)
FIRST = tuple(offer(n + 1, f"item number {n}", f"{n}.39", y=60 + 120 * n) for n in range(8))


def read_again(seed: int) -> ParsedPage:
    """Return a reading that shifts every offer a little, misreads some and loses one."""
    read = []
    for n, first in enumerate(FIRST):
        if seed % 9 == n:
            continue
        shift = (seed >> n) % 7 - 3
        item = f"itern nunber {n}" if (seed >> n) & 1 else first.item
        read.append(
            replace(first, offer_id=f"r{seed}-{n}", item=item, box=Box(40 + shift, first.box.y + shift, 396, 42))
        )
    return page(tuple(reversed(read)))


@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(steps=STEPS)
def test_random_edits_undos_and_readings_agree_with_a_model(steps: Sequence[tuple[str, int, str]]) -> None:
    acts: list[Act] = []
    current, model, undone = page(FIRST), Model([]), set[str]()
    for number, (what, value, item) in enumerate(steps):
        if what == "read":
            current = read_again(value)
        elif what == "undo":
            if model.said:
                target = model.said[value % len(model.said)][0]
                if target not in undone:
                    undone.add(target)
                    acts.append(
                        Act(f"u{number}", "2026-01-01T00:00:00Z", "a", "undo", "offer", CLIPPING, undoes=target)
                    )
        else:
            laid = overlay_page(current, acts)
            here = [o for o in offers(laid.page).values() if abs(o.box.y - FIRST[value].box.y) < 20]
            if not here:
                continue
            (seen,) = here
            status = {"correct": "corrected", "confirm": "confirmed", "reject": "rejected"}[what]
            fields = offer_fields(seen)
            new = {"correct": {"item": item}, "confirm": fields, "reject": {"status": "rejected"}}[what]
            act = Act(
                f"i{number}", AT, "a", what, "offer", CLIPPING, seen.box, {}, new, fields,
                laid.threads.get(seen.offer_id), act_no=len(acts) + 1,
            )  # fmt: skip
            acts.append(act)
            shown_item = item if what == "correct" else seen.item
            model.said.append((act.id, value, shown_item, status))
        laid = overlay_page(current, acts)
        told = {
            n: (o.item, o.status)
            for n, first in enumerate(FIRST)
            for o in offers(laid.page).values()
            if o.status != "read" and abs(o.box.y - first.box.y) < 20
        }
        expected = model.shown(undone)
        assert told.keys() == expected.keys()
        for place, (expected_item, status) in expected.items():
            assert told[place][1] == status
            if status != "rejected":
                assert told[place][0] == expected_item
        standing = [said for said in model.said if said[0] not in undone]
        assert {row.act_no for row in laid.rows} == {
            next(a.act_no for a in acts if a.id == said[0]) for said in standing
        }


def test_an_advert_that_was_corrected_keeps_its_shop_and_dates(tmp_path: Path) -> None:
    advert = PAGE.adverts[0]
    new = {"retailer": {"id": "penhallow", "name": "Penhallow Stores"}, "valid_from": "1954-01-07", "city": "Ferncliff"}
    with Journal(tmp_path / "j") as journal:
        act = journal.append("a", "correct", "advert", CLIPPING, box=advert.box, new=new)
        shifted = replace(PAGE, adverts=(replace(advert, box=Box(30, 25, 540, 1150)),))
        laid = overlay_page(shifted, journal.acts)
        journal.undo("a", act)
        assert overlay_page(shifted, journal.acts).page == shifted
    shown: Advert = laid.page.adverts[0]
    assert (shown.retailer.name if shown.retailer else None, shown.city, shown.dated_by) == (
        "Penhallow Stores",
        "Ferncliff",
        "person",
    )
    assert laid.checked == {shown.advert_id}
