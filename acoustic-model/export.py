"""Writes the trained network as first-fire reads it. python3 export.py CHECKPOINT OUTPUT"""
import json
import struct
import sys

import numpy as np
import torch

from network import Acoustic

checkpoint, output = sys.argv[1:3]
model = Acoustic()
model.load_state_dict(torch.load(checkpoint))
tensors = {}
for i, (conv, norm) in enumerate(zip(model.convs, model.norms)):
    # What the normalization does is a scale and a shift: they become part of the weights.
    scale = (norm.weight / torch.sqrt(norm.running_var + norm.eps)).detach()
    shift = (norm.bias - norm.running_mean * scale).detach()
    tensors[f"layer.{i}"] = (conv.weight * scale[:, None, None]).detach().numpy().transpose(2, 0, 1)
    tensors[f"layer.{i}.bias"] = shift.numpy()
tensors["out"] = model.out.weight.detach().numpy().transpose(2, 0, 1)
tensors["out.bias"] = model.out.bias.detach().numpy()
header, data = [], b""
for name, values in tensors.items():
    step = float(np.abs(values).max()) / 32767
    header.append({"name": name, "shape": list(values.shape), "step": step})
    data += np.round(np.ascontiguousarray(values) / step).astype("<i2").tobytes()
text = json.dumps({"tensors": header}).encode()
with open(output, "wb") as file:
    file.write(b"first-fire phone network 1\n" + struct.pack("<I", len(text)) + text + data)
