"""How long the desk's server takes for each page: on a small file, and on one of 100,000 adverts without pictures.

Run: python -m tests.benchmarks.desk [--adverts 100000]. Prints milliseconds a page: the first view, the median of
five more, and the processor time of both, which a busy machine does not stretch. The targets are 300 ms for a view and
500 ms for one with a scan; a picture inside a page, which comes after it, may take a second. OVER is a page that takes
more processor time than its target, busy one that was late only because other work had the processors. A first view is
counted once what the desk makes ahead is made: for a new database, and, while the list of clippings is read, the
picture of the scan it leads to. How long that takes unprepared is printed at the end, and how busy the machine was.
"""

from __future__ import annotations

import argparse
import os
import shutil
import statistics
import sys
import tempfile
import time
from pathlib import Path

import cv2
import duckdb
import numpy as np
from starlette.testclient import TestClient

from adminer.desk.pictures import Pictures
from adminer.records import Box
from tests.desk.desks import small_desk
from tests.desk.pages import CLIPPING, offer, page

RUN = "/look/run?line=Line+7"
PAGES = (
    ("/", 300),
    ("/in", 300),
    ("/check", 300),
    (f"/check/{CLIPPING}", 500),
    (f"/scan/{CLIPPING}/overview.jpg", 500),
    (f"/scan/{CLIPPING}/tile/0/0/0.jpg", 500),
    ("/names", 300),
    ("/ask", 300),
    ("/ask/set-prices", 300),
    ("/ask/line-history?line=Line+7", 300),
    ("/search?q=saucer", 300),
    ("/search?q=saucor+coupe", 300),
    ("/ask/set-prices/picture.svg", 1000),
    ("/look/runs", 300),
    (RUN, 300),
    (RUN.replace("run?", "run.svg?"), 1000),
    ("/look/prices", 300),
    ("/look/prices?line=Line+7", 300),
    ("/look/prices.svg?line=Line+7", 1000),
    ("/look/weeks", 300),
    ("/look/weeks?line=Line+7&year=1950", 300),
    ("/look/coverage", 300),
    ("/look/dates", 300),
    (f"/look/dates/{CLIPPING}-a1", 300),
    ("/look/searches", 300),
    ("/look/searches?line=Line+7", 300),
    ("/look/objects", 300),
    ("/names/lines/line_7", 300),
    ("/journal", 300),
)
SEARCHES = 2000  # rows of the search log
LOOK = 2.0  # seconds a person looks at the list before opening the first clipping
_FILL = """
    INSERT INTO clippings BY NAME SELECT printf('%016x', i) AS clipping_id, 'scan-' || i || '.png' AS file, 1 AS leaf,
        600 AS width, 1200 AS height, 'Paper ' || (i % 40) AS publication, 'Town ' || (i % 25) AS city,
        (DATE '1938-01-03' + (i * 7 % 9000)::INTEGER)::VARCHAR AS published,
        DATE '1938-01-03' + (i * 7 % 9000)::INTEGER AS published_from,
        DATE '1938-01-03' + (i * 7 % 9000)::INTEGER AS published_to
        FROM range(1, $n + 1) r(i);
    INSERT INTO adverts BY NAME SELECT clipping_id || '-a1' AS advert_id, clipping_id, 10 AS x, 10 AS y, 500 AS w,
        900 AS h, 'shop' || (hash(file) % 60) AS retailer_id, 'Shop ' || (hash(file) % 60) AS retailer, city,
        CASE WHEN hash(file) % 4 > 0 THEN published_from END AS valid_from, published_to + 2 AS valid_to,
        0.8 AS confidence FROM clippings WHERE file ^@ 'scan-';
    INSERT INTO offers BY NAME SELECT a.advert_id || '-o' || k AS offer_id, a.advert_id, 'l' || (hash(a.advert_id) % 90)
        AS line_id, 'Line ' || (hash(a.advert_id) % 90) AS line, 'item ' || k AS item,
        ['cup', 'saucer', 'dinner_plate', 'set:16'][k] AS piece_or_set, 1 AS pieces, 20 AS x, 100 * k AS y, 300 AS w,
        60 AS h, (hash(a.advert_id || k) % 100) / 100 AS confidence, 'read' AS status
        FROM adverts a, range(1, 5) r(k) WHERE a.retailer_id ^@ 'shop';
    INSERT INTO prices BY NAME SELECT offer_id || '-p' || c AS price_id, offer_id,
        -- a piece of a line has few prices, as in life
        (10 + hash(line_id, piece_or_set) % 300 + 10 * (hash(offer_id) % 3)) / 100 + c / 2
        AS amount, 'USD' AS currency, 1 AS per_quantity, ['cardholder', 'without_card'][c] AS condition, 20 AS x, y,
        60 AS w, 20 AS h, 0.9 AS confidence, 'price' AS role
        FROM offers, range(1, 3) r(c) WHERE line_id ^@ 'l';
    INSERT INTO sightings BY NAME SELECT advert_id || line_id AS sighting_id, line_id, line, retailer_id, retailer,
        city, advert_id, clipping_id, valid_from AS seen_from, valid_to AS seen_to, date_trunc('week', valid_from)::DATE
        AS week_start FROM (SELECT DISTINCT line_id, line, a.* FROM offers JOIN adverts a USING (advert_id));
    INSERT INTO words BY NAME SELECT clipping_id, clipping_id || '-a1' AS advert_id, k AS word_no,
        CASE WHEN hash(clipping_id, k) % 9 = 0 THEN 'saucer' WHEN hash(clipping_id, k) % 50 = 1 THEN 'coupe'
            ELSE 'word' || (hash(clipping_id, k) % 50000) END AS text,
        10 AS x, 10 * k AS y, 50 AS w, 12 AS h, 0.9 AS confidence, k // 5 AS line_no
        FROM clippings, range(1, $words + 1) r(k) WHERE file ^@ 'scan-';
"""


