"""Make hostile text harmless to look at: controls, escapes and direction marks become visible names."""

from __future__ import annotations

import re
from typing import Any, Final

from markupsafe import Markup

_NAMES: Final = {0x1B: "ESC", 0x07: "BEL", 0x08: "BS", 0x7F: "DEL", 0x00: "NUL", 0x9B: "CSI"}
# C0 but tab and line ends, C1, direction marks and overrides, invisible joiners, line separators, tags, lone surrogates
_UNSEEN: Final = re.compile(
    "[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff"
    "\ufff9-\ufffb\ud800-\udfff\U000e0000-\U000e007f]"
)


def plain(text: str) -> str:
    """Return the text with every character that would act instead of show written out, as ⟨U+202E⟩ or ⟨ESC⟩."""
    return _UNSEEN.sub(lambda match: f"⟨{_NAMES.get(ord(match[0]), f'U+{ord(match[0]):04X}')}⟩", text)


def finalize(value: Any) -> Any:
    """Pass every value a template prints through `plain`; None prints as nothing, markup of our own stays."""
    if value is None:
        return ""
    if isinstance(value, str) and not isinstance(value, Markup):
        return plain(value)
    return value
