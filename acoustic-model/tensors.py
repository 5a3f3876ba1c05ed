"""Files of weights as src/voice/phone-network/weights.ts reads them: matrices in 8 bits, with a step for each row; the rest as it is."""

import json
import struct

import numpy as np


class Tensors:
    def __init__(self):
        self.header, self.data = [], b""

    def matrix(self, name, values):
        values = np.ascontiguousarray(np.asarray(values.detach() if hasattr(values, "detach") else values, np.float32))
        values = values.reshape(len(values), -1)
        steps = (np.abs(values).max(1) / 127).clip(1e-12).astype("<f4")
        self.header.append({"kind": "matrix", "name": name, "rows": values.shape[0], "columns": values.shape[1]})
        self.data += steps.tobytes() + np.clip(np.round(values / steps[:, None]), -127, 127).astype(np.int8).tobytes()

    def row(self, name, values):
        values = np.ascontiguousarray(np.asarray(values.detach() if hasattr(values, "detach") else values, "<f4")).ravel()
        self.header.append({"kind": "row", "name": name, "length": len(values)})
        self.data += values.tobytes()

    def linear(self, name, layer):
        self.matrix(name, layer.weight)
        self.row(f"{name}.bias", layer.bias)

    def norm(self, name, layer):
        self.row(name, layer.weight)
        self.row(f"{name}.bias", layer.bias)

    def write(self, path, mark, **more):
        text = json.dumps({**more, "tensors": self.header}).encode()
        with open(path, "wb") as file:
            file.write(f"{mark}\n".encode() + struct.pack("<I", len(text)) + text + self.data)
        print(f"{len(self.data) / 1e6:.2f} MB")
