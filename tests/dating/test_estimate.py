"""The posterior of undated adverts: sets, ranking, a person's evidence, neighbours, and calibration."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import numpy as np
import pytest

from adminer.dating.edtf import bounds_of
from adminer.dating.estimate import NEIGHBOUR, estimate_adverts, without_dates
from adminer.dating.evidence.base import Case, Clue, Context, ReadDate
from adminer.dating.evidence.shapes import within
from adminer.dating.months import MONTHS, index_of, log_prior
from adminer.dating.personal import Added, Linked, PersonalEvidence, Struck, load_personal
from adminer.dating.posterior import combine, median_month, month_set, weigh
from adminer.errors import FolderError
from tests.dating.invented_adverts import invented_adverts

ZONE = Case("c1-a1", "c1", "410 Market St., Osterby 54, Calif.")
RED = Case("c2-a1", "c2", "Bacon (8 red points) 39c")
BARE = Case("c2-a2", "c2", "Cups and saucers")


def test_without_evidence_the_answer_is_the_stated_prior_and_says_so() -> None:
    (found,) = estimate_adverts([BARE], Context(), years=(1940, 1949))
    assert "nothing on the advert" in found.note
    assert found.evidence == ()
    assert 0.87 < found.ninety.mass < 0.93
    assert index_of(date(1940, 1, 1)) <= median_month(found.posterior) <= index_of(date(1949, 12, 1))


def test_no_evidence_is_ever_certain() -> None:
    for found in estimate_adverts([ZONE, RED], Context()):
        assert found.posterior.min() > 0
        assert found.posterior.sum() == pytest.approx(1)


def test_a_set_holds_its_share_in_few_parts_and_its_edtf_reads_back() -> None:
    posterior = np.zeros(MONTHS)
    for year, weight in ((1941, 0.4), (1947, 0.3), (1953, 0.2), (1960, 0.1)):
        first = index_of(date(year, 3, 1))
        posterior[first : first + 4] = weight / 4
    found = month_set(posterior, 0.9)
    assert found.mass >= 0.9 - 1e-9
    assert found.edtf == "[1941-03..1941-06,1947-03..1947-06,1953-03..1953-06]"
    bounds = bounds_of(found.edtf)
    assert (bounds.earliest, bounds.latest) == (date(1941, 3, 1), date(1953, 6, 30))


def test_many_small_parts_are_joined_to_at_most_four() -> None:
    posterior = np.zeros(MONTHS)
    posterior[100:1000:60] = 1.0
    assert len(month_set(posterior / posterior.sum(), 0.9).spans) <= 4


def test_evidence_is_ranked_by_how_far_it_moved_the_answer() -> None:
    strong = Clue("strong", "", "", within(700, 702, 1e-3))
    weak = Clue("weak", "", "", within(600, 800, 0.5))
    struck = Clue("struck", "", "", within(100, 101, 1e-3))
    ranked = weigh(log_prior(), [weak, strong], [struck])
    assert [w.clue.kind for w in ranked] == ["strong", "weak", "struck"]
    assert ranked[0].moved_bits > 3 > ranked[1].moved_bits >= 0
    assert ranked[2].struck
    assert ranked[2].moved_bits > 0


def test_moved_bits_are_the_divergence_computed_the_long_way() -> None:
    clue = Clue("a", "", "", within(700, 760, 1e-2))
    other = Clue("b", "", "", within(650, 720, 1e-2))
    p, q = combine(log_prior(), [clue, other]), combine(log_prior(), [other])
    alone, prior = combine(log_prior(), [clue]), combine(log_prior(), [])
    expected = float((p * np.log2(p / q)).sum() + (alone * np.log2(alone / prior)).sum()) / 2
    assert next(w for w in weigh(log_prior(), [clue, other]) if w.clue is clue).moved_bits == pytest.approx(expected)


def test_adverts_of_one_scan_inform_each_other() -> None:
    alone = estimate_adverts([BARE], Context())[0]
    beside = estimate_adverts([RED, BARE], Context())[1]
    assert beside.ninety.months < alone.ninety.months
    assert [w.clue.kind for w in beside.evidence] == [NEIGHBOUR]


def test_what_is_said_of_the_whole_scan_counts_once_for_each_of_its_adverts() -> None:
    noted = [Case(f"c-a{n}", "c", "Tumblers", published="1951") for n in (1, 2, 3)]
    (alone,) = estimate_adverts(noted[:1], Context())
    for found in estimate_adverts(noted, Context()):
        assert np.array_equal(found.posterior, alone.posterior)
    pencilled = PersonalEvidence(add=(Added(advert="c", dates="1951", reason="pencilled on the back"),))
    bare = [Case(f"c-a{n}", "c", "Tumblers") for n in (1, 2, 3)]
    (alone,) = estimate_adverts(bare[:1], Context(), personal=pencilled)
    for found in estimate_adverts(bare, Context(), personal=pencilled):
        assert np.array_equal(found.posterior, alone.posterior)


def test_the_note_of_a_linked_clipping_is_a_second_witness() -> None:
    front = Case("front-a1", "front", "Tumblers", published="1951")
    reverse = Case("reverse-a1", "reverse", "Cups")
    linked = PersonalEvidence(link=(Linked(adverts=("front", "reverse"), reason="one sheet"),))
    assert estimate_adverts([front, reverse], Context(), personal=linked)[1].median.year == 1951


def test_a_person_adds_strikes_and_links() -> None:
    personal = PersonalEvidence(
        add=(Added(advert="c1", dates="1951", reason="pencilled on the back"),),
        strike=(Struck(advert="c2-a1", kind="rationing and controls", text="red"),),
        link=(Linked(adverts=("c1-a1", "c3-a1"), reason="reverse of the clipping"),),
    )
    reverse = Case("c3-a1", "c3", "Tumblers")
    zone, red, back = estimate_adverts([ZONE, RED, reverse], Context(), personal=personal)
    assert zone.ninety.bounds[0].year >= 1950
    assert any(w.clue.kind == "added by a person" for w in zone.evidence)
    assert all(w.struck for w in red.evidence if "red" in w.clue.text)
    assert back.median.year == 1951


def test_evidence_toml_is_read_and_a_broken_one_is_refused(tmp_path: Path) -> None:
    assert load_personal(tmp_path) == PersonalEvidence()
    path = tmp_path / "evidence.toml"
    path.write_text('[[add]]\nadvert = "c1"\ndates = "1951-05/1953"\nreason = "pencil"\n', encoding="utf-8")
    assert load_personal(tmp_path).add[0].trust == 0.9
    for wrong in ('[[add]]\nadvert = "c1"\n', "[[add]\n", '[[add]]\nadvert="c"\ndates="10/10/51"\nreason="x"\n'):
        path.write_text(wrong, encoding="utf-8")
        with pytest.raises(FolderError):
            load_personal(tmp_path)


def test_the_order_of_adverts_does_not_change_any_number() -> None:
    cases = [advert.case for advert in invented_adverts(3, 40)]
    forward = {e.advert_id: e for e in estimate_adverts(cases, Context())}
    for found in estimate_adverts(cases[::-1], Context()):
        assert np.array_equal(found.posterior, forward[found.advert_id].posterior)


def test_dates_that_disagree_are_shown_with_the_answer() -> None:
    read = ReadDate("dateline", "March 12, 1953", date(1953, 3, 12), date(1953, 3, 12), None, 0.9)
    (found,) = estimate_adverts([Case("c-a1", "c", "x", published="1954-03-12", dates=(read,))], Context())
    assert "the note is kept" in found.note


def test_hiding_dates_hides_them() -> None:
    dated = Case(
        "c-a1", "c", "Thurs., Mar. 12, 1953 or 3/12/53, '53 sets", published="1951-03", valid_from=date(1951, 3, 1)
    )
    hidden = without_dates(dated)
    assert (hidden.published, hidden.valid_from, hidden.dates) == (None, None, ())
    assert "53" not in hidden.text
    assert "Thurs., Mar. 12" in hidden.text
    assert len(hidden.text) == len(dated.text)


@pytest.mark.slow
def test_ninety_percent_sets_of_invented_adverts_hold_the_truth() -> None:
    # the invented adverts have spreads of their own; the promise is 85 to 95 %, a wider band allows for 400 draws
    # and for spreads that are not ours
    adverts = invented_adverts(11, 400)
    found = estimate_adverts([a.case for a in adverts], Context(), years=(1940, 1964))
    held = sum(e.ninety.holds(index_of(a.day)) for e, a in zip(found, adverts, strict=True)) / len(adverts)
    half = sum(e.half.holds(index_of(a.day)) for e, a in zip(found, adverts, strict=True)) / len(adverts)
    assert 0.85 <= held <= 0.98
    assert 0.45 <= half <= 0.75
