"""Writes the weights as src/voice/phone-network/weights.ts reads them: export.py MODEL OUTPUT

Matrices in 8 bits, with a step for each row; the rest, some 2 %, as it is."""

import json
import struct
import sys

import numpy as np

from network import shipped

model, output = sys.argv[1:3]
net = shipped(model)
header, data = [], b""


def matrix(name, values):
    global data
    values = values.detach().numpy()
    values = np.ascontiguousarray(values.reshape(len(values), -1))
    steps = (np.abs(values).max(1) / 127).clip(1e-12).astype("<f4")
    header.append({"kind": "matrix", "name": name, "rows": values.shape[0], "columns": values.shape[1]})
    data += steps.tobytes() + np.clip(np.round(values / steps[:, None]), -127, 127).astype(np.int8).tobytes()


def row(name, values):
    global data
    values = np.ascontiguousarray(values.detach().numpy().astype("<f4")).ravel()
    header.append({"kind": "row", "name": name, "length": len(values)})
    data += values.tobytes()


def linear(name, layer):
    matrix(name, layer.weight)
    row(f"{name}.bias", layer.bias)


def norm(name, layer):
    row(name, layer.weight)
    row(f"{name}.bias", layer.bias)


# A convolution's rows are fed one after the other, the oldest first.
for name, conv in (("stem1", net.stem1), ("stem2", net.stem2)):
    matrix(name, conv.weight.permute(0, 2, 1))
    row(f"{name}.bias", conv.bias)
for i, block in enumerate(net.blocks):
    name = f"block{i}"
    for nth, layer in enumerate((block.norm1, block.norm2, block.norm3), 1):
        norm(f"{name}.norm{nth}", layer)
    linear(f"{name}.gate", block.gate)
    row(f"{name}.depth", block.depth.weight[:, 0].T)
    row(f"{name}.depth.bias", block.depth.bias)
    linear(f"{name}.back", block.back)
    linear(f"{name}.wide", block.wide)
    linear(f"{name}.narrow", block.narrow)
norm("recurrent.norm", net.norm_recurrent)
matrix("recurrent.input", net.recurrent.weight_ih_l0)
row("recurrent.input.bias", net.recurrent.bias_ih_l0)
matrix("recurrent.state", net.recurrent.weight_hh_l0)
row("recurrent.state.bias", net.recurrent.bias_hh_l0)
norm("early.norm", net.norm_early)
linear("early", net.early)
norm("out.norm", net.norm_out)
linear("out", net.out)
text = json.dumps({"tensors": header}).encode()
with open(output, "wb") as file:
    file.write(b"first-fire phone network 2\n" + struct.pack("<I", len(text)) + text + data)
print(f"{len(data) / 1e6:.2f} MB")
