"""What weighing items again is worth: prices named right by the rules alone and with the learned weights.

    python -m tests.benchmarks.items_again --folder ../shared/scans
    python -m tests.benchmarks.items_again --hands

With a folder both parse the same readings in one run. With --hands the weights choose among texts judged before, in
adverts that fourteen other makers invented and in the demo: `other_hands.npz` holds the traits of each text and if it
was right, without a word of the adverts, which are not kept. The weights have learned from neither. Ratios are to
the rules alone.
"""

from __future__ import annotations

import argparse
import tempfile
from pathlib import Path
from unittest import mock

import numpy as np

from adminer.parsing import assemble
from adminer.parsing.items.reconsider import best_of, item_weights
from adminer.score.measure import score_pages
from adminer.score.run import notes_by_file
from adminer.score.straight import Readings, find_pictures, parse_all, read_all
from adminer.score.truth import TruePage, read_truth
from adminer.score.weigh import Judged

FIELD = "priced items"
KEPT = Path(__file__).with_name("other_hands.npz")
WORKERS = 2


def other_hands() -> dict[int, list[Judged]]:
    """Read the judged choices of each hand; values come back to the three figures that were kept."""
    with np.load(KEPT) as kept:
        names = [str(name) for name in kept["names"]]
        told = [(names[t], float(v)) for t, v in zip(kept["trait"], kept["value"], strict=True)]
        ends = np.cumsum(kept["held"], dtype=np.int64)
        rows = [dict(told[end - held : end]) for end, held in zip(ends, kept["held"].astype(int), strict=True)]
        right = [float(share) for share in kept["right"]]
        lasts = np.cumsum(kept["texts"], dtype=np.int64)
        hands: dict[int, list[Judged]] = {}
        for last, count, hand in zip(lasts, kept["texts"].astype(int), kept["hand"].astype(int), strict=True):
            judged = Judged(tuple(rows[last - count : last]), tuple(right[last - count : last]), 1.0)
            hands.setdefault(hand, []).append(judged)
    return hands


def shares(judged: list[Judged]) -> tuple[float, float]:
    """Return the share of prices named right by the rules and by the learned weights."""
    weights = item_weights()
    rules = sum(one.right[0] for one in judged) / len(judged)
    return rules, sum(one.right[best_of(one.traits, weights)] for one in judged) / len(judged)


def items_f1(readings: Readings, truth: tuple[TruePage, ...], folder: Path) -> float:
    """Parse readings and return F1 of the priced items."""
    names = folder / "names"
    parsed = parse_all(readings, names if names.is_dir() else None, notes_by_file(folder / "notes.csv"))
    return score_pages(list(parsed), truth).fields[FIELD].f1 or 0.0


def main() -> None:
    """Read, parse twice, print."""
    parser = argparse.ArgumentParser(description="Priced items by the rules alone and with the learned weights.")
    parser.add_argument("--hands", action="store_true")
    parser.add_argument("--folder", type=Path, default=Path("corpus_demo"))
    parser.add_argument("--cache", type=Path, default=Path(tempfile.gettempdir()) / "adminer-items-again")
    asked = parser.parse_args()
    if asked.hands:
        for hand, judged in other_hands().items():
            rules, again = shares(judged)
            figures = f"rules alone {rules:.3f}, weights {again:.3f}, ratio {again / rules:.3f}"
            print(f"hand {hand}: {len(judged)} prices, {figures}")
        return
    truth = read_truth(asked.folder / "truth.jsonl")
    readings = read_all(find_pictures(asked.folder, [row.file for row in truth]), asked.cache, WORKERS)
    with mock.patch.object(assemble, "reconsidered", lambda _advert, _groups, pairings, *_: pairings):
        before = items_f1(readings, truth, asked.folder)
    after = items_f1(readings, truth, asked.folder)
    print(f"{FIELD}: rules alone {before:.3f}, with weights {after:.3f}, ratio {after / before:.3f}")


if __name__ == "__main__":
    main()
