"""One entry of an authority file is changed in its text: what was typed changes, everything else stays as written."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from adminer.errors import FolderError
from adminer.names.authority import LineEntry, LineRelation, MakerEntry, NameUse, load_authorities
from adminer.names.entries import add_entry, change_entry

MINE = """\
# mine

[[line]]
id = "tansy_morn"   # never changes
name = "Tansy Morn"
first_year = 1952   # by the price list
names = [
    # a name of the trade
    { name = "Golden Buttons", used_by = "decal_supplier", from = 1951 },
    { name = "Tansy", used_by = "collectors" },
]

# the other one
[[line]]
id = "silverthaw"
name = "Silverthaw"

[[line.names]]
name = "Frost Star"
used_by = "maker"

[[line.relations]]
relation = "made_for"
other = "tidewell"
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "names"
    made.mkdir()
    (made / "lines.toml").write_text(MINE, encoding="utf-8")
    return made


def line(folder: Path, line_id: str) -> LineEntry:
    return next(each for each in load_authorities(folder).lines if each.id == line_id)


def test_a_year_and_a_relation_change_and_every_comment_stays(folder: Path) -> None:
    relation = LineRelation(relation="same_decal", other="silverthaw", source="both carry decal 4172")
    wanted = line(folder, "tansy_morn").model_copy(
        update={"first_year": 1951, "last_year": 1958, "relations": (relation,)}
    )
    assert set(change_entry(folder, "lines", wanted)) == {"first_year", "last_year", "relations"}
    assert line(folder, "tansy_morn") == wanted
    text = (folder / "lines.toml").read_text(encoding="utf-8")
    assert "first_year = 1951   # by the price list" in text
    assert "# a name of the trade" in text
    assert text.split("# the other one")[1] == MINE.split("# the other one")[1]


def test_one_name_changes_in_its_place_whether_written_in_a_list_or_as_tables(folder: Path) -> None:
    tansy, silver = line(folder, "tansy_morn"), line(folder, "silverthaw")
    known = tansy.names[1].model_copy(update={"from_year": 1975, "source": "usage of collectors"})
    change_entry(folder, "lines", tansy.model_copy(update={"names": (tansy.names[0], known)}))
    star = silver.names[0].model_copy(update={"to_year": 1960})
    change_entry(folder, "lines", silver.model_copy(update={"names": (star, NameUse(name="Frost"))}))
    assert [use.from_year for use in line(folder, "tansy_morn").names] == [1951, 1975]
    assert [(use.name, use.to_year) for use in line(folder, "silverthaw").names] == [
        ("Frost Star", 1960),
        ("Frost", None),
    ]
    assert line(folder, "silverthaw").relations == silver.relations
    assert "# a name of the trade" in (folder / "lines.toml").read_text(encoding="utf-8")


def test_what_is_emptied_is_taken_out(folder: Path) -> None:
    silver = line(folder, "silverthaw").model_copy(update={"relations": (), "names": ()})
    change_entry(folder, "lines", silver)
    row = tomllib.loads((folder / "lines.toml").read_text(encoding="utf-8"))["line"][1]
    assert row == {"id": "silverthaw", "name": "Silverthaw"}


def test_an_entry_that_is_not_there_and_one_that_is_as_wanted(folder: Path) -> None:
    assert change_entry(folder, "lines", line(folder, "silverthaw")) == ()
    assert (folder / "lines.toml").read_text(encoding="utf-8") == MINE
    with pytest.raises(FolderError, match="there is no maker 'nobody'"):
        change_entry(folder, "makers", MakerEntry(id="nobody", name="Nobody"))


def test_new_entries_get_an_id_of_their_own(folder: Path) -> None:
    assert add_entry(folder, "makers", "Undine China Works") == "undine_china_works"
    assert add_entry(folder, "makers", 'Undine "China" Works') == "undine_china_works_2"
    assert [maker.name for maker in load_authorities(folder).makers] == ["Undine China Works", 'Undine "China" Works']


_words = st.text(min_size=1, max_size=12)
_years = st.none() | st.integers(1800, 1999)
_names = st.lists(
    st.builds(
        NameUse, name=_words, used_by=st.none() | st.just("collectors"), from_year=_years, source=st.none() | _words
    ),
    max_size=4,
).map(tuple)
_relations = st.lists(
    st.builds(LineRelation, relation=st.sampled_from(["same_shape", "made_for"]), other=_words), max_size=3
).map(tuple)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(names=_names, relations=_relations, first=_years, remark=st.none() | _words, which=st.sampled_from([0, 1]))
def test_whatever_is_typed_is_read_back_and_touches_no_other_entry(
    folder: Path, names: tuple[NameUse, ...], relations: tuple[LineRelation, ...], first: int | None,
    remark: str | None, which: int,
) -> None:  # fmt: skip
    before = load_authorities(folder).lines
    wanted = before[which].model_copy(
        update={"names": names, "relations": relations, "first_year": first, "remark": remark}
    )
    change_entry(folder, "lines", wanted)
    after = load_authorities(folder).lines
    assert after[which] == wanted
    assert after[1 - which] == before[1 - which]
