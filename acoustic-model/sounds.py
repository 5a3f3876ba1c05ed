"""Sounds of machines that signal, and of music, drawn anew: neither says anything."""

import math

import torch

from network import RATE


def pieces(rand, rows, samples, count, shortest, longest):
    """For each sample of each row, which piece it belongs to and how far into it that is, in seconds, and how long each piece lasts."""
    lasts = shortest * (longest / shortest) ** rand(rows, 1) * rand(rows, count, lo=0.7, hi=1.4)
    # In half of the rows all pieces are alike.
    lasts = torch.where(rand(rows, 1) < 0.5, lasts[:, :1].expand(-1, count), lasts)
    ends = lasts.cumsum(1)
    t = (torch.arange(samples, device=lasts.device)[None] / RATE).expand(rows, -1).contiguous()
    piece = torch.searchsorted(ends.contiguous(), t, right=True).clamp(max=count - 1)
    begins = ends - lasts
    return piece, t - begins.gather(1, piece), lasts.gather(1, piece)


def edges(into, lasts, seconds):
    """Rises and falls of each piece."""
    return (into / seconds).clamp(0, 1) * ((lasts - into) / seconds).clamp(0, 1)


def beeps(rand, rows, samples):
    """Beeps, horns and sirens: steady, sliding or in turn, pure or with overtones; the loudest is about 1."""
    piece, into, lasts = pieces(rand, rows, samples, 48, 0.06, 1.2)
    tones = 250 * 16 ** rand(rows, 48)
    kind = rand(rows, 1)
    # One tone, two in turn, or any.
    tones = torch.where(kind < 0.45, tones[:, :1].expand(-1, 48), tones)
    two = tones[:, :2].repeat(1, 24)
    tones = torch.where((kind >= 0.45) & (kind < 0.75), two, tones)
    slide = torch.where(rand(rows, 48) < 0.5, rand(rows, 1), rand(rows, 48)) * 2 - 1
    slide = slide * (rand(rows, 1) < 0.35)
    hz = tones.gather(1, piece) * 2 ** (slide.gather(1, piece) * into / lasts.clamp(min=0.05) * 1.5)
    wobble = 1 + 0.06 * torch.sin(2 * math.pi * rand(rows, 1, lo=2, hi=14) * into) * (rand(rows, 1) < 0.2)
    phase = 2 * math.pi * ((hz * wobble).clamp(max=RATE / 2.2).double() / RATE).cumsum(1) % (2 * math.pi)
    phase = phase.float()
    x = torch.sin(phase)
    for k in (2, 3, 4, 5):
        loud = rand(rows, 1, hi=0.7) * (rand(rows, 1) < 0.4)
        x = x + loud * torch.sin(k * phase) * (hz * k < RATE / 2.1)
    # Buzzers are nearly square.
    x = torch.where(rand(rows, 1) < 0.15, torch.tanh(4 * x), x)
    on = (rand(rows, 48) < torch.where(rand(rows, 1) < 0.3, 1.0, 0.6)).float()
    on = torch.where(rand(rows, 1) < 0.4, (torch.arange(48, device=on.device) % 2).float()[None].expand(rows, -1), on)
    return x * on.gather(1, piece) * edges(into, lasts, 10 ** rand(rows, 1, lo=-3.2, hi=-1.6))


def music(rand, normal, rows, samples):
    """Chords in a beat, a tune above and something struck between."""
    piece, into, lasts = pieces(rand, rows, samples, 64, 0.15, 0.9)
    root = 90 * 2 ** rand(rows, 1, hi=1.5)
    steps = torch.tensor([0, 2, 3, 5, 7, 8, 10, 12], device=root.device, dtype=torch.float32)
    x = torch.zeros(rows, samples, device=root.device)
    for voice in range(4):
        notes = steps[(rand(rows, 64) * 7.999).long()] + 12 * (voice // 2)
        hz = (root * 2 ** (notes / 12)).gather(1, piece)
        phase = (2 * math.pi * (hz.double() / RATE).cumsum(1) % (2 * math.pi)).float()
        tone = sum(torch.sin(k * phase) * rand(rows, 1, hi=1.0) / k for k in (1, 2, 3, 5))
        x = x + tone * torch.exp(-into * rand(rows, 1, lo=0.3, hi=6.0)) * edges(into, lasts, 0.01)
    struck = normal(rows, samples) * torch.exp(-into * rand(rows, 1, lo=15, hi=60)) * rand(rows, 1, hi=1.5)
    return x + struck * (rand(rows, 64) < 0.5).float().gather(1, piece)
