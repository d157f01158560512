"""Calibrate the dating on fresh adverts of the press whose dates are hidden; prints coverage and widths.

    python -m tests.benchmarks.dating_calibration --adverts 500 --seed 1 --misread 0.02

The press takes its staple prices from the published averages with spreads of its own and prints the signs of the years
itself. Adverts go the whole way from words to the database, then to the dating, without a year in notes or print. Two
letters and figures in a hundred are misread, as the display reader does on clean scans. With `--noted 0.5` half as many
more adverts carry a noted day, so that sightings and prices of dated adverts are evidence, too.
"""

from __future__ import annotations

import argparse
import json
import tempfile
from collections import Counter
from datetime import date
from pathlib import Path

from adminer.dating.calibration import Calibration, calibrate, calibrate_kinds
from adminer.dating.estimate import DateEstimate, estimate_adverts
from adminer.dating.evidence.base import Case
from adminer.names.authority import load_authorities
from adminer.parsing import parse_page
from adminer.records import Advert, Clipping, Note, PageReading, ParsedPage
from adminer.store.dating_rows import read_cases, read_context
from adminer.store.load import build_database
from adminer.store.queries import open_readonly

YEARS = (1938, 1964)  # what the owner of such a file would write into clippings.toml


def hidden_adverts(
    adverts: int, seed: int, misread: float, noted: float = 0.0
) -> tuple[list[DateEstimate], list[Case], dict[str, date]]:
    """Return estimates, cases and true days of a story's adverts, dated with nothing but what is printed.

    With `noted` so many more adverts of the story, as a share of `adverts`, carry the owner's note of their day; they
    inform the others and are not judged.
    """
    from corpus_demo.press.text_only import load_readings, write_text_only  # the press is no part of the package

    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        write_text_only(seed, round(adverts * (1 + noted)), folder, hide_dates=True, misread=misread)
        authorities = load_authorities(folder / "names")
        rows = [json.loads(line) for line in (folder / "truth.jsonl").read_text(encoding="utf-8").splitlines()]
        pages, days = [], {}
        for number, (reading, row) in enumerate(zip(load_readings(folder / "readings.jsonl"), rows, strict=True)):
            clipping_id = reading.clipping_id or f"{number:016x}"
            day = date.fromisoformat(row["true_date"])
            notes = (Note(row["file"], published=str(day)),) if number >= adverts else ()
            if not notes:
                days[clipping_id] = day
            clipping = Clipping(clipping_id, row["file"], "", 1, reading.width, reading.height, reading.recipe, notes)
            found = parse_page(reading, authorities, notes)
            pages.append(ParsedPage(clipping, reading, found, _homes(reading, found)))
        database = folder / "c.duckdb"
        build_database(database, pages)
        with open_readonly(database) as connection:
            cases = read_cases(connection)
            context = read_context(connection, cases, authorities)
    truth = {case.advert_id: days[case.clipping_id] for case in cases if case.clipping_id in days}
    judged = [found for found in estimate_adverts(cases, context, years=YEARS) if found.advert_id in truth]
    return judged, [case for case in cases if case.advert_id in truth], truth


def _homes(reading: PageReading, adverts: tuple[Advert, ...]) -> tuple[str | None, ...]:
    return tuple(
        next((advert.advert_id for advert in adverts if advert.box.holds(*word.box.centre)), None)
        for word in reading.words
    )


def told(found: Calibration, estimates: list[DateEstimate], truth: dict[str, date]) -> str:
    """Return the calibration as text: coverage, widths, which evidence led where it missed, and each kind by itself."""
    lines = [
        f"adverts                         {found.adverts}",
        f"90 % sets that hold the truth   {found.held_90:.1%}   (promised: 85 to 95 %)",
        f"the months of these sets sum to  {found.stated_90:.1%}",
        f"50 % sets that hold the truth   {found.held_50:.1%}",
        f"the months of these sets sum to  {found.stated_50:.1%}",
        f"median width of the 90 % sets   {found.median_months_90:.0f} months",
        f"median width of the 50 % sets   {found.median_months_50:.0f} months",
        f"median error of the median      {found.median_error_months:.0f} months",
    ]
    missed = set(found.missed)
    lead = Counter(e.evidence[0].clue.kind if e.evidence else "none" for e in estimates)
    wrong = Counter(e.evidence[0].clue.kind if e.evidence else "none" for e in estimates if e.advert_id in missed)
    lines += ["", "strongest evidence              adverts  missed"]
    lines += [f"{kind:<32}{count:>7}{wrong[kind]:>8}" for kind, count in lead.most_common()]
    lines += [
        "",
        "kind of evidence                adverts  held  stated  bits gained  best weight (below 1: says too much)",
    ]
    lines += [
        f"{one.kind:<32}{one.adverts:>7}{one.held_90:>6.0%}{one.stated_90:>8.0%}{one.gain:>13.2f}{one.best_weight:>13g}"
        for one in calibrate_kinds(estimates, truth, YEARS)
    ]
    return "\n".join(lines)


def main() -> None:
    """Print the calibration of the number of adverts asked for."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--adverts", type=int, default=500)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--misread", type=float, default=0.02)
    parser.add_argument("--noted", type=float, default=0.0, help="more adverts with a noted day, as a share")
    asked = parser.parse_args()
    estimates, _, truth = hidden_adverts(asked.adverts, asked.seed, asked.misread, asked.noted)
    print(told(calibrate(estimates, truth), estimates, truth))


if __name__ == "__main__":
    main()
