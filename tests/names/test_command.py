"""`adminer names` on a digitised folder, as its user calls it."""

from __future__ import annotations

from pathlib import Path

import pytest

from adminer.engine.folder import create_folder
from adminer.names.authority import load_authorities
from adminer.parsing import parse_page
from adminer.records import Clipping, ParsedPage
from adminer.store.load import build_database
from tests.cli.driver import inside
from tests.parsing.pages import NO_NAMES, reading_of

ADVERT = [
    (60, 20, 48, "Quince Arbor"),
    (60, 80, 16, "Fine China by Undine China Works"),
    (60, 120, 16, "Dinner plate 39¢"),
    (60, 150, 16, "Cup and saucer 45¢"),
]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = create_folder(tmp_path / "mine")
    reading = reading_of(ADVERT)
    clipping = Clipping(reading.clipping_id, "a.png", "0" * 64, 1, 800, 1000, "newspaper")
    build_database(made.database, [ParsedPage(clipping, reading, parse_page(reading, NO_NAMES))])
    return made.root


def test_a_found_name_is_listed_and_accepted(folder: Path) -> None:
    listed = inside("names", "--folder", folder, "--all")
    assert listed.returncode == 0
    assert "Quince Arbor" in listed.stdout
    accepted = inside("names", "accept", "Quince Arbor", "--folder", folder)
    assert "is now the line quince_arbor" in accepted.stdout
    assert [line.name for line in load_authorities(folder / "names").lines] == ["Quince Arbor"]


def test_a_found_maker_is_listed_and_accepted_as_one(folder: Path) -> None:
    assert "maker" in inside("names", "--folder", folder).stdout
    accepted = inside("names", "accept", "Undine China Works", "--as-maker", "--folder", folder)
    assert "is now the maker undine_china_works" in accepted.stdout
    assert [maker.name for maker in load_authorities(folder / "names").makers] == ["Undine China Works"]
    assert "Undine China Works" not in inside("names", "--folder", folder).stdout
    refused = inside("names", "accept", "Tansy Morn", "--as-maker", "--maker", "undine_china_works", "--folder", folder)
    assert refused.returncode != 0


def test_a_rejected_name_is_no_longer_listed(folder: Path) -> None:
    assert inside("names", "reject", "Quince Arbor", "--folder", folder).returncode == 0
    assert "Quince Arbor" not in inside("names", "--folder", folder).stdout
    assert inside("names", "reject", "Undine China Works", "--folder", folder).returncode == 0
    assert "No name is waiting" in inside("names", "--folder", folder).stdout


def test_merging_and_splitting_go_through_the_command(folder: Path) -> None:
    inside("names", "accept", "Quince Arbor", "--folder", folder)
    assert (
        inside("names", "merge", "Quince Bough", "quince_arbor", "--used-by", "maker", "--folder", folder).returncode
        == 0
    )
    assert (
        "is now the line quince_bough"
        in inside("names", "split", "quince_arbor", "Quince Bough", "--folder", folder).stdout
    )
    assert inside("names", "merge", "X", "nothing", "--folder", folder).returncode == 4
    assert inside("names", "merge", "X", "quince_arbor", "--used-by", "nobody", "--folder", folder).returncode == 2
