"""Everything known of one clipping, advert or offer, and the piece of the scan that proves it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import cv2
import duckdb

from adminer.engine.folder import ClippingsFolder
from adminer.errors import UsageError, machine_error
from adminer.intake.scans import open_leaf
from adminer.records import Box
from adminer.store.plain import clean, shown
from adminer.store.queries import open_readonly

_MARGIN = 12  # pixels of paper around a crop
_MARK = (176, 32, 32)  # RGB of the frames around prices


@dataclass(frozen=True, slots=True)
class Shown:
    """Hold a description in lines, and where its picture lies."""

    name: str
    lines: tuple[str, ...]
    file: str
    leaf: int
    box: Box | None  # None: the whole picture
    marks: tuple[Box, ...]


def describe(database: Path, what: str) -> Shown:
    """Describe the clipping, advert or offer of this id, or the clipping of this file.

    Raises UsageError where there is none.
    """
    with open_readonly(database) as connection:
        for table, key, tell in (("offers", "offer_id", _offer), ("adverts", "advert_id", _advert)):
            if _rows(connection, f"SELECT 1 AS one FROM {table} WHERE {key} = $what", what):  # noqa: S608 - fixed names
                return tell(connection, what)
        found = _rows(
            connection,
            "SELECT clipping_id FROM clippings WHERE clipping_id = $what OR file = $what ORDER BY leaf LIMIT 1",
            what,
        )
        if found:
            return _clipping(connection, found[0]["clipping_id"])
    raise UsageError(
        f"there is no clipping, advert or offer '{what}'",
        remedy="take an id from an answer of adminer ask, or the name of a scan as in notes.csv",
    )


def write_crop(folder: ClippingsFolder, found: Shown, out: Path | None = None) -> Path:
    """Write the piece of the scan as a PNG with its prices framed; returns the file.

    Raises ScanError where the scan is gone, MachineError where the disk refuses.
    """
    page = open_leaf(folder.scans / found.file, found.file, found.leaf)
    pixels = page.pixels if page.pixels.ndim == 3 else cv2.cvtColor(page.pixels, cv2.COLOR_GRAY2RGB)
    pixels = pixels.copy()
    height, width = pixels.shape[:2]
    for mark in found.marks:
        cv2.rectangle(pixels, (mark.x - 2, mark.y - 2), (mark.right + 1, mark.bottom + 1), _MARK, 2)
    if found.box is not None:
        left, top = max(0, found.box.x - _MARGIN), max(0, found.box.y - _MARGIN)
        right, bottom = min(width, found.box.right + _MARGIN), min(height, found.box.bottom + _MARGIN)
        pixels = pixels[top:bottom, left:right]
    target = out or Path(f"{found.name}.png")
    done, data = cv2.imencode(".png", cv2.cvtColor(pixels, cv2.COLOR_RGB2BGR))
    if not done:
        raise UsageError(f"the box of {found.name} lies outside the scan", remedy="show its clipping instead")
    try:
        target.write_bytes(data.tobytes())
    except OSError as fault:
        raise machine_error(fault, target) from None
    return target


def _clipping(connection: duckdb.DuckDBPyConnection, clipping_id: str) -> Shown:
    row = _rows(connection, "SELECT * FROM clippings WHERE clipping_id = $what", clipping_id)[0]
    lines = [f"Clipping {clipping_id}: {row['file']}" + (f", page {row['leaf']}" if row["leaf"] > 1 else "")]
    lines.append(f"  {row['width']} x {row['height']} pixels, read as {row['kind']}, sha256 {row['sha256']}")
    for name in ("publication", "published", "city", "state", "page", "found_in", "rights", "remark", "continues"):
        if row[name]:
            lines.append(f"  {name.replace('_', ' ')}: {clean(row[name])}")
    adverts = _rows(
        connection,
        "SELECT advert_id FROM adverts WHERE clipping_id = $what ORDER BY y, x, advert_id",
        clipping_id,
    )
    for advert in adverts:
        lines += _advert_lines(connection, advert["advert_id"])
    lines += ["Words:", *_text(connection, "clipping_id = $what", clipping_id)]
    return Shown(clipping_id, tuple(lines), row["file"], row["leaf"], None, _price_boxes(connection, clipping_id))


def _advert(connection: duckdb.DuckDBPyConnection, advert_id: str) -> Shown:
    row = _rows(
        connection, "SELECT * FROM adverts JOIN clippings USING (clipping_id) WHERE advert_id = $what", advert_id
    )[0]
    lines = [*_advert_lines(connection, advert_id), "Words:", *_text(connection, "advert_id = $what", advert_id)]
    return Shown(advert_id, tuple(lines), row["file"], row["leaf"], _box(row), _price_boxes(connection, advert_id))


def _offer(connection: duckdb.DuckDBPyConnection, offer_id: str) -> Shown:
    row = _rows(
        connection,
        "SELECT c.file, c.leaf, c.clipping_id, o.* FROM offers o JOIN adverts a USING (advert_id) "
        "JOIN clippings c USING (clipping_id) WHERE offer_id = $what",
        offer_id,
    )[0]
    box = _box(row)
    lines = [*_offer_lines(connection, row), f"  on the scan: {row['file']}, box {box.x},{box.y},{box.w},{box.h}"]
    where = "clipping_id = $clip AND x + w / 2 BETWEEN $l AND $r AND y + h / 2 BETWEEN $t AND $b"
    values = {"clip": row["clipping_id"], "l": box.x, "r": box.right, "t": box.y, "b": box.bottom}
    lines += ["Words:", *_text(connection, where, values)]
    return Shown(offer_id, tuple(lines), row["file"], row["leaf"], box, _price_boxes(connection, offer_id))


def _advert_lines(connection: duckdb.DuckDBPyConnection, advert_id: str) -> list[str]:
    row = _rows(connection, "SELECT * FROM adverts WHERE advert_id = $what", advert_id)[0]
    dated = (
        f"{shown(row['valid_from'])} to {shown(row['valid_to'])} ({row['dated_by']})" if row["dated_by"] else "undated"
    )
    head = ", ".join(clean(part) for part in (row["retailer"] or "shop not read", row["city"], dated) if part)
    lines = [f"Advert {advert_id}: {head}"]
    for found in _rows(connection, "SELECT * FROM dates_read WHERE advert_id = $what", advert_id):
        lines.append(f"  date: {clean(found['text'])} ({found['kind']}, {found['edtf'] or 'year not known'})")
    for found in _rows(connection, "SELECT * FROM conditions WHERE advert_id = $what AND offer_id IS NULL", advert_id):
        lines.append(f"  {found['kind']}: {clean(found['text'])}")
    for offer in _rows(connection, "SELECT * FROM offers WHERE advert_id = $what ORDER BY y, x, offer_id", advert_id):
        lines += ["  " + line for line in _offer_lines(connection, offer)]
    return lines


def _offer_lines(connection: duckdb.DuckDBPyConnection, row: dict[str, Any]) -> list[str]:
    lines = [
        f"Offer {row['offer_id']}: {clean(row['item'] or '')} ({row['status']}, confidence {shown(row['confidence'])})"
    ]
    for name in ("line", "maker", "piece_or_set", "pieces", "composition", "composition_check", "line_warning"):
        if row[name] is not None:
            lines.append(f"  {name.replace('_', ' ')}: {clean(shown(row[name]))}")
    for price in _rows(connection, "SELECT * FROM prices WHERE offer_id = $what ORDER BY price_id", row["offer_id"]):
        per = "" if price["per_quantity"] in (None, 1) else f" for {price['per_quantity'].normalize():f}"
        part = price["per_unit"] and 0 < (price["per_quantity"] or 1) < 1  # a quarter of a pound
        unit = {None: "", "each": " each"}.get(price["per_unit"], f" {'' if part else 'a '}{price['per_unit']}")
        words = f", {clean(price['condition_text'])}" if price["condition_text"] else ""
        who = price["condition"].replace("_", " ")
        lines.append(
            f"  price: {price['amount']} {price['currency']}{per}{unit}, {who}{words}; "
            f"printed '{clean(price['text'])}' ({price['form']}, {price['role']}), "
            f"box {price['x']},{price['y']},{price['w']},{price['h']}, confidence {shown(price['confidence'])}"
        )
    for found in _rows(connection, "SELECT * FROM conditions WHERE offer_id = $what", row["offer_id"]):
        lines.append(f"  {found['kind']}: {clean(found['text'])}")
    if row["line_why"]:
        lines.append(f"  line because: {clean(row['line_why'])}")
    return [*lines, f"  why: {clean(row['why'] or 'not said')}"]


def _text(connection: duckdb.DuckDBPyConnection, where: str, values: Any) -> list[str]:
    sql = (
        f"SELECT line_no, string_agg(text, ' ' ORDER BY word_no) AS text FROM words WHERE {where} GROUP BY 1 ORDER BY 1"  # noqa: S608 - conditions from this file
    )
    return [f"  {clean(row['text'])}" for row in _rows(connection, sql, values)]


def _price_boxes(connection: duckdb.DuckDBPyConnection, what: str) -> tuple[Box, ...]:
    rows = _rows(
        connection,
        "SELECT p.x, p.y, p.w, p.h FROM prices p JOIN offers o USING (offer_id) JOIN adverts a USING (advert_id) "
        "WHERE $what IN (o.offer_id, a.advert_id, a.clipping_id)",
        what,
    )
    return tuple(_box(row) for row in rows)


def _box(row: dict[str, Any]) -> Box:
    return Box(row["x"], row["y"], row["w"], row["h"])


def _rows(connection: duckdb.DuckDBPyConnection, sql: str, values: Any) -> list[dict[str, Any]]:
    given = values if isinstance(values, dict) else {"what": values}
    found: list[dict[str, Any]] = connection.sql(sql, params=given).to_arrow_table().to_pylist()
    return found
