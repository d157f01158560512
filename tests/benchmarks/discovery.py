"""Print how many names of lines are discovered, and how many proposals are names, when the authority file starts empty.

    python -m tests.benchmarks.discovery demo-clippings

Reads the kept readings of a digitised demo again without any authority file. Wanted are the lines of the truth; a
proposal is right where it is one of their names, or a design of a trade catalogue's row, which needs no entry.
"""

from __future__ import annotations

import argparse
import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from adminer.names.authority import Authorities, load_authorities
from adminer.names.matching import fold_name
from adminer.names.proposals import propose, sightings_of
from adminer.parsing import parse_page
from adminer.records import PageReading
from adminer.score.truth import read_truth
from adminer.store.readings import SUFFIX, load_reading, older_reading

_DESIGN = re.compile(r"[A-Z][A-Za-z'’]+(?: (?:& )?[A-Z][A-Za-z'’]+)*")


@dataclass(frozen=True, slots=True)
class Discovery:
    """Hold the names wanted, those proposed, and those of the proposals that are names."""

    wanted: frozenset[str]
    proposed: frozenset[str]
    right: frozenset[str]

    @property
    def recall(self) -> float:
        """Return the share of wanted names that were proposed."""
        return len(self.wanted & self.proposed) / len(self.wanted)

    @property
    def precision(self) -> float:
        """Return the share of proposals that are names."""
        return len(self.right) / len(self.proposed)


def discover(folder: Path) -> Discovery:
    """Propose names from a folder's newest readings as if it had no authority files, and judge them by its truth."""
    empty = Authorities()
    adverts = [advert for reading in readings_of(folder) for advert in parse_page(reading, empty)]
    proposed = frozenset(fold_name(p.name) for p in propose(sightings_of(adverts), empty) if p.kind == "line")
    wanted = frozenset(
        fold_name(name.text)
        for page in read_truth(folder / "truth.jsonl")
        if page.readable
        for name in page.lines or ()
        if name.line_id
    )
    lines = load_authorities(folder / "names").lines
    names = {fold_name(use) for line in lines for use in (line.name, *(n.name for n in line.names))}
    return Discovery(wanted, proposed, proposed & (names | designs_of(folder / "truth.jsonl")))


def designs_of(truth: Path) -> set[str]:
    """Return the names at the head of the rows of trade catalogues, folded."""
    rows = [json.loads(line) for line in truth.read_text(encoding="utf-8").splitlines()]
    items = [price["item_text"] for row in rows if row["ad_type"] == "trade catalogue" for price in row["prices"]]
    return {fold_name(found[0]) for item in items if (found := _DESIGN.match(item))}


def readings_of(folder: Path) -> Iterator[PageReading]:
    """Yield the newest kept reading of each page of a folder."""
    kept_in = folder / ".readings"
    for clipping_id in sorted({path.name.split(".")[0] for path in kept_in.glob(f"*{SUFFIX}")}):
        path = older_reading(kept_in, clipping_id)
        kept = load_reading(path) if path else None
        if kept is not None and kept.reading is not None:
            yield kept.reading


def main() -> None:
    """Print recall and precision, what was missed, and what is no name."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path, help="a digitised demo")
    found = discover(parser.parse_args().folder)
    print(f"names wanted    {len(found.wanted):4}   recall     {found.recall:.2f}")
    print(f"proposals       {len(found.proposed):4}   precision  {found.precision:.2f}")
    print(f"not proposed    {', '.join(sorted(found.wanted - found.proposed)) or '-'}")
    print(f"no names        {', '.join(sorted(found.proposed - found.right)) or '-'}")


if __name__ == "__main__":
    main()
