"""Added evidence against all the rest: named, with the strongest reason against it, and no surer than its trust."""

from __future__ import annotations

from datetime import date

import numpy as np
import pytest

from adminer.dating.contradiction import held_to_trust
from adminer.dating.evidence.base import Clue
from adminer.dating.evidence.shapes import faded, within
from adminer.dating.months import index_of, log_prior
from adminer.dating.personal import Added, PersonalEvidence, added_clues
from adminer.dating.posterior import combine

MARCH, FEBRUARY = index_of(date(1953, 3, 1)), index_of(date(1953, 2, 1))
PRINTED = Clue("calendar", "Saturday, March 28", "calendar", faded(within(MARCH, MARCH, 1e-6), 0.95), None)


@pytest.mark.parametrize("trust", [0.6, 0.9, 0.95])
def test_dates_the_rest_speaks_against_are_no_surer_than_the_trust_in_them(trust: float) -> None:
    added = Added(advert="a", dates="1953-02", reason="pencilled on the back", trust=trust)
    clues = [PRINTED, *added_clues(PersonalEvidence(add=(added,)), "a")]
    posterior, told = held_to_trust(log_prior(), clues, [added])
    assert posterior[FEBRUARY] <= trust + 1e-9
    assert float(posterior.sum()) == pytest.approx(1)
    assert len(told) == 1
    assert "'pencilled on the back: 1953-02' against calendar 'Saturday, March 28', by which it is 1953-03" in told[0]
    if combine(log_prior(), clues)[FEBRUARY] > trust:
        assert posterior[MARCH] > 0.9 * (1 - trust)  # what is not believed goes where the rest points


def test_the_trust_binds_where_the_added_dates_would_win() -> None:
    weak = Clue("calendar", "March", "calendar", faded(within(MARCH, MARCH, 1e-6), 0.1), None)
    added = Added(advert="a", dates="1953-02", reason="a guess", trust=0.9)
    era = Clue("law", "zones", "law", within(index_of(date(1950, 1, 1)), index_of(date(1955, 12, 1)), 1e-6), None)
    clues = [weak, era, *added_clues(PersonalEvidence(add=(added,)), "a")]
    assert combine(log_prior(), clues)[FEBRUARY] > 0.9
    posterior, told = held_to_trust(log_prior(), clues, [added])
    assert posterior[FEBRUARY] == pytest.approx(0.9)
    assert "CONTRADICTION" in told[0]
    # a wide span that holds the month speaks for it, not against it
    assert held_to_trust(log_prior(), [era, clues[-1]], [added])[1] == ()


def test_evidence_that_agrees_or_is_struck_out_is_left_as_it_is() -> None:
    agreeing = Added(advert="a", dates="1953", reason="a diary")
    clues = [PRINTED, *added_clues(PersonalEvidence(add=(agreeing,)), "a")]
    posterior, told = held_to_trust(log_prior(), clues, [agreeing])
    assert told == ()
    assert np.array_equal(posterior, combine(log_prior(), clues))
    struck = Added(advert="a", dates="1940", reason="another's hand")
    posterior, told = held_to_trust(log_prior(), [PRINTED], [struck])
    assert told == ()
    assert np.array_equal(posterior, combine(log_prior(), [PRINTED]))
