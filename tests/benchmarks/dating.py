"""How fast adverts are dated and runs computed, beside plain loops over months on the same clues in the same run.

    python -m tests.benchmarks.dating --adverts 10000

Asked: the posteriors of 10,000 adverts under 30 s on 2 cores, a run with 500 sightings under 1 s.
"""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from datetime import date, timedelta
from math import exp, log
from time import perf_counter, process_time

from adminer.dating.estimate import estimate_adverts, find_clues
from adminer.dating.evidence.base import Case, Context
from adminer.dating.months import MONTHS, log_prior
from adminer.dating.run_records import RunSighting
from adminer.dating.runs import compute_runs, study_run
from tests.dating.invented_adverts import invented_adverts

YEARS = (1938, 1965)
PLAIN_ADVERTS = 40


def plain_posterior(case: Case, prior: Sequence[float]) -> list[float]:
    """Return a posterior by plain loops, with each clue left out in turn, as the ranking needs."""
    clues = [[float(v) for v in clue.log_likelihood] for clue in find_clues(case, Context())]

    def normal(used: Sequence[Sequence[float]]) -> list[float]:
        total = [prior[m] + sum(clue[m] for clue in used) for m in range(MONTHS)]
        highest = max(total)
        weights = [exp(t - highest) for t in total]
        whole = sum(weights)
        return [w / whole for w in weights]

    answer = normal(clues)
    for left_out in range(len(clues)):
        for other in (normal([c for i, c in enumerate(clues) if i != left_out]), normal([clues[left_out]])):
            sum(p * log(p / max(q, 1e-300)) for p, q in zip(answer, other, strict=True) if p > 0)
    return answer


def main() -> None:
    """Print seconds, and the ratio to plain loops."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--adverts", type=int, default=10_000)
    asked = parser.parse_args()
    cases = [advert.case for advert in invented_adverts(1, asked.adverts)]
    estimate_adverts(cases[:5], Context(), years=YEARS)
    wall, cpu = perf_counter(), process_time()
    found = estimate_adverts(cases, Context(), years=YEARS)
    wall, cpu = perf_counter() - wall, process_time() - cpu
    prior = [float(v) for v in log_prior(YEARS)]
    plain = process_time()
    loops = [plain_posterior(case, prior) for case in cases[:PLAIN_ADVERTS]]
    plain = (process_time() - plain) / PLAIN_ADVERTS * asked.adverts
    worst = max(abs(a - b) for e, p in zip(found, loops, strict=False) for a, b in zip(e.posterior, p, strict=True))
    print(f"{asked.adverts} adverts dated       {cpu:8.1f} s of one core, {wall:.1f} s by the clock (asked: 30 s)")
    print(f"the same by plain loops     {plain:8.1f} s of one core, {plain / cpu:.0f} times as long")
    print(f"largest difference of a month's chance from the plain loops: {worst:.1e}")
    day = date(1951, 5, 3)
    sightings = [
        RunSighting(
            "l", "Line", "r", "Shop", "Town", f"a{i}", day + timedelta(weeks=i // 2), day + timedelta(weeks=i // 2)
        )
        for i in range(500)
    ]
    for name, call in (("bounds", compute_runs), ("whole study", study_run)):
        begun = process_time()
        call(sightings)
        print(f"a run with 500 sightings, {name:<12} {process_time() - begun:6.2f} s (asked: 1 s)")


if __name__ == "__main__":
    main()
