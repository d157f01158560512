"""The first reading: the quick network is taken at its word, but for what may be an unsure price."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from unittest.mock import patch

import numpy as np
import pytest
from PIL import Image
from rapidfuzz.distance import Levenshtein

from adminer.layout.clean import Gray
from adminer.reading import first, models
from adminer.reading.letters import Letter, ReadLine
from adminer.reading.recognise import read_strips
from adminer.reading.sight import look_at
from tests.reading.drawing import Setting, draw


def line(text: str, sure: float = 0.999, **unsure: float) -> ReadLine:
    """Return a line of letters, each as sure as `sure` but those of `unsure`."""
    return ReadLine(tuple(Letter(c, k / len(text), unsure.get(f"_{c}", sure)) for k, c in enumerate(text)))


def test_a_line_with_an_unsure_figure_is_read_by_the_full_network_however_long() -> None:
    text = "Salad plates of the new pattern, each 25c, as long as they last"
    assert not first.is_doubted(line(text))
    assert first.is_doubted(line(text, _2=0.98))


def test_a_short_unsure_line_is_read_by_the_full_network_and_a_long_one_without_a_figure_is_not() -> None:
    assert first.is_doubted(line("I.OO", 0.8))
    assert not first.is_doubted(line("Saucers"))
    assert not first.is_doubted(line("the committee met on the evening of Tuesday", 0.8))


def test_display_type_is_read_by_the_full_network_unless_it_is_quite_sure() -> None:
    name = "The Kettle and Crock Department Store"
    assert first.is_doubted(line(name, 0.98), display=True)
    assert not first.is_doubted(line(name, 0.999), display=True)
    assert not first.is_doubted(line(name, 0.98))


def test_a_price_by_itself_is_read_by_the_full_network_however_sure() -> None:
    assert first.is_doubted(line("2 for 29c"))
    assert not first.is_doubted(line("Salad plates, each 25c"))


def test_only_what_is_doubted_is_asked_of_the_full_network() -> None:
    strips = [draw(300, 44, Setting("Saucers", 10, 32, 28)), draw(120, 44, Setting("25c", 10, 32, 28))]

    def asked(doubt: Callable[..., bool]) -> list[tuple[str, int]]:
        with patch.object(first, "read_strips", wraps=read_strips) as reads, patch.object(first, "is_doubted", doubt):
            first.read_first(strips)
        return [(call.kwargs.get("network", "rec"), len(call.args[0])) for call in reads.call_args_list]

    assert asked(lambda read, **_: "25" in read.text) == [("quick", 2), ("rec", 1)]
    with patch.object(first, "first_reader", lambda: "rec"):
        assert asked(lambda *_, **__: True) == [("rec", 2)]


@pytest.fixture
def _afresh() -> Iterator[None]:
    models.first_reader.cache_clear()
    yield
    models.first_reader.cache_clear()


@pytest.mark.usefixtures("_afresh")
def test_the_quick_network_reads_only_beside_the_network_it_was_made_of(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert models.first_reader() == "quick"
    models.first_reader.cache_clear()
    other = tmp_path / "another.onnx"
    other.write_bytes(b"another wheel's")
    monkeypatch.setattr(models, "model_file", lambda _: other)
    assert models.first_reader() == "rec"


def test_what_the_quick_network_is_sure_of_the_full_one_reads_as_well(grocery_lines: list[Gray]) -> None:
    quick = read_strips(grocery_lines, network="quick")
    taken = [k for k, read in enumerate(quick) if not first.is_doubted(read)]
    full = read_strips([grocery_lines[k] for k in taken])
    letters = sum(len(read.text) for read in full)
    assert letters > 900
    told_otherwise = sum(Levenshtein.distance(quick[k].text, read.text) for k, read in zip(taken, full, strict=True))
    assert told_otherwise < 0.01 * letters
    shifted = zip(taken[1:], full, strict=False)
    assert sum(Levenshtein.distance(quick[k].text, read.text) for k, read in shifted) > 0.5 * letters


@pytest.fixture(scope="module")
def grocery_lines() -> list[Gray]:
    """Return the lines of one scan of the demo."""
    page = np.asarray(Image.open(Path(__file__).parents[2] / "corpus_demo/scans/grocery-1955-tapes.jpg").convert("L"))
    return [one.strip for one in look_at(page).seen]
