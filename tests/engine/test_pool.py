"""One killed worker loses only the page in its hands, and not even that one if the second try succeeds."""

from __future__ import annotations

import os
import threading
import time

from adminer.engine.pool import Pool
from tests.engine import fakes


def test_every_task_comes_back_once_whatever_happens_to_workers() -> None:
    pool: Pool[int, int] = Pool(fakes.double, workers=2, limit_seconds=3)
    outcomes = {outcome.task: outcome for outcome in pool.results(range(26))}
    assert sorted(outcomes) == list(range(26))
    good = {task: outcome.result for task, outcome in outcomes.items() if outcome.result is not None}
    assert good == {number: 2 * number for number in range(26) if number not in (13, 17, 19, 23)}
    assert "killed twice" in str(outcomes[13].crash)
    assert str(outcomes[17].fault) == "17: is unlucky."
    assert outcomes[19].crash == "ValueError: not this one"
    assert "took too long" in str(outcomes[23].crash)


def test_workers_run_one_thread_each() -> None:
    pool: Pool[int, str | None] = Pool(fakes.environment)
    assert [outcome.result for outcome in pool.results([1])] == ["1"]


def test_closing_the_results_ends_the_workers() -> None:
    pool: Pool[int, int] = Pool(fakes.own_process, workers=1)
    results = pool.results(range(100))
    worker = next(results).result
    results.close()  # type: ignore[attr-defined] # a generator
    assert worker is not None
    deadline = time.monotonic() + 5
    while time.monotonic() < deadline:
        try:
            os.kill(worker, 0)
        except ProcessLookupError:
            return
        time.sleep(0.05)
    raise AssertionError("the worker still runs")


def test_it_works_from_a_thread_that_may_not_touch_signals() -> None:
    found: list[int | None] = []
    pool: Pool[int, int] = Pool(fakes.double)
    thread = threading.Thread(target=lambda: found.extend(outcome.result for outcome in pool.results([2, 3])))
    thread.start()
    thread.join(60)
    assert sorted(number for number in found if number is not None) == [4, 6]
