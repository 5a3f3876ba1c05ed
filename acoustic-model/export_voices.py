"""Writes the weights as src/voice/who-speaks reads them: export_voices.py MODEL OUTPUT REFERENCE

REFERENCE: what the network says of a rising tone, for the tests. (A projection onto what parts speakers, by linear discriminants
over the training split, was tried behind it and told fewer apart.)"""

import json
import sys

import numpy as np
import torch

from network import RATE
from tensors import Tensors
from voice_network import features, shipped

model, output, reference = sys.argv[1:]
net = shipped(model)


def affine(norm):
    """A norm over batches as what it is once it has learned: a scale and a shift."""
    scale = norm.weight / (norm.running_var + norm.eps).sqrt()
    return scale, norm.bias - norm.running_mean * scale


tensors = Tensors()
with torch.no_grad():
    tensors.matrix("stem", net.stem.weight.permute(0, 2, 1))
    tensors.row("stem.bias", net.stem.bias)
    for i, block in enumerate(net.blocks):
        scale, shift = affine(block.norm)
        tensors.row(f"block{i}.norm", scale)
        tensors.row(f"block{i}.norm.bias", shift)
        tensors.row(f"block{i}.depth", block.depth.weight[:, 0].T)
        tensors.row(f"block{i}.depth.bias", block.depth.bias)
        scale, shift = affine(block.norm2)
        wide = block.wide.weight[:, :, 0]
        tensors.matrix(f"block{i}.wide", wide * scale)
        tensors.row(f"block{i}.wide.bias", block.wide.bias + wide @ shift)
        tensors.matrix(f"block{i}.narrow", block.narrow.weight)
        tensors.row(f"block{i}.narrow.bias", block.narrow.bias)
    for name, values in zip(("norm", "norm.bias"), affine(net.norm)):
        tensors.row(name, values)
    for nth, layer in ((1, net.attend[0]), (2, net.attend[2])):
        tensors.matrix(f"attend{nth}", layer.weight)
        tensors.row(f"attend{nth}.bias", layer.bias)
    scale, shift = affine(net.norm_out)
    tensors.matrix("out", net.out.weight * scale[:, None])
    tensors.row("out.bias", net.out.bias * scale + shift)
    tensors.write(output, "first-fire voice network 1")

    s = np.arange(16000) / RATE
    tone = torch.from_numpy((0.2 * np.sin(2 * np.pi * (200 * s + 900 * s * s))).astype(np.float32))
    json.dump([round(float(x), 4) for x in net(features(tone[None]))[0]], open(reference, "w"))
