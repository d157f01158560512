"""A held-out story, with names and pages of its own, is parsed nearly as well as the demo: issue 4, at a small size."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.benchmarks.held_out_story import score_story, write_story

# What the demo must reach, less the 0.03 that a held-out story may fall short.
WANTED = {"prices, dollars": 0.98, "lines": 0.97, "retailer": 0.97}


@pytest.mark.slow
def test_a_held_out_story_is_parsed_within_three_hundredths_of_what_the_demo_must_reach(tmp_path: Path) -> None:
    write_story(tmp_path, 5, 60, pictures=False)
    score = score_story(tmp_path)
    reached = {name: score.fields[name].f1 for name in WANTED}
    short = {name: value for name, value in reached.items() if value is None or value < WANTED[name] - 0.03}
    assert not short
    lines = score.fields["lines"].precision
    assert lines is not None and lines >= 0.99  # at most one link in a hundred is wrong
