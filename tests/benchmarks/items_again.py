"""What weighing the choices of items again is worth: priced items by the rules alone and with the learned weights.

    python -m tests.benchmarks.items_again --folder ../shared/scans
    python -m tests.benchmarks.items_again --hands

With a folder both parse the same readings in one run. With --hands the weights are learned anew without each hand that
printed adverts for them, and name the prices of that hand. Ratios are to the rules alone. The weights know nothing of
the real scans; the demo is one of the hands.
"""

from __future__ import annotations

import argparse
import tempfile
from pathlib import Path
from unittest import mock

from adminer.parsing import assemble
from adminer.parsing.items.reconsider import best_of
from adminer.score.choices import Judged, load_choices
from adminer.score.measure import score_pages
from adminer.score.run import notes_by_file
from adminer.score.straight import Readings, find_pictures, parse_all, read_all
from adminer.score.truth import TruePage, read_truth
from adminer.score.weigh import fit

FIELD = "priced items"
KEPT = Path("corpus_demo") / "item_choices.npz"
WORKERS = 2


def items_f1(readings: Readings, truth: tuple[TruePage, ...], folder: Path) -> float:
    """Parse readings and return F1 of the priced items."""
    names = folder / "names"
    parsed = parse_all(readings, names if names.is_dir() else None, notes_by_file(folder / "notes.csv"))
    return score_pages(list(parsed), truth).fields[FIELD].f1 or 0.0


def by_hand(judged: list[Judged]) -> None:
    """Print the share of prices named right for each hand, by the rules alone and by weights learned without it."""
    for hand in sorted({one.hand for one in judged}):
        own = [one for one in judged if one.hand == hand]
        weights = fit([one for one in judged if one.hand != hand])
        rules = sum(one.right[0] for one in own) / len(own)
        again = sum(one.right[best_of(one.traits, weights)] for one in own) / len(own)
        print(
            f"hand {hand}: {len(own)} prices, rules alone {rules:.3f}, weights {again:.3f}, ratio {again / rules:.3f}"
        )


def main() -> None:
    """Read, parse twice, print."""
    parser = argparse.ArgumentParser(description="Priced items by the rules alone and with the learned weights.")
    parser.add_argument("--hands", action="store_true")
    parser.add_argument("--folder", type=Path, default=Path("corpus_demo"))
    parser.add_argument("--cache", type=Path, default=Path(tempfile.gettempdir()) / "adminer-items-again")
    asked = parser.parse_args()
    if asked.hands:
        return by_hand(load_choices(KEPT))
    truth = read_truth(asked.folder / "truth.jsonl")
    readings = read_all(find_pictures(asked.folder, [row.file for row in truth]), asked.cache, WORKERS)
    with mock.patch.object(assemble, "reconsidered", lambda _advert, _groups, pairings, *_: pairings):
        rules = items_f1(readings, truth, asked.folder)
    weights = items_f1(readings, truth, asked.folder)
    print(f"{FIELD}: rules alone {rules:.3f}, with weights {weights:.3f}, ratio {weights / rules:.3f}")
    return None


if __name__ == "__main__":
    main()
