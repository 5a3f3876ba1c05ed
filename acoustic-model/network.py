"""The network that hears phones, and the mel bands that it is fed. src/voice/recognizers/phone-network computes the same."""
import numpy as np
import torch
from torch import nn

PHONES = ("AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH").split()
RATE = 16000
HOP = 160
WINDOW = 400
TRANSFORM = 512
BANDS = 40
LOWEST_HZ, HIGHEST_HZ = 80.0, 7600.0
# The mean of each band over about a second is taken off: what is always there is no speech.
FORGETTING = 0.99
FLOOR = 1e-9

# Channels in and out, times, dilation, stride, and whether the input is added to the output.
LAYERS = [
    (BANDS, 128, 5, 1, 2, False),
    (128, 128, 3, 1, 1, True),
    (128, 128, 3, 2, 1, True),
    (128, 192, 3, 1, 2, False),
    (192, 192, 3, 1, 1, True),
    (192, 192, 3, 2, 1, True),
    (192, 192, 3, 4, 1, True),
    (192, 192, 3, 1, 1, True),
    (192, 192, 3, 2, 1, True),
    (192, 192, 3, 4, 1, True),
]


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


HANN = (0.5 - 0.5 * np.cos(2 * np.pi * np.arange(WINDOW) / WINDOW)).astype(np.float32)


def band_powers(sound):
    """Power of each band each 10 ms: a row each."""
    count = (len(sound) - WINDOW) // HOP + 1
    frames = np.lib.stride_tricks.sliding_window_view(sound, WINDOW)[::HOP][:count] * HANN
    spectrum = np.fft.rfft(frames, TRANSFORM)
    return (spectrum.real**2 + spectrum.imag**2).astype(np.float32) @ mel_bands()


class Acoustic(nn.Module):
    """Log probabilities of the phones (and of none) each 40 ms, and whether somebody near is speaking."""

    def __init__(self):
        super().__init__()
        self.convs = nn.ModuleList(nn.Conv1d(i, o, k, s, dilation=d, bias=False) for i, o, k, d, s, _ in LAYERS)
        self.norms = nn.ModuleList(nn.BatchNorm1d(o) for _, o, *_ in LAYERS)
        self.out = nn.Conv1d(LAYERS[-1][1], len(PHONES) + 2, 1)
        self.drop = nn.Dropout(0.1)

    def forward(self, x):
        for conv, norm, (_, _, k, d, _, add) in zip(self.convs, self.norms, LAYERS):
            y = torch.relu(norm(conv(nn.functional.pad(x, ((k - 1) * d, 0)))))
            x = x + self.drop(y) if add else y
        x = self.out(x)
        return torch.log_softmax(x[:, :-1], 1), x[:, -1]
