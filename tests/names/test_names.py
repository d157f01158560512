"""Authority files: reading, matching, proposing, editing. Names are of the invented country."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from adminer.errors import FolderError
from adminer.names.authority import Authorities, LineEntry, MakerEntry, NameUse, load_authorities
from adminer.names.editing import accept_line, merge_into_line, reject_name, split_from_line
from adminer.names.matching import best_match, date_warning, fold_name, line_spellings
from adminer.names.objects import read_objects
from adminer.names.pieces import load_vocabulary
from adminer.names.proposals import NameSighting, propose, read_rejected
from adminer.names.relink import Unlinked, relink
from adminer.names.spotting import spot_names
from adminer.records import Box
from tests.parsing.pages import some_names

LINES = (
    LineEntry(
        id="tansy_morn",
        name="Tansy Morn",
        maker="marrowstone",
        first_year=1952,
        last_year=1958,
        names=(
            NameUse.model_validate(
                {"name": "Golden Buttons", "used_by": "decal_supplier", "from": 1951, "to": 1956},
            ),
        ),
    ),
    LineEntry(id="silverthaw", name="Silverthaw", first_year=1955),
    LineEntry(id="winter_sorrel", name="Winter Sorrel"),
    LineEntry(id="winter_laurel", name="Winter Laurel"),
)
SPELLINGS = line_spellings(LINES)


@pytest.mark.parametrize(
    ("printed", "line"),
    [
        ("Tansy Morn", "tansy_morn"),
        ("TANSY MORN", "tansy_morn"),
        ("Tansy Mom", "tansy_morn"),  # rn read as m
        ("Tansy M0rn", "tansy_morn"),  # o read as 0
        ("Silver-\nthaw", "silverthaw"),  # hyphen at the line end
        ("Silver thaw", "silverthaw"),
        ("Silventhaw", "silverthaw"),
        ("Golden Buttons", "tansy_morn"),
        ("Winter Sorrel", "winter_sorrel"),
    ],
)
def test_names_survive_what_readers_do_to_them(printed: str, line: str) -> None:
    match = best_match(fold_name(printed), SPELLINGS)
    assert match is not None
    assert match.entry_id == line
    assert match.why


@pytest.mark.parametrize("printed", ["Pansy Horn", "Golden Delicious", "Silverware", "Winter Sale", "Tansy", "Table"])
def test_other_words_are_no_line(printed: str) -> None:
    assert best_match(fold_name(printed), SPELLINGS) is None


def test_a_name_between_two_entries_stays_ambiguous_with_its_candidates() -> None:
    twins = line_spellings((LineEntry(id="a", name="Copperwheat"), LineEntry(id="b", name="Copperwheat")))
    match = best_match("copperwheat", twins)
    assert match is not None
    assert match.entry_id is None
    assert set(match.candidates) == {"a", "b"}


def test_names_are_spotted_in_running_text_with_their_place() -> None:
    text = "The lovely TANSY MORN pattern by Marrowstone; also Silverthaw"
    found = spot_names(text, SPELLINGS)
    assert [(s.match.entry_id, text[s.start : s.end]) for s in found] == [
        ("tansy_morn", "TANSY MORN"),
        ("silverthaw", "Silverthaw"),
    ]


def test_a_name_not_yet_introduced_is_warned_of() -> None:
    line = LINES[0]
    assert date_warning(line, "Tansy Morn", 1948, 1949) == (
        "not introduced before 1952, but the advert is of 1949 at the latest"
    )
    assert date_warning(line, "Golden Buttons", 1957, 1957) == (
        "not used after 1956, but the advert is of 1957 at the earliest"
    )
    assert date_warning(line, "Tansy Morn", 1953, 1953) is None
    assert date_warning(line, "Tansy Morn", None, None) is None


def test_relinking_follows_an_edit_of_the_names() -> None:
    offers = [
        Unlinked("o1", "Dinner plate", "Golden Buttons"),
        Unlinked("o2", "Winter Sorrel cup"),
        Unlinked("o3", "Cup"),
    ]
    before = [r.match.entry_id if r.match else None for r in relink(offers, Authorities(lines=LINES))]
    after = [r.match.entry_id if r.match else None for r in relink(offers, Authorities(lines=LINES[1:]))]
    assert before == ["tansy_morn", "winter_sorrel", None]
    assert after == [None, "winter_sorrel", None]


def test_a_users_pieces_add_names_and_pieces(tmp_path: Path) -> None:
    own = tmp_path / "names" / "pieces.toml"
    own.parent.mkdir()
    own.write_text(
        '[[piece]]\nid = "dinner_plate"\nnames = ["company plate"]\n\n'
        '[[piece]]\nid = "muffin_dish"\nkind = "serving"\ntrade = [2]\nresale = [1]\n'
        'names = ["muffin dish and cover"]\n',
        encoding="utf-8",
    )
    pieces = load_vocabulary(own)
    assert pieces.find("Company Plate") == "dinner_plate"
    assert pieces.find("Dinner plates") == "dinner_plate"
    assert pieces.pieces["muffin_dish"].trade == (2,)
    assert load_vocabulary().find("company plate") is None


@pytest.mark.parametrize(
    ("printed", "piece"),
    [
        ("sauce dish", "fruit_dish"),
        ("dessert dishes", "fruit_dish"),
        ("B. & B. plate", "bread_and_butter"),
        ("bread-and-butter plates", "bread_and_butter"),
        ("bread plates", "bread_and_butter"),
        ("rim soup", "soup_plate"),
        ("coupe soups", "coupe_soup"),
        ("nappy", "vegetable_dish"),
        ("oatmeal", "cereal_dish"),
        ("chop plate", "chop_plate"),
        ("covered vegetable", "covered_vegetable"),
        ("sugar and cover", "covered_sugar"),
        ("fast-stand gravy", "gravy_boat"),
        ("iced tea tumblers", "iced_tea"),
    ],
)
def test_the_trades_synonyms_are_known(printed: str, piece: str) -> None:
    # synonyms of the period: common practice, no single source (trade.md D.4)
    assert load_vocabulary().find(printed) == piece


def names_folder(tmp_path: Path, lines: str = "") -> Path:
    folder = tmp_path / "names"
    folder.mkdir()
    if lines:
        (folder / "lines.toml").write_text(lines, encoding="utf-8")
    return folder


MINE = """\
# my lines, in my order

