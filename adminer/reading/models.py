"""The networks of the display reader: two in the rapidocr wheel, found by path and never fetched, one made of these."""

from __future__ import annotations

import hashlib
import importlib.util
import os
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from typing import Any, Final, Literal

import numpy as np
from numpy.typing import NDArray

from adminer.errors import MachineError

QUICK: Final = Path(__file__).with_name("quick_model") / "recogniser.onnx"
Network = Literal["det", "rec", "quick"]  # finds type; reads a line of it; reads one in less time, a little worse

# What these adverts can hold. The recogniser knows 18,708 characters of many scripts; a choice among these few
# keeps a speck from becoming a Chinese character.
CHARACTERS = (
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789"
    " .,;:!?'\"-–—_/\\()[]{}&%#*+=<>@$¢£½¼¾°•’‘“”†§©®™éèêëàâäçôöòûüùïîñÉÈÄÖÜß×·…"
)


@dataclass(frozen=True, slots=True)
class Alphabet:
    """Hold which outputs of the recogniser may be chosen and what each stands for; output 0 is the blank."""

    columns: NDArray[np.int64]
    characters: tuple[str, ...]  # "" for the blank


def model_folder() -> Path:
    """Return the folder of the rapidocr wheel that carries the networks.

    Raises MachineError when the wheel is not installed.
    """
    found = importlib.util.find_spec("rapidocr")
    if found is None or not found.submodule_search_locations:
        raise MachineError(
            "the display reader cannot start",
            why="the package rapidocr is not installed",
            remedy="install adminer again with all its dependencies",
        )
    return Path(next(iter(found.submodule_search_locations))) / "models"


def model_file(part: str) -> Path:
    """Return the path of one network in the wheel; `part` is "det" (finds type) or "rec" (reads a line of it).

    Raises MachineError when the wheel carries none.
    """
    folder = model_folder()
    files = sorted(folder.glob(f"*_{part}_*.onnx"))
    if not files:
        raise MachineError(
            "the display reader cannot start",
            file=str(folder),
            why=f"the rapidocr wheel carries no network *_{part}_*.onnx",
            remedy="install rapidocr again in the version of requirements.lock",
        )
    return files[-1]


def model_digest(part: str) -> str:
    """Return the sha256 of one network in the wheel, by the same names."""
    return hashlib.sha256(model_file(part).read_bytes()).hexdigest()


@lru_cache(maxsize=4)
def session(network: Network, threads: int = 1) -> Any:
    """Open one network for this process, with the given number of threads, and keep it open."""
    import onnxruntime  # noqa: PLC0415 - a quarter of a second at start-up that commands without reading must not pay

    options = onnxruntime.SessionOptions()
    options.intra_op_num_threads = threads
    options.inter_op_num_threads = 1
    options.log_severity_level = 3
    # Memory asked anew for every tile costs a fifth of its time. What the arena keeps is bounded by one tile.
    options.enable_cpu_mem_arena = True
    # Two layers of the finding network multiply hosts of numbers too small for a processor's fast path; as zeros they
    # leave every answer as it was, to the bit, in a third of the time. The first session of a process decides.
    options.add_session_config_entry("session.set_denormal_as_zero", "1")
    opened = onnxruntime.InferenceSession
    path, providers = str(QUICK if network == "quick" else model_file(network)), ["CPUExecutionProvider"]
    return _thread().submit(opened, path, options, providers=providers).result()


def answers_of(network: Network, plane: NDArray[np.float32], threads: int = 1) -> NDArray[np.float32]:
    """Return what one network makes of a picture (1, 3, H, W): its first output."""
    opened = session(network, threads)
    return np.asarray(_thread().submit(opened.run, None, {"x": plane}).result()[0], np.float32)


@lru_cache(maxsize=1)
def _thread() -> ThreadPoolExecutor:
    """Return the one thread the networks run in: taking small numbers for zero must not touch other arithmetic."""
    os.register_at_fork(after_in_child=_forget)  # a forked process has no thread but the one that forked it
    return ThreadPoolExecutor(1, "networks")


def _forget() -> None:
    _thread.cache_clear()
    session.cache_clear()


@lru_cache(maxsize=1)
def alphabet() -> Alphabet:
    """Return the choice of output columns of the recogniser, read from the character list in the network itself."""
    listed = session("rec").get_modelmeta().custom_metadata_map["character"].split("\n")
    known = [*listed, " "]
    wanted = [(i + 1, c) for i, c in enumerate(known) if c in CHARACTERS and c]
    return Alphabet(np.array([0, *(i for i, _ in wanted)]), ("", *(c for _, c in wanted)))


def columns_of(network: Network) -> NDArray[np.int64]:
    """Return which outputs of a network that reads lines stand for the characters of the alphabet, in its order."""
    return np.arange(len(alphabet().characters)) if network == "quick" else alphabet().columns


def descent() -> dict[str, str]:
    """Return what the quick network says of itself: what it was made of, and the characters of its first outputs."""
    return {"source": model_digest("rec"), "characters": "\n".join(alphabet().characters)}


@lru_cache(maxsize=1)
def first_reader() -> Network:
    """Return the network of the first reading: the quick one, as long as the wheel's is the one it was made of."""
    told = session("quick").get_modelmeta().custom_metadata_map if QUICK.is_file() else {}
    return "quick" if told == descent() else "rec"


@cache
def number_of(character: str) -> int:
    """Return the place of a character in the network's alphabet."""
    return alphabet().characters.index(character)
