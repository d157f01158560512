"""notes.csv as spreadsheets write it: encodings, separators, quotation marks, and rows that are broken."""

from __future__ import annotations

import csv
import io
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from adminer.errors import FolderError
from adminer.intake.notes import read_notes, same_name

HEADER = "file,publication,published,city,found in,rights,remark\n"


def write(path: Path, text: str, encoding: str = "utf-8") -> Path:
    path.write_bytes(text.encode(encoding))
    return path


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
@pytest.mark.parametrize("separator", [",", ";", "\t"])
@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
def test_every_usual_encoding_and_separator_gives_the_same_notes(
    tmp_path: Path, encoding: str, separator: str, ending: str
) -> None:
    rows = [["File", "Publication", "Published", "Found in"], ["week 1.png", "Café Courier", "1952-03", "box “A”"]]
    text = ending.join(separator.join(row) for row in rows) + ending
    result = read_notes(write(tmp_path / "notes.csv", text, encoding))
    assert result.problems == ()
    (note,) = result.notes
    assert (note.file, note.publication, note.published, note.found_in) == (
        "week 1.png",
        "Café Courier",
        "1952-03",
        "box “A”",
    )


def test_a_missing_or_empty_file_is_no_notes(tmp_path: Path) -> None:
    assert read_notes(tmp_path / "notes.csv").notes == ()
    assert read_notes(write(tmp_path / "notes.csv", "")).notes == ()


def test_a_broken_row_is_reported_with_its_line_and_the_rest_stays(tmp_path: Path) -> None:
    text = (
        HEADER
        + "a.png,Courier,1952,,,,\n,Courier,1952,,,,\n"
        + 'b.png,"Led"ger,1953,,,,\nc.png,x,1954,,,,,,,surplus\nd.png,,1955,,,,\n'
    )
    result = read_notes(write(tmp_path / "notes.csv", text))
    assert [note.file for note in result.notes] == ["a.png", "d.png"]
    assert [problem.split(":")[0] for problem in result.problems] == [
        "notes.csv, line 3",
        "notes.csv, line 4",
        "notes.csv, line 5",
    ]
    assert "the cell 'file' is empty" in result.problems[0]


def test_a_quotation_mark_left_open_spoils_one_row_only(tmp_path: Path) -> None:
    rows = "".join(f"{number}.png,Courier,1952,,,,\n" for number in range(40))
    result = read_notes(write(tmp_path / "notes.csv", HEADER + 'x.png,"Courier,1952,,,,\n' + rows))
    assert len(result.notes) == 40
    assert len(result.problems) == 1
    assert "line 2" in result.problems[0]


def test_a_remark_may_have_lines_commas_and_quotation_marks(tmp_path: Path) -> None:
    text = HEADER + 'a.png,Courier,1952,,,,"torn,\nsays ""FREE"""\nb.png,,,,,,\n'
    result = read_notes(write(tmp_path / "notes.csv", text))
    assert result.problems == ()
    assert result.notes[0].remark == 'torn, says "FREE"'
    assert result.notes[1].file == "b.png"


def test_a_date_that_is_no_edtf_is_left_out_and_said(tmp_path: Path) -> None:
    result = read_notes(write(tmp_path / "notes.csv", HEADER + "a.png,Courier,3/14/1952,Osterby,,,\n"))
    assert result.notes[0].published is None
    assert result.notes[0].city == "Osterby"
    assert "'3/14/1952' is no date in EDTF" in result.problems[0]


def test_a_date_with_a_time_as_databases_export_it_is_a_day(tmp_path: Path) -> None:
    result = read_notes(write(tmp_path / "notes.csv", HEADER + "a.png,Courier,1952-03-14 00:00:00,,,,\n"))
    assert (result.notes[0].published, result.problems) == ("1952-03-14", ())


def test_a_file_without_the_column_file_is_refused_with_the_names_of_columns(tmp_path: Path) -> None:
    with pytest.raises(FolderError, match=r"has no column 'file'.*publication, published"):
        read_notes(write(tmp_path / "notes.csv", "scan,paper\na.png,Courier\n"))


def test_an_unknown_column_is_said_and_passed_over(tmp_path: Path) -> None:
    result = read_notes(write(tmp_path / "notes.csv", "file,mood\na.png,merry\n"))
    assert result.notes[0].file == "a.png"
    assert "column 'mood'" in result.problems[0]


def test_names_of_files_are_compared_in_one_spelling() -> None:
    assert same_name("scans\\1952\\cafe\u0301.png") == "1952/café.png"
    assert same_name(" ./a.png ") == "a.png"


CELLS = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=20)


@settings(deadline=None)  # the machine is shared; a slow example is no failure
@given(st.lists(st.tuples(CELLS.filter(lambda name: same_name(name) != ""), CELLS, CELLS), max_size=8))
def test_what_a_csv_writer_wrote_comes_back(rows: list[tuple[str, str, str]]) -> None:
    stream = io.StringIO()
    csv.writer(stream).writerows([["file", "publication", "remark"], *rows])
    with tempfile.TemporaryDirectory() as folder:
        result = read_notes(write(Path(folder) / "notes.csv", stream.getvalue()))
    assert result.problems == ()
    assert [" ".join((note.publication or "").split()) for note in result.notes] == [
        " ".join(r[1].split()) for r in rows
    ]