[[line]]
id = "silverthaw"   # a comment that stays
name = "Silverthaw"
names = [
    { name = "Frost Star", used_by = "decal_supplier" },
]

[[line]]
id = "copperwheat"
name = "Copperwheat"
maker = "marrowstone"
"""


def test_accepting_merging_and_splitting_keep_what_the_person_wrote(tmp_path: Path) -> None:
    folder = names_folder(tmp_path, MINE)
    assert accept_line(folder, "Quince Arbor") == "quince_arbor"
    merge_into_line(folder, "Silver Frost", "silverthaw", used_by="collectors")
    merge_into_line(folder, "Wheat Spray", "copperwheat", used_by="retailer", used_by_id="penhallow")
    lines = {line.id: line for line in load_authorities(folder).lines}
    assert [use.name for use in lines["silverthaw"].names] == ["Frost Star", "Silver Frost"]
    assert lines["copperwheat"].names == (NameUse(name="Wheat Spray", used_by="retailer", used_by_id="penhallow"),)
    assert split_from_line(folder, "silverthaw", "Frost Star") == "frost_star"
    assert split_from_line(folder, "copperwheat", "Wheat Spray") == "wheat_spray"
    after = {line.id: line for line in load_authorities(folder).lines}
    assert set(after) == {"silverthaw", "copperwheat", "quince_arbor", "frost_star", "wheat_spray"}
    assert [use.name for use in after["silverthaw"].names] == ["Silver Frost"]
    assert after["wheat_spray"].maker == "marrowstone"
    text = (folder / "lines.toml").read_text(encoding="utf-8")
    assert text.startswith("# my lines, in my order\n")
    assert "# a comment that stays" in text


def test_merging_the_same_name_twice_changes_nothing(tmp_path: Path) -> None:
    folder = names_folder(tmp_path, MINE)
    merge_into_line(folder, "FROST STAR", "silverthaw")
    assert (folder / "lines.toml").read_text(encoding="utf-8") == MINE


def test_splitting_a_name_that_is_not_there_says_so(tmp_path: Path) -> None:
    with pytest.raises(FolderError, match="has no further name 'Tansy'"):
        split_from_line(names_folder(tmp_path, MINE), "silverthaw", "Tansy")
    with pytest.raises(FolderError, match="there is no line 'nothing'"):
        merge_into_line(tmp_path / "names", "Tansy", "nothing")


def sightings(*rows: tuple[str, str, float]) -> list[NameSighting]:
    return [NameSighting(advert, text, Box(0, 0, 10, 10), score, "stands alone") for advert, text, score in rows]


def test_spellings_of_one_name_are_gathered_and_proposed_once() -> None:
    seen = sightings(
        ("a1", "Tansy Morn", 0.4), ("a2", "TANSY MORN", 0.4), ("a3", "Tansy Mom", 0.4), ("a4", "Harvest Lane", 0.3)
    )
    (proposal,) = propose(seen, Authorities())
    assert proposal.name == "Tansy Morn"
    assert len(proposal.sightings) == 3
    # independent guesses: 1 - 0.6 ** 3
    assert proposal.score == 0.784


def test_a_rejected_name_does_not_come_back(tmp_path: Path) -> None:
    folder = names_folder(tmp_path)
    reject_name(folder, "Harvest of Values", on=date(2026, 1, 2))
    reject_name(folder, "HARVEST OF VALUES")
    assert read_rejected(folder) == ("Harvest of Values",)
    seen = sightings(("a1", "Harvest of Values", 0.9), ("a2", "Harvest 0f Values", 0.9))
    assert propose(seen, Authorities(), read_rejected(folder)) == ()
    assert len(propose(seen, Authorities())) == 1


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("[[line]\n", "cannot be read"),
        ('[[line]]\nid = "a"\n', "entry 1 is not as expected at 'name'"),
        ('[[line]]\nid = "a"\nname = "A"\ncolour = "red"\n', "not as expected at 'colour'"),
        ('[[line]]\nid = "a"\nname = "A"\n[[line]]\nid = "a"\nname = "B"\n', "the id 'a' stands twice"),
        ('[[lines]]\nid = "a"\nname = "A"\n', "unknown table 'lines'"),
    ],
)
def test_a_broken_authority_file_is_named_with_the_remedy(tmp_path: Path, text: str, message: str) -> None:
    folder = names_folder(tmp_path, text)
    with pytest.raises(FolderError, match=message) as caught:
        load_authorities(folder)
    assert caught.value.file == "names/lines.toml"
    assert caught.value.remedy


def test_a_missing_folder_is_an_empty_authority(tmp_path: Path) -> None:
    assert load_authorities(tmp_path / "nothing").lines == ()
    assert load_authorities(None).maker_name("x") is None
    assert (
        Authorities(makers=(MakerEntry(id="m", name="Marrowstone Pottery"),)).maker_name("m") == "Marrowstone Pottery"
    )


def test_objects_are_read_and_a_broken_row_stops_only_itself(tmp_path: Path) -> None:
    path = tmp_path / "objects.csv"
    path.write_text(
        "﻿object id;what;mark;date code;maker;line\n"
        "p1;dinner plate;MARROWSTONE / T-3-1953;T-3-1953;marrowstone;tansy_morn\n"
        ";;;;;\n"
        "p3;cup;;;;\n",
        encoding="utf-8",
    )
    result = read_objects(path)
    assert [(o.object_id, o.what, o.earliest_year) for o in result.objects] == [
        ("p1", "dinner plate", 1953),
        ("p3", "cup", None),
    ]
    assert result.problems == ("objects.csv, line 3: does not say what the object is, or has too many columns",)
    assert read_objects(tmp_path / "none.csv").objects == ()


@pytest.mark.parametrize(("read", "entry"), [("Winten Sonnel", "winter_sorrel"), ("Silverthave", "silverthaw")])
def test_letters_of_one_build_count_half(read: str, entry: str) -> None:
    match = best_match(fold_name(read), line_spellings(some_names().lines))
    assert match is not None
    assert match.entry_id == entry


@pytest.mark.parametrize("read", ["Winter Barrel", "Silverware", "Summer Sorrel", "Silver Shaw Inn"])
def test_other_words_stay_unlinked(read: str) -> None:
    assert best_match(fold_name(read), line_spellings(some_names().lines)) is None
