"""The authority files to rows of the tables lines, line_names, line_relations, makers and retailers."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict

from adminer.names.authority import Authorities, LineEntry
from adminer.names.matching import fold_name
from adminer.names.objects import SeenObject
from adminer.store.rows import Rows


def authority_rows(authorities: Authorities) -> Rows:
    """Turn authority entries into rows; the preferred name of a line is one of its names."""
    rows: Rows = {"lines": [], "line_names": [], "line_relations": [], "makers": [], "retailers": []}
    for line in authorities.lines:
        rows["lines"].append(
            {
                "line_id": line.id,
                "line": line.name,
                "maker_id": line.maker,
                "first_year": line.first_year,
                "last_year": line.last_year,
                "shape": line.shape,
                "decal": line.decal,
            }
        )
        rows["line_names"] += _names(line)
        rows["line_relations"] += [
            {"line_id": line.id, "relation": found.relation, "other_id": found.other, "source": found.source}
            for found in line.relations
        ]
    rows["makers"] = [{"maker_id": maker.id, "maker": maker.name, "kind": maker.kind} for maker in authorities.makers]
    rows["retailers"] = [
        {"retailer_id": shop.id, "retailer": shop.name, "kind": shop.kind} for shop in authorities.retailers
    ]
    return rows


def _names(line: LineEntry) -> list[dict[str, object]]:
    preferred: dict[str, object] = {"line_id": line.id, "name": line.name}
    return [preferred] + [
        {
            "line_id": line.id,
            "name": use.name,
            "used_by": use.used_by,
            "used_by_id": use.used_by_id,
            "from_year": use.from_year,
            "to_year": use.to_year,
            "source": use.source,
        }
        for use in line.names
    ]


def object_rows(objects: Iterable[SeenObject], authorities: Authorities) -> Rows:
    """Turn pieces in the hand into rows of the table objects; a line may be given by id or by any of its names."""
    by_name = {
        fold_name(use): line.id for line in authorities.lines for use in (line.name, *(n.name for n in line.names))
    }
    known = {line.id for line in authorities.lines}
    rows: list[dict[str, object]] = []
    for seen in objects:
        row: dict[str, object] = asdict(seen)
        line = row.pop("line")
        row["line_id"] = line if line in known else by_name.get(fold_name(str(line))) if line else None
        rows.append(row)
    return {"objects": rows}
