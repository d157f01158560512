"""Take back what an act changed in a file of its own, and bring it back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from adminer.desk.evidence_file import remove_entry, restore_entry
from adminer.desk.row_files import ROW_FILES, turn_row
from adminer.desk.text_change import turn_change
from adminer.engine.folder import ClippingsFolder
from adminer.intake.notes_edit import change_notes
from adminer.store.journal import Act, active


def turn_act(folder: ClippingsFolder, acts: Sequence[Act], act: Act) -> None:
    """Take back what an act changed in a file of its own, or bring it back where the act is an undo.

    Raises FolderError where the file has changed at that place since, MachineError where the disk refuses.
    """
    by_id = {each.id: each for each in acts}
    root = act
    while root.undoes in by_id:
        root = by_id[root.undoes]
    stands = _stands(root, acts)
    if stands == _stands(root, [*acts, replace(act, id="", act="undo", undoes=act.id)]):
        return  # taken back twice, by another undo as well: one of them less changes nothing
    if root.act == "note":
        values = root.old if stands else root.new
        change_notes(folder.notes, [values["file"]], {k: v for k, v in values.items() if k != "file"})
    elif root.act == "name":
        turn_change(folder.names, root.old, root.new, back=stands)
    elif root.act in ROW_FILES:
        turn_row(folder.root, root, back=stands)
    elif root.act == "evidence" and stands:
        remove_entry(folder.root, root.new["entry"])
    elif root.act == "evidence":
        restore_entry(folder.root, root.new["entry"])


def _stands(root: Act, acts: Sequence[Act]) -> bool:
    return any(each.id == root.id for each in active(acts))
