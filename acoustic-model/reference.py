"""What the network says of a rising tone, for the tests. python3 reference.py CHECKPOINT OUTPUT"""
import json
import sys

import numpy as np
import torch

from network import FLOOR, Acoustic, band_powers
from scenes import centred

checkpoint, output = sys.argv[1:3]
model = Acoustic()
model.load_state_dict(torch.load(checkpoint))
model.eval()
s = np.arange(32000) / 16000
sound = np.where(s < 1.5, 0.2 * np.sin(2 * np.pi * (200 * s + 500 * s * s)), 0).astype(np.float32)
features = centred(np.log10(band_powers(sound) + FLOOR)).astype(np.float32)
with torch.no_grad():
    phones, near = model(torch.tensor(features.T)[None])
phones = phones[0] - phones[0].max(0).values
moments = [
    {"phones": [round(float(x), 3) for x in phones[:, t]], "near": round(float(torch.sigmoid(near[0, t])), 4)}
    for t in range(phones.shape[1])
]
json.dump({"moments": moments}, open(output, "w"))
