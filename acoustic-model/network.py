"""The network that hears phones, and the mel bands that it is fed. src/voice/phone-network computes the same.

AHEAD in the environment: how many moments each block looks ahead, as 1,1,0,0,1,1,0,0."""

import os

import numpy as np
import torch
import torch.nn.functional as F
from torch import nn

from languages import LEARNED, PHONES

RATE = 16000
HOP = 160
WINDOW = 400
TRANSFORM = 512
BANDS = 64
LOWEST_HZ, HIGHEST_HZ = 60.0, 7800.0
FLOOR = 1e-9
# Each band is set against its mean over the last three seconds; the mean itself tells how loud the place is.
MEAN_FRAMES = 300
MEAN_MIDDLE, MEAN_SPREAD = -5.0, 2.0
# Frames of 10 ms to a moment: 30 ms.
STRIDE = 3
STEM, WIDTH, HIDDEN, KERNEL = 96, 256, 768, 9
# Moments that each block looks ahead, in a file that does not say it and in this run; and after how many blocks the early outputs and
# the recurrent layer stand.
FORMER_AHEAD = (1, 1, 0, 0, 1, 1, 1, 1)
AHEAD = tuple(int(moments) for moments in os.environ["AHEAD"].split(",")) if os.environ.get("AHEAD") else FORMER_AHEAD
EARLY = 4
RECURRENT = 3


def mel_bands():
    """Triangles that are even on the mel scale (O'Shaughnessy: 2595 log10(1 + f / 700)), 257 frequencies by band."""
    mel = lambda hz: 2595 * np.log10(1 + hz / 700)
    hz = lambda m: 700 * (10 ** (m / 2595) - 1)
    corners = hz(np.linspace(mel(LOWEST_HZ), mel(HIGHEST_HZ), BANDS + 2))
    at = np.arange(TRANSFORM // 2 + 1) * RATE / TRANSFORM
    bands = [
        np.maximum(0, np.minimum((at - low) / (mid - low), (high - at) / (high - mid)))
        for low, mid, high in zip(corners, corners[1:], corners[2:])
    ]
    return np.stack(bands, 1).astype(np.float32)


HANN_WINDOW = torch.hann_window(WINDOW)


def log_bands(sound, bands, window):
    """Log power of each band each 10 ms, whole windows only: sounds by bands by frames."""
    count = (sound.shape[-1] - WINDOW) // HOP + 1
    sound = F.pad(sound[..., : (count - 1) * HOP + WINDOW], (0, TRANSFORM - WINDOW))
    padded = F.pad(window, (0, TRANSFORM - WINDOW))
    spectrum = torch.stft(sound, TRANSFORM, HOP, TRANSFORM, padded, center=False, return_complex=True)
    power = spectrum.real.square() + spectrum.imag.square()
    return torch.log10(torch.einsum("bft,fm->bmt", power, bands) + FLOOR)


def centred(logs):
    """Each band against its mean over the last three seconds, and that mean."""
    sums = logs.double().cumsum(2)
    earlier = F.pad(sums, (MEAN_FRAMES, 0))[:, :, : logs.shape[2]]
    count = torch.arange(1, logs.shape[2] + 1, device=logs.device).clamp(max=MEAN_FRAMES)
    mean = ((sums - earlier) / count).float()
    return torch.cat([logs - mean, (mean - MEAN_MIDDLE) / MEAN_SPREAD], 1)


class Block(nn.Module):
    """A gated convolution over moments, and a layer over channels, each added to what came in."""

    def __init__(self, ahead, drop):
        super().__init__()
        self.pads = (KERNEL - 1 - ahead, ahead)
        self.norm1, self.norm2, self.norm3 = nn.LayerNorm(WIDTH), nn.LayerNorm(WIDTH), nn.LayerNorm(WIDTH)
        self.gate = nn.Linear(WIDTH, 2 * WIDTH)
        self.depth = nn.Conv1d(WIDTH, WIDTH, KERNEL, groups=WIDTH)
        self.back = nn.Linear(WIDTH, WIDTH)
        self.wide, self.narrow = nn.Linear(WIDTH, HIDDEN), nn.Linear(HIDDEN, WIDTH)
        self.drop = nn.Dropout(drop)

    def forward(self, x):
        y = F.glu(self.gate(self.norm1(x)), -1)
        y = self.depth(F.pad(y.transpose(1, 2), self.pads)).transpose(1, 2)
        x = x + self.drop(self.back(F.silu(self.norm2(y))))
        return x + self.drop(self.narrow(F.silu(self.wide(self.norm3(x)))))


class Acoustic(nn.Module):
    """Log probabilities of no phone and of each, and whether somebody near is speaking, of each 30 ms.

    The early outputs and nearness look 60 ms ahead, the others as far as AHEAD says: 30 ms for each moment."""

    def __init__(self, drop=0.1):
        super().__init__()
        self.stem1 = nn.Conv1d(2 * BANDS, STEM, 3)
        self.stem2 = nn.Conv1d(STEM, WIDTH, 5, stride=STRIDE)
        self.blocks = nn.ModuleList(Block(ahead, drop) for ahead in AHEAD)
        self.norm_recurrent = nn.LayerNorm(WIDTH)
        self.recurrent = nn.GRU(WIDTH, WIDTH, batch_first=True)
        self.norm_early, self.norm_out = nn.LayerNorm(WIDTH), nn.LayerNorm(WIDTH)
        self.early, self.out = nn.Linear(WIDTH, len(LEARNED) + 2), nn.Linear(WIDTH, len(LEARNED) + 1)

    def forward(self, features):
        x = F.silu(self.stem1(F.pad(features, (2, 0))))
        # The first moment ends with the third frame.
        x = F.silu(self.stem2(F.pad(x, (2, 0)))).transpose(1, 2)
        early = None
        for i, block in enumerate(self.blocks):
            x = block(x)
            if i + 1 == RECURRENT:
                x = x + self.recurrent(self.norm_recurrent(x))[0]
            if i + 1 == EARLY:
                early = self.early(self.norm_early(x))
        return self.out(self.norm_out(x)).float().log_softmax(-1), early[..., :-1].float().log_softmax(-1), early[..., -1].float()


def loaded(path, device="cpu"):
    """The network of a model file that train.py wrote."""
    net = Acoustic().to(device)
    net.load_state_dict({k: v.float() for k, v in torch.load(path, map_location=device).items()})
    return net


def shipped(path):
    """The same without the outputs that only served learning."""
    net = loaded(path)
    kept = list(range(len(PHONES) + 1))
    for name, rows in (("early", [*kept, len(LEARNED) + 1]), ("out", kept)):
        whole = getattr(net, name)
        part = nn.Linear(WIDTH, len(rows))
        part.weight.data, part.bias.data = whole.weight.data[rows], whole.bias.data[rows]
        setattr(net, name, part)
    return net.eval()
