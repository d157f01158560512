"""Train the numeral reader on strikes of the press and write it as ONNX; see README.md of this folder.

Wants torch and onnx, which are in no lock of the project: run it with an environment of its own.
"""

from __future__ import annotations

import argparse
import time
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import onnx
import onnx.numpy_helper
import torch
from numpy.typing import NDArray
from torch import Tensor, nn
from torch.utils.data import DataLoader, IterableDataset

from adminer.reading.numeral_model.alphabet import CLASSES, HEIGHT, STEP, encode
from adminer.reading.numeral_model.prepare import prepare, stack
from corpus_demo.press.strikes import strikes

BATCH = 32
CHUNK = 960  # crops struck at a time and sorted by width, so that a batch needs little filling
RATE = 3e-3  # highest learning rate; one cycle up and down, after Smith and Topin (2018), from memory


def _stage(before: int, after: int, pool: tuple[int, int]) -> nn.Sequential:
    return nn.Sequential(
        nn.Conv2d(before, after, 3, padding=1, bias=False), nn.BatchNorm2d(after), nn.ReLU(), nn.MaxPool2d(pool)
    )


class NumeralNet(nn.Module):  # type: ignore[misc]  # torch is not installed where types are checked
    """Read a line of figures: convolutions down to one row, then along it; the answer is (N, steps, classes)."""

    def __init__(self) -> None:
        super().__init__()
        self.look = nn.Sequential(
            _stage(1, 12, (2, 2)), _stage(12, 24, (2, 1)), _stage(24, 40, (2, 1)), _stage(40, 64, (2, 1))
        )
        self.row = nn.Sequential(nn.Conv2d(64, 96, (2, 3), padding=(0, 1), bias=False), nn.BatchNorm2d(96), nn.ReLU())
        self.along = nn.Sequential(
            nn.Conv1d(96, 96, 5, padding=2, bias=False), nn.BatchNorm1d(96), nn.ReLU(), nn.Dropout(0.1),
            nn.Conv1d(96, 96, 5, padding=4, dilation=2, bias=False), nn.BatchNorm1d(96), nn.ReLU(),
        )  # fmt: skip
        self.say = nn.Conv1d(96, CLASSES, 1)

    def forward(self, crops: Tensor) -> Tensor:
        """Return the log probability of every class at every step."""
        row = self.row(self.look(crops)).squeeze(2)
        return torch.log_softmax(self.say(row + self.along(row)), 1).transpose(1, 2)


Batch = tuple[NDArray[np.float32], list[list[int]], list[int]]


def batches(seed: int, count: int) -> Iterator[Batch]:
    """Strike crops and yield them as (crops, classes, steps), crops of like width together."""
    order = np.random.default_rng(seed)
    for start in range(0, count, CHUNK):
        struck = [(prepare(s.crop), encode(s.label)) for s in strikes(seed * 100_003 + start, CHUNK)]
        struck = [(plane, label) for plane, label in struck if plane.shape[1] // STEP > 2 * len(label)]
        struck.sort(key=lambda pair: pair[0].shape[1])
        groups = [struck[i : i + BATCH] for i in range(0, len(struck), BATCH)]
        for k in order.permutation(len(groups)):
            planes = [plane for plane, _ in groups[k]]
            yield stack(planes), [label for _, label in groups[k]], [p.shape[1] // STEP for p in planes]


def _as_is(batch: Batch) -> Batch:
    return batch


class Press(IterableDataset[Batch]):  # type: ignore[misc]  # as above
    """Strike the batches of a run in a process of its own, beside the training."""

    def __init__(self, seed: int, count: int) -> None:
        super().__init__()
        self.seed, self.count = seed, count

    def __iter__(self) -> Iterator[Batch]:
        return batches(self.seed, self.count)


def go_on_from(net: NumeralNet, path: Path) -> None:
    """Take the weights of a network written before; its norms are part of its convolutions and stay as they are."""
    graph = onnx.load(str(path)).graph
    held = {one.name: torch.from_numpy(onnx.numpy_helper.to_array(one).copy()) for one in graph.initializer}
    kept = [node for node in graph.node if node.op_type == "Conv"]
    convolutions = [m for m in net.modules() if isinstance(m, nn.Conv1d | nn.Conv2d)]
    norms = [m for m in net.modules() if isinstance(m, nn.BatchNorm1d | nn.BatchNorm2d)]
    with torch.no_grad():
        for module, node in zip(convolutions, kept, strict=True):
            module.weight.copy_(held[node.input[1]])
        for norm, node in zip(norms, kept, strict=False):
            norm.running_var.fill_(1 - norm.eps)
            norm.bias.copy_(held[node.input[2]])
        net.say.bias.copy_(held[kept[-1].input[2]])
    for norm in norms:
        norm.eval()


def train(seed: int, count: int, threads: int, out: Path, start: Path | None = None) -> None:
    """Train on `count` fresh strikes, each seen once, and write the network to `out`; `start` is one to go on from."""
    torch.manual_seed(seed)
    torch.set_num_threads(threads)
    net = NumeralNet()
    rate = RATE
    if start:
        go_on_from(net, start)
        rate = RATE / 2
    steps = -(-count // BATCH)
    optimiser = torch.optim.AdamW(net.parameters(), lr=rate, weight_decay=1e-3)
    pace = torch.optim.lr_scheduler.OneCycleLR(optimiser, rate, total_steps=steps + 8, pct_start=0.15)
    loss_of = nn.CTCLoss(zero_infinity=True)
    begun, losses = time.monotonic(), []
    for turn, (crops, labels, lengths) in enumerate(
        DataLoader(Press(seed, count), batch_size=None, num_workers=1, prefetch_factor=40, collate_fn=_as_is)
    ):
        said = net(torch.from_numpy(crops)).transpose(0, 1)
        flat = torch.tensor([c for label in labels for c in label])
        loss = loss_of(said, flat, torch.tensor(lengths), torch.tensor([len(label) for label in labels]))
        optimiser.zero_grad()
        loss.backward()
        nn.utils.clip_grad_norm_(net.parameters(), 2.0)
        optimiser.step()
        pace.step()
        losses.append(float(loss.detach()))
        if turn % 20 == 19:
            told = f"{(turn + 1) * BATCH} of {count} crops, loss {np.mean(losses[-20:]):.3f}"
            print(told, f"{time.monotonic() - begun:.0f} s", flush=True)  # noqa: T201 - a long run tells where it is
    write(net, out)


def write(net: NumeralNet, out: Path) -> None:
    """Write the network as ONNX, free in the number and the width of crops."""
    net.eval()  # nothing is trained after this
    example = torch.zeros(2, 1, HEIGHT, 64)
    free = {"crops": {0: "crop", 3: "width"}, "log_probabilities": {0: "crop", 1: "step"}}
    torch.onnx.export(
        net, (example,), str(out), input_names=["crops"], output_names=["log_probabilities"],
        dynamic_axes=free, opset_version=17, dynamo=False,
    )  # fmt: skip
    net.train()


def main() -> None:
    """Read the options and train."""
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--seed", type=int, default=11)
    options.add_argument("--count", type=int, default=48_000, help="crops to train on")
    options.add_argument("--threads", type=int, default=1)
    options.add_argument("--out", type=Path, default=Path(__file__).with_name("numerals.onnx"))
    options.add_argument("--start", type=Path, help="a network written before, to go on from")
    chosen = options.parse_args()
    train(chosen.seed, chosen.count, chosen.threads, chosen.out, chosen.start)


if __name__ == "__main__":
    main()
