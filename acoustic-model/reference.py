"""What the network says of a rising tone, for the tests: reference.py MODEL OUTPUT"""

import json
import sys

import numpy as np
import torch

from network import HANN_WINDOW, centred, log_bands, mel_bands, shipped

model, output = sys.argv[1:3]
net = shipped(model)
s = np.arange(64000) / 16000
sound = np.where((s > 0.3) & (s < 3.4), 0.2 * np.sin(2 * np.pi * (200 * s + 250 * s * s)), 0).astype(np.float32)
with torch.no_grad():
    late, early, near = net(centred(log_bands(torch.from_numpy(sound)[None], torch.from_numpy(mel_bands()), HANN_WINDOW)))
rounded = lambda rows: [[round(float(x), 3) for x in row] for row in rows]
every = range(0, near.shape[1], 4)
json.dump(
    {
        "every": 4,
        "phones": rounded(late[0, every]),
        "early": rounded(early[0, every]),
        "near": [round(float(x), 4) for x in torch.sigmoid(near[0, every])],
    },
    open(output, "w"),
)