def fill(database: Path, adverts: int, words: int) -> None:
    """Put a database with made-up adverts in the place of a small one, by SQL alone."""
    filled = database.with_name("filled.duckdb")
    shutil.copy(database, filled)
    with duckdb.connect(str(filled)) as connection:
        for statement in _FILL.split(";\n"):
            if statement.strip():
                needed = {k: v for k, v in {"n": adverts, "words": words}.items() if f"${k}" in statement}
                connection.execute(statement, needed)
        connection.execute("CHECKPOINT")
    filled.replace(database)


def measure(client: TestClient, path: str) -> tuple[float, float, float, float]:
    """Return the milliseconds of the first answer and the median of five more, and the processor's share of both."""
    spent, worked = [], []
    for _ in range(6):
        begun, began = time.perf_counter(), time.process_time()
        answer = client.get(path)
        spent.append((time.perf_counter() - begun) * 1000)
        worked.append((time.process_time() - began) * 1000)
        if answer.status_code != 200:
            raise SystemExit(f"{path}: {answer.status_code} {answer.text[:300]}")
    return spent[0], statistics.median(spent[1:]), worked[0], statistics.median(worked[1:])


def main() -> int:
    """Print the table; exit code 1 where a page is over its target."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--adverts", type=int, default=100_000)
    parser.add_argument("--words", type=int, default=100, help="words an advert")
    options = parser.parse_args()
    over = 0
    offers = tuple(offer(n + 1, f"piece number {n}", f"{n % 9}.39", y=60 + 50 * n) for n in range(40))
    with tempfile.TemporaryDirectory() as place:
        small = small_desk(Path(place), [page(offers, height=2400)])
        folder = small.desk.folder
        folder.names.mkdir(exist_ok=True)
        (folder.names / "lines.toml").write_text('[[line]]\nid = "line_7"\nname = "Line 7"\n', encoding="utf-8")
        looked = [f"Paper {n % 40},{1938 + n % 24}-0{1 + n % 9},Line {n % 90},no" for n in range(SEARCHES)]
        (folder.root / "searches.csv").write_text("\n".join(["paper,issues,line,found", *looked]), encoding="utf-8")
        # the scan of the file has 60 million pixels, as a page of newspaper at 400 dpi has
        grain = np.random.default_rng(1).integers(120, 240, (9300, 6500), dtype=np.uint8)
        cv2.imwrite(str(small.desk.folder.scans / f"{CLIPPING}.png"), cv2.blur(grain, (3, 3)))
        for adverts in (0, options.adverts):
            if adverts:
                fill(small.desk.folder.database, adverts, options.words)
            client = small.client()
            begun = time.perf_counter()
            while adverts and not small.desk.shelf.settled:
                client.get("/")
                time.sleep(0.2)
            if adverts:
                print(
                    f"\nwhat is made ahead for a new database: {time.perf_counter() - begun:.1f} s, in the background"
                )
            print(f"\n{adverts or 1} adverts", "page", "first", "median", "first p.", "median p.", "target", sep="\t")
            for path, target in PAGES:
                if not adverts and (path == RUN or ".svg" in path):
                    continue  # the small file has no run, and no days to draw
                if path == f"/check/{CLIPPING}":
                    time.sleep(LOOK)
                first, median, worked_first, worked = measure(client, path)
                # a machine busy with other work stretches the time, not the work
                late, hard = max(first, median) > target, max(worked_first, worked) > target
                over += late and hard
                verdict = " OVER" if late and hard else " busy" if late else ""
                told = (
                    f"{first:.0f}",
                    f"{median:.0f}",
                    f"{worked_first:.0f}",
                    f"{worked:.0f}",
                    f"{target}{verdict}",
                )
                print("", path, *told, sep="\t")
        print(f"\nthe scan: {small.desk.pictures.size(CLIPPING)} pixels; a crop of it:", end=" ")
        begun = time.perf_counter()
        small.desk.pictures.crop(CLIPPING, Box(100, 100, 900, 300))
        print(f"{(time.perf_counter() - begun) * 1000:.0f} ms")
        begun = time.perf_counter()
        Pictures(small.desk.pictures.load).overview(CLIPPING)
        print(f"its picture where nothing was prepared: {(time.perf_counter() - begun) * 1000:.0f} ms")
        print(f"load of the machine: {os.getloadavg()[0]:.1f} on {os.cpu_count()} processors")
        small.desk.journal.close()
    return 1 if over else 0


if __name__ == "__main__":
    sys.exit(main())
