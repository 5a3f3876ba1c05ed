"""Reads a shipped file of the phone network back as a model to go on learning from: shipped.py FILE MODEL

What 8 bits rounded stays rounded. With AHEAD in the environment other than what the file was made with, a block that is to look
less far ahead loses what it saw there. LANGUAGE as it was made with: outputs that only served learning begin anew."""

import json
import struct
import sys

import numpy as np
import torch

from languages import LEARNED, PHONES
from network import AHEAD, BANDS, FORMER_AHEAD, KERNEL, STEM, WIDTH, Acoustic


def tensors_of(path):
    """Name -> values, and the moments that each block looks ahead."""
    data = open(path, "rb").read()
    at = data.index(b"\n") + 1
    (length,) = struct.unpack_from("<I", data, at)
    header = json.loads(data[at + 4 : at + 4 + length])
    at, found = at + 4 + length, {}
    for tensor in header["tensors"]:
        if tensor["kind"] == "row":
            found[tensor["name"]] = np.frombuffer(data, "<f4", tensor["length"], at)
            at += 4 * tensor["length"]
        else:
            rows, columns = tensor["rows"], tensor["columns"]
            steps = np.frombuffer(data, "<f4", rows, at)
            values = np.frombuffer(data, np.int8, rows * columns, at + 4 * rows).reshape(rows, columns)
            found[tensor["name"]] = values * steps[:, None]
            at += 4 * rows + rows * columns
    assert at == len(data)
    return found, tuple(header.get("ahead", FORMER_AHEAD))


def model_of(path):
    """The network with the file's numbers."""
    found, was = tensors_of(path)
    net = Acoustic()
    state = net.state_dict()
    put = lambda name, values: state[name].copy_(torch.tensor(np.ascontiguousarray(values)).view_as(state[name]))

    def linear(name, stored):
        put(f"{name}.weight", found[stored]), put(f"{name}.bias", found[f"{stored}.bias"])

    for name, inputs, kernel in (("stem1", 2 * BANDS, 3), ("stem2", STEM, 5)):
        put(f"{name}.weight", found[name].reshape(-1, kernel, inputs).transpose(0, 2, 1)), put(f"{name}.bias", found[f"{name}.bias"])
    for i, (now, before) in enumerate(zip(AHEAD, was)):
        block = f"block{i}"
        for nth in (1, 2, 3):
            linear(f"blocks.{i}.norm{nth}", f"{block}.norm{nth}")
        for part in ("gate", "back", "wide", "narrow"):
            linear(f"blocks.{i}.{part}", f"{block}.{part}")
        taps = found[f"{block}.depth"].reshape(KERNEL, WIDTH).T
        shift = before - now
        assert shift >= 0, "a block cannot be made to look further ahead"
        if shift:
            taps = np.concatenate([np.zeros((WIDTH, shift), np.float32), taps[:, :-shift]], 1)
        put(f"blocks.{i}.depth.weight", taps[:, None]), put(f"blocks.{i}.depth.bias", found[f"{block}.depth.bias"])
    linear("norm_recurrent", "recurrent.norm")
    for name, stored in (("ih", "input"), ("hh", "state")):
        (
            put(f"recurrent.weight_{name}_l0", found[f"recurrent.{stored}"]),
            put(f"recurrent.bias_{name}_l0", found[f"recurrent.{stored}.bias"]),
        )
    linear("norm_early", "early.norm"), linear("norm_out", "out.norm")
    kept = list(range(len(PHONES) + 1))
    for name, rows in (("early", [*kept, len(LEARNED) + 1]), ("out", kept)):
        state[f"{name}.weight"][rows] = torch.tensor(found[name])
        state[f"{name}.bias"][rows] = torch.tensor(found[f"{name}.bias"])
    net.load_state_dict(state)
    return net


if __name__ == "__main__":
    source, target = sys.argv[1:]
    torch.save({k: v.half() for k, v in model_of(source).state_dict().items()}, target)
