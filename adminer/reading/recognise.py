"""What a line of type says: the recognising network, its answer kept letter by letter with place and probability."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.layout.clean import Gray
from adminer.reading.letters import STEP, Answers, Letter, ReadLine, place_of
from adminer.reading.likely_figures import with_likely_figures
from adminer.reading.likely_words import is_doubtful, with_likely_words, words_said
from adminer.reading.models import Network, alphabet, answers_of, columns_of, number_of

HEIGHT = 48  # the height in pixels that the network reads at
# Room behind a line, and the least width with it, in pixels: wasted work, but networks that learned from lines brought
# to one width read short ones better with some. The full one, asked about what is hard to read, gains by more of it.
PADDING: Final[dict[Network, tuple[int, int]]] = {"quick": (16, 64), "rec": (32, 320)}
WHOLE: Final = 16  # pixels that a width is rounded up to: few widths, each of which the network plans for once
LEAST_CONTRAST = 10  # levels of 255 between ink and paper
# A space is easily outvoted by the blank between two letters; set by eye, not measured.
SPACE_LEVEL = 0.12


def cut_strip(gray: Gray, corners: NDArray[np.float32]) -> Gray:
    """Cut a line out of the picture and straighten it; corners clockwise from top left, in its pixels."""
    width = max(1, int(max(np.linalg.norm(corners[1] - corners[0]), np.linalg.norm(corners[2] - corners[3]))))
    height = max(1, int(max(np.linalg.norm(corners[3] - corners[0]), np.linalg.norm(corners[2] - corners[1]))))
    target = np.array([[0, 0], [width, 0], [width, height], [0, height]], np.float32)
    turn = cv2.getPerspectiveTransform(corners.astype(np.float32), target)
    strip = cv2.warpPerspective(gray, turn, (width, height), flags=cv2.INTER_CUBIC, borderMode=cv2.BORDER_REPLICATE)
    return np.asarray(strip, np.uint8)


def stretch(strip: Gray) -> Gray:
    """Return a strip with its contrast stretched to the full range; one without ink stays as it is."""
    dark, light = np.percentile(strip, (2, 95))
    if light - dark < LEAST_CONTRAST:
        return strip
    return np.asarray(np.clip((strip.astype(np.float32) - dark) * (255 / (light - dark)), 0, 255), np.uint8)


def read_strips(
    strips: Sequence[Gray], threads: int = 1, only: str | None = None, network: Network = "rec", *, room: bool = False
) -> list[ReadLine]:
    """Read straightened lines (gray, dark on light or light on dark), each by itself.

    With `only`, nothing but its characters can come out; with `room`, each is read with empty pixels behind it, which
    lines of type want, and a letter or two looked at alone do not.
    """
    letters = alphabet().characters
    allowed = np.array([only is None or c == "" or c in only for c in letters])
    prepared = [prepare(strip) for strip in strips]
    result: list[ReadLine] = []
    unsure: dict[int, Answers] = {}
    for i, strip in enumerate(prepared):  # one by one: what the network remembers of one line fits into a core's cache
        width = padded(strip.shape[1], network) if room else strip.shape[1]
        read, answers = _read(strip, width, allowed, threads, network)
        if only is None:
            read = with_likely_figures(read, answers, strip.shape[1])
            if is_doubtful(read):
                unsure[i] = answers
        result.append(read)
    said = words_said(result) if unsure else {}
    for i, answers in unsure.items():
        result[i] = with_likely_words(result[i], answers, prepared[i].shape[1], said)
    return result


def padded(width: int, network: Network) -> int:
    """Return the width in pixels to which a line of a width is padded for a network that reads lines."""
    room, least = PADDING[network]
    return WHOLE * -(-max(width + room, least) // WHOLE)


def _read(
    strip: NDArray[np.float32], width: int, allowed: NDArray[np.bool_], threads: int, network: Network
) -> tuple[ReadLine, Answers]:
    """Return what a strip says, padded to a width in pixels or alone where that misleads, with the answers for it."""
    own = strip.shape[1]
    plane = np.zeros((1, 3, HEIGHT, width), np.float32)
    plane[0, :, :, :own] = strip
    answers = answers_of(network, plane, threads)[0][:, columns_of(network)] * allowed
    read = _decode(answers, own)
    return _read(strip, own, allowed, threads, network) if width > own and _is_adrift(read) else (read, answers)


def _is_adrift(read: ReadLine) -> bool:
    """Say whether letters were seen behind the strip, in its padding: beside leaders the network loses their places."""
    return sum(letter.at >= 1 for letter in read.letters) > 1


def prepare(strip: Gray) -> NDArray[np.float32]:
    """Return a straightened line (HEIGHT, W) as the network takes it, from -1 for black to 1 for white."""
    height, width = strip.shape
    new_width = max(STEP, int(np.ceil(HEIGHT * width / height)))
    resized = cv2.resize(strip, (new_width, HEIGHT))
    return resized.astype(np.float32) / 127.5 - 1.0


def _decode(answers: Answers, width: int) -> ReadLine:
    """Collapse repeats and blanks; a space wins wherever it is likely enough between two letters."""
    letters = alphabet().characters
    space = number_of(" ")
    cents = answers[:, number_of("¢")] + answers[:, number_of("c")]
    dollars, points = answers[:, number_of("$")], answers[:, number_of(".")]
    best = answers.argmax(axis=1)
    out: list[Letter] = []
    previous = 0
    likeliest_space, space_step, likeliest_point = 0.0, 0, 0.0
    for step, choice in enumerate(best):
        if answers[step, space] > likeliest_space:
            likeliest_space, space_step = float(answers[step, space]), step
        likeliest_point = max(likeliest_point, float(points[step]))
        if choice not in (0, previous, space):
            if out and out[-1].text != " " and likeliest_space > SPACE_LEVEL:
                out.append(Letter(" ", (space_step + 0.5) * STEP / width, max(0.5, likeliest_space)))
            at, sure = place_of(step, width), float(answers[step, choice])
            out.append(Letter(letters[choice], at, sure, float(cents[step]), float(dollars[step]), likeliest_point))
        if choice not in (0, space):
            likeliest_space = likeliest_point = 0.0
        previous = int(choice)
    return ReadLine(tuple(out))
