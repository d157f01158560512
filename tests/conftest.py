"""The files with slow tests are begun first: one begun last would keep one core busy while the other has nothing."""

from __future__ import annotations

import pytest


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    slow = {item.path for item in items if item.get_closest_marker("slow") is not None}
    items.sort(key=lambda item: item.path not in slow)
