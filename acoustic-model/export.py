"""Writes the weights of the phone network as src/voice/phone-network/weights.ts reads them: export.py MODEL OUTPUT"""

import sys

from network import AHEAD, shipped
from tensors import Tensors

model, output = sys.argv[1:3]
net = shipped(model)
tensors = Tensors()
matrix, row, linear, norm = tensors.matrix, tensors.row, tensors.linear, tensors.norm

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
tensors.write(output, "first-fire phone network 2", ahead=AHEAD)
