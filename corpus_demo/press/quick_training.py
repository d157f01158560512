"""Make the quick network: the recogniser of the wheel with its convolutions in whole numbers of few bits.

Weights are rounded to seven bits, so that no processor's 16-bit sums overflow and all give the same answers, what goes
in and out of a layer to eight. A layer's weights are fitted anew to its rounded input and rounded one column after
another, each error made good by the columns to come (Frantar and others, GPTQ, 2022: from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, Final

import numpy as np
import onnx
from numpy.typing import NDArray
from onnx import helper, numpy_helper, version_converter
from onnxruntime import GraphOptimizationLevel, InferenceSession, SessionOptions
from onnxruntime.quantization import QuantFormat, QuantType, quantize_static
from onnxruntime.quantization.calibrate import CalibrationDataReader
from onnxruntime.quantization.shape_inference import quant_pre_process

from adminer.reading.models import alphabet, answers_of, descent, model_file

from .quick_strips import Plane, planes

OPSET: Final = 17  # the first in which a scale for each channel, and all layers of the network, are written
APART: Final = ("ConvActivationFusion", "ConvAddActivationFusion")  # layers that are rounded stay by themselves
RIVALS: Final = 260  # characters of other scripts kept, so that they can outvote a speck as they do in the full network
TOP: Final = 63  # of seven bits with a sign
SHARES: Final = (1.0, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3)  # of the range seen that may be kept; the rest is cut off
SEEN: Final = 8_000  # values of a layer kept from one strip to choose its range by
COLUMNS: Final = 150  # places of one strip kept to fit weights by
RIDGE: Final = 1e-3  # of the mean square of a layer's input
Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Layer:
    """Hold a layer to be rounded: its node, its weights (out, in) or None for a window of several pixels, its bias."""

    node: Any
    weights: Floats | None
    bias: Floats


class _Few(CalibrationDataReader):  # type: ignore[misc] # onnxruntime carries no types
    """Feed a few strips to the rounding tool, which asks for some even where every range is given."""

    def __init__(self, strips: Sequence[Plane]) -> None:
        self._rest = iter(strips)

    def get_next(self) -> dict[str, Plane] | None:
        """Return the next strip, None after the last."""
        plane = next(self._rest, None)
        return None if plane is None else {"x": plane}


def train(scans: Path, seed: int, count: int, out: Path) -> None:
    """Write the quick network, made on `count` lines of scans; the same seed gives the same."""
    strips = planes(scans, seed, count)
    with TemporaryDirectory() as folder:
        plain, rounded = Path(folder) / "plain.onnx", Path(folder) / "rounded.onnx"
        model = _bare(plain, _kept(strips))
        layers = _layers(model)
        ranges, inputs = _watched(model, layers, strips)
        quantize_static(
            plain,
            rounded,
            _Few(strips[:2]),
            quant_format=QuantFormat.QDQ,
            op_types_to_quantize=["Conv"],
            nodes_to_quantize=[layer.node.name for layer in layers],
            activation_type=QuantType.QUInt8,
            weight_type=QuantType.QInt8,
            per_channel=True,
            reduce_range=True,
            extra_options={"TensorQuantOverrides": {t: [{"rmin": a, "rmax": b}] for t, (a, b) in ranges.items()}},
        )
        quick = onnx.load(rounded)
    _fit(quick, layers, inputs)
    del quick.metadata_props[:]
    helper.set_model_props(quick, descent())
    onnx.save(quick, out)


def _kept(strips: Sequence[Plane]) -> NDArray[np.int64]:
    """Return the outputs kept: those of the alphabet first, then some of those that come nearest to being chosen."""
    likeliest = np.max([answers_of("rec", plane)[0].max(axis=0) for plane in strips], axis=0)
    ours = alphabet().columns
    others = np.setdiff1d(np.argsort(-likeliest, kind="stable")[: RIVALS + len(ours)], ours)[:RIVALS]
    return np.concatenate([ours, others])


def _bare(path: Path, kept: NDArray[np.int64]) -> Any:
    """Write and return the wheel's network with norms folded into weights and no more outputs than are kept.

    What makes up one function is put together before the rounding, which would part it.
    """
    changed, folded = path.with_name("changed.onnx"), path.with_name("folded.onnx")
    onnx.save(version_converter.convert_version(onnx.load(model_file("rec")), OPSET), changed)
    quant_pre_process(changed, folded, skip_symbolic_shape=True)
    options = SessionOptions()
    options.graph_optimization_level = GraphOptimizationLevel.ORT_ENABLE_EXTENDED
    options.optimized_model_filepath = str(path)
    InferenceSession(folded, options, providers=["CPUExecutionProvider"], disabled_optimizers=APART)
    model = onnx.load(path)
    outputs = model.graph.output[0].type.tensor_type.shape.dim[2]
    every = len(answers_of("rec", np.zeros((1, 3, 48, 48), np.float32))[0, 0])
    for weights in model.graph.initializer:
        held = numpy_helper.to_array(weights)
        if held.ndim in {1, 2} and held.shape[-1] == every:
            weights.CopyFrom(numpy_helper.from_array(np.ascontiguousarray(held[..., kept]), weights.name))
    outputs.Clear()
    del model.graph.value_info[:]
    own = [name for node in model.graph.node if node.domain for name in node.output]  # the rounding tool knows no types
    model.graph.value_info.extend(helper.make_tensor_value_info(name, onnx.TensorProto.FLOAT, None) for name in own)
    onnx.save(model, path)
    return model


def _layers(model: Any) -> list[Layer]:
    """Return the convolutions that see more than one channel, first to last."""
    held = {weights.name: weights for weights in model.graph.initializer}
    layers = []
    for node in model.graph.node:
        if node.op_type != "Conv" or held[node.input[1]].dims[1] == 1:
            continue
        weights, bias = (numpy_helper.to_array(held[name]).astype(np.float64) for name in node.input[1:3])
        layers.append(Layer(node, weights[:, :, 0, 0] if weights.shape[2:] == (1, 1) else None, bias))
    return layers


def _watched(
    model: Any, layers: Sequence[Layer], strips: Sequence[Plane]
) -> tuple[dict[str, tuple[np.float32, np.float32]], dict[str, Floats]]:
    """Return the range kept of everything that goes in and out of layers, and samples (in, N) of what goes in."""
    names = sorted({name for layer in layers for name in (layer.node.input[0], layer.node.output[0])})
    watched = onnx.ModelProto()
    watched.CopyFrom(model)
    watched.graph.output.extend(helper.make_tensor_value_info(name, onnx.TensorProto.FLOAT, None) for name in names)
    session = InferenceSession(watched.SerializeToString(), providers=["CPUExecutionProvider"])
    draw = np.random.default_rng(len(strips))
    values: dict[str, list[Floats]] = {name: [] for name in names}
    columns: dict[str, list[Floats]] = {name: [] for name in names}
    for plane in strips:
        for name, seen in zip(names, session.run(names, {"x": plane}), strict=True):
            values[name].append(draw.choice(seen.ravel(), SEEN))
            flat = seen[0].reshape(seen.shape[1], -1)
            columns[name].append(flat[:, draw.integers(0, flat.shape[1], COLUMNS)])
    ranges = {name: _range(np.concatenate(seen)) for name, seen in values.items()}
    inputs = {layer.node.input[0] for layer in layers}
    return ranges, {name: np.concatenate(columns[name], axis=1) for name in inputs}


def _range(values: NDArray[np.floating[Any]]) -> tuple[np.float32, np.float32]:
    """Return the range, nought in it, that rounded to eight bits keeps values best: outliers are cut off."""
    low, high = min(0.0, float(values.min())), max(0.0, float(values.max()))

    def error(shares: tuple[float, float]) -> float:
        step = (high * shares[1] - low * shares[0]) / 255
        zero = np.round(-low * shares[0] / step)
        kept = (np.clip(np.round(values / step) + zero, 0, 255) - zero) * step
        return float(np.mean((kept - values) ** 2))

    best = min(product(SHARES, SHARES), key=error)
    return np.float32(low * best[0]), np.float32(high * best[1])


def _fit(quick: Any, layers: Sequence[Layer], inputs: dict[str, Floats]) -> None:
    """Put into a rounded network weights that make good what rounding its inputs loses."""
    held = {weights.name: weights for weights in quick.graph.initializer}
    made_by = {name: node for node in quick.graph.node for name in node.output}
    nodes = {node.name: node for node in quick.graph.node}

    def put(name: str, values: Floats) -> None:
        was = numpy_helper.to_array(held[name])
        held[name].CopyFrom(numpy_helper.from_array(values.astype(was.dtype).reshape(was.shape), name))

    for layer in layers:
        if layer.weights is None:
            continue
        taken, weights, bias = (made_by[name] for name in nodes[layer.node.name].input[:3])
        step, zero = (float(numpy_helper.to_array(held[name])) for name in taken.input[1:3])
        whole = inputs[layer.node.input[0]].astype(np.float64)
        rounded = (np.clip(np.round(whole / step) + zero, 0, 255) - zero) * step
        figures, scale = _weights(layer.weights, whole, rounded)
        meant = layer.bias + (layer.weights @ whole).mean(axis=1) - scale * (figures @ rounded).mean(axis=1)
        put(weights.input[0], figures)
        put(weights.input[1], scale)
        put(bias.input[0], np.round(meant / (step * scale)))
        put(bias.input[1], step * scale)


def _weights(weights: Floats, whole: Floats, rounded: Floats) -> tuple[Floats, Floats]:
    """Return weights as whole numbers (out, in) and the scale of each output, fitted to a rounded input."""
    meant, middle = weights @ whole, rounded.mean(axis=1, keepdims=True)
    spread = rounded - middle
    square = spread @ spread.T / spread.shape[1]
    square += RIDGE * np.trace(square) / len(square) * np.eye(len(square))
    lost = meant - meant.mean(axis=1, keepdims=True) - weights @ spread
    rest = weights + lost @ spread.T / spread.shape[1] @ np.linalg.inv(square)
    scale = np.abs(rest).max(axis=1) / TOP
    onward = np.linalg.cholesky(np.linalg.inv(square)).T
    figures = np.zeros_like(rest)
    for k in range(rest.shape[1]):
        figures[:, k] = np.clip(np.round(rest[:, k] / scale), -TOP, TOP)
        error = (rest[:, k] - figures[:, k] * scale) / onward[k, k]
        rest[:, k + 1 :] -= error[:, None] * onward[k, k + 1 :]
    return figures, scale
