"""The network that tells voices apart. src/voice/who-speaks computes the same."""

import torch
import torch.nn.functional as F
from torch import nn

from network import BANDS, HANN_WINDOW, log_bands, mel_bands

WIDTH, ATTENTION, OUT, KERNEL = 160, 48, 96, 7
# Moments of 20 ms between those that each block looks at.
SPREADS = (1, 1, 2, 2, 3)


class Block(nn.Module):
    def __init__(self, spread):
        super().__init__()
        self.norm = nn.BatchNorm1d(WIDTH)
        self.depth = nn.Conv1d(WIDTH, WIDTH, KERNEL, padding=KERNEL // 2 * spread, dilation=spread, groups=WIDTH)
        self.norm2 = nn.BatchNorm1d(WIDTH)
        self.wide = nn.Conv1d(WIDTH, 2 * WIDTH, 1)
        self.narrow = nn.Conv1d(2 * WIDTH, WIDTH, 1)

    def forward(self, x):
        return x + self.narrow(F.silu(self.wide(self.norm2(self.depth(self.norm(x))))))


class Voices(nn.Module):
    """A direction for a voice, from log mel bands of speech."""

    def __init__(self):
        super().__init__()
        self.stem = nn.Conv1d(BANDS, WIDTH, 5, stride=2, padding=2)
        self.blocks = nn.ModuleList(Block(spread) for spread in SPREADS)
        self.norm = nn.BatchNorm1d(WIDTH)
        self.attend = nn.Sequential(nn.Conv1d(WIDTH, ATTENTION, 1), nn.Tanh(), nn.Conv1d(ATTENTION, WIDTH, 1))
        self.out = nn.Linear(2 * WIDTH, OUT)
        self.norm_out = nn.BatchNorm1d(OUT)
        self.drop = nn.Dropout(0.2)

    def forward(self, logs):
        x = F.silu(self.stem(logs))
        for block in self.blocks:
            x = block(x)
        x = F.silu(self.norm(x))
        weight = self.attend(x).softmax(2)
        mean = (weight * x).sum(2)
        spread = ((weight * x * x).sum(2) - mean * mean).clamp(min=1e-4).sqrt()
        return F.normalize(self.norm_out(self.out(self.drop(torch.cat([mean, spread], 1)))), dim=1)


def features(sound, bands=torch.from_numpy(mel_bands()), window=HANN_WINDOW):
    """Each band against its mean over the utterance: how loud it was, and through what microphone, goes out of it."""
    logs = log_bands(sound, bands.to(sound.device), window.to(sound.device))
    return logs - logs.mean(2, keepdim=True)


def shipped(path):
    net = Voices()
    net.load_state_dict({k: v.float() if v.is_floating_point() else v for k, v in torch.load(path, map_location="cpu").items()})
    return net.eval()
