"""Which stretches of text may name an item. Texts invented."""

from __future__ import annotations

from adminer.parsing.segments.items import cut_segments
from tests.parsing.pages import advert_text


def test_a_figure_alone_names_something_only_where_it_is_set_as_a_size_is() -> None:
    advert = advert_text(
        (20, 20, 60, "20"), (20, 120, 14, "16"), (20, 160, 14, "Garden rakes with ash handles"),
        (20, 200, 14, "Potato forks, steel"),
    )  # fmt: skip
    assert next(s.text for s in cut_segments(advert, [], [])) == "16"
