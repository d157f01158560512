"""Write data/consumer_prices.csv from the `cpi` package, a tool for developers only.

    python -m adminer.dating.make_price_tables

Its data: U.S. Bureau of Labor Statistics, consumer price index for all urban consumers, U.S. city average, not
seasonally adjusted; public domain. The database inside the package is opened directly and read-only, because
importing the package warns of its age and may ask the network for a newer one.
"""

from __future__ import annotations

import csv
import importlib.util
import io
import sqlite3
from pathlib import Path
from typing import Final

from adminer.errors import MachineError

# our name -> series without its prefix CUUR0000; all items to the latest month, the rest to the end of the study
SERIES: Final = {
    "all_items": "SA0",
    "food": "SAF1",
    "bread": "SS02011",
    "bacon": "SS04011",
    "butter": "SS10011",
    "milk": "SS09011",
    "coffee": "SS17031",
    "oranges": "SS11031",
    "margarine": "SS16011",
    "potatoes": "SEFL01",
    "pork_chops": "SEFD03",
    "apples": "SEFK01",
    "bananas": "SEFK02",
    "lettuce": "SEFL02",
    "eggs": "SEFH",
    "beef": "SEFC",
    "poultry": "SEFF",
    "whole_chicken": "SS06011",
    "sugar_and_sweets": "SEFR",
    "ground_beef": "SEFC01",
    "frankfurters": "SS05011",
    "tomatoes": "SEFL03",
}
FIRST_YEAR, LAST_ITEM_YEAR = 1913, 1980
TABLE: Final = Path(__file__).parent / "data" / "consumer_prices.csv"


def table_text() -> str:
    """Return the CSV: year, month, one column a series (1982-84 = 100), empty where not published."""
    spec = importlib.util.find_spec("cpi")
    if spec is None or spec.origin is None:
        raise MachineError("the package 'cpi' is not installed", remedy="install the development packages")
    source = Path(spec.origin).parent / "cpi.db"
    values: dict[tuple[int, int], dict[str, float]] = {}
    connection = sqlite3.connect(f"file:{source}?mode=ro", uri=True)
    try:
        for name, code in SERIES.items():
            rows = connection.execute(
                "SELECT year, period, value FROM indexes WHERE series = ? AND period BETWEEN 'M01' AND 'M12'",
                (f"CUUR0000{code}",),
            )
            for year, period, value in rows:
                if year >= FIRST_YEAR and (name == "all_items" or year <= LAST_ITEM_YEAR):
                    values.setdefault((year, int(period[1:])), {})[name] = value
    finally:
        connection.close()
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["year", "month", *SERIES])
    for (year, month), row in sorted(values.items()):
        writer.writerow([year, month, *(f"{row[n]:g}" if n in row else "" for n in SERIES)])
    return out.getvalue()


if __name__ == "__main__":
    TABLE.write_text(table_text(), encoding="utf-8")
