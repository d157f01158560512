"""What leaves a step of reading out, for the figures of tests/benchmarks/steps.py, leaves it out and nothing else."""

from __future__ import annotations

from dataclasses import replace
from unittest.mock import patch

import pytest

from adminer.reading import first, numerals, sight
from adminer.reading.again import second_try
from adminer.reading.letters import ReadLine
from adminer.reading.models import first_reader
from adminer.reading.recognise import read_strips
from adminer.reading.tails import settle_tail
from tests.benchmarks.steps import WITHOUT
from tests.reading.drawing import Setting, draw


def left_out() -> set[str]:
    kept = {
        "fractions": vars(numerals)["settle_tail"] is settle_tail,
        "quick": vars(first)["first_reader"] is first_reader,
        "again": vars(sight)["second_try"] is second_try,
    }
    return {step for step, in_place in kept.items() if not in_place}


@pytest.mark.parametrize("step", sorted(WITHOUT))
def test_a_step_is_left_out_only_while_it_is_asked(step: str) -> None:
    assert left_out() == set()
    with WITHOUT[step]():
        assert left_out() == {step}
    assert left_out() == set()


def test_without_the_second_look_nothing_is_read_again() -> None:
    look = sight.look_at(draw(300, 80, Setting("Saucers 25", 20, 55, 34)))
    (line,) = look.seen
    unsure = replace(line, read=ReadLine(tuple(replace(letter, confidence=0.7) for letter in line.read.letters)))
    look = replace(look, seen=(unsure,))
    with patch("adminer.reading.again.read_strips", wraps=read_strips) as asked:
        sight.see(look)
        (strips, _) = asked.call_args.args
        assert len(strips) == 1
        asked.reset_mock()
        with WITHOUT["again"]():
            sight.see(look)
        assert not asked.called
