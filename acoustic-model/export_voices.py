"""Writes the weights as src/voice/who-speaks reads them: export_voices.py MODEL OUTPUT REFERENCE FOLDER ... (packs)

Behind the network stands a projection onto what parts speakers, and not what the utterances of one differ by (linear
discriminants, Fisher 1936), learned from the people of the training split, clean and beside made noise. Needs no accelerator.
REFERENCE: what network and projection say of a rising tone, for the tests."""

import json
import sys

import numpy as np
import torch
from scipy.linalg import eigh

from material import gather
from network import RATE
from scenes import Scenes
from tensors import Tensors
from voice_network import features, shipped

KEPT = 48
MOST_CLIPS, LEAST_CLIPS = 10, 4
# Of the spread within speakers, so that no direction counts for much because there was little of it.
EVENED = 0.02

model, output, reference, *folders = sys.argv[1:]
net = shipped(model)
audio, material, _ = gather(folders, "cpu", lambda f, a: [f(each) for each in a], {})
scenes = Scenes(audio, material, "cpu", 5)


def pieces():
    """Seconds of speech of each speaker, drawn anew by the same seed each time."""
    chance = np.random.default_rng(3)
    clips, theirs = material["train"].clips, {}
    for c in clips:
        if c["kind"] not in ("made", "kokoro") and not c["speaker"].endswith("?"):
            theirs.setdefault(c["speaker"], []).append(c)
    for speaker in sorted(theirs):
        if len(theirs[speaker]) < LEAST_CLIPS:
            continue
        for i in chance.permutation(len(theirs[speaker]))[:MOST_CLIPS]:
            c = theirs[speaker][i]
            spare = max(0, c["length"] - RATE)
            at = c["at"] + int(chance.integers(0, spare + 1))
            yield speaker, audio[at : at + min(RATE, c["length"])].float() / 32768, float(chance.uniform(3, 20))


def directions():
    found, whose = [], []
    with torch.no_grad():
        for speaker, sound, snr in pieces():
            sound = sound / sound.square().mean().add(1e-9).sqrt()
            noisy = sound + scenes.machine(1, len(sound))[0] * 10 ** (-snr / 20)
            for each in (sound, noisy):
                found.append(net(features(each[None] * 0.05))[0].numpy())
                whose.append(speaker)
    return np.array(found), np.array(whose)


def discriminants(found, whose):
    middle = found.mean(0)
    means, within = [], np.zeros((found.shape[1],) * 2)
    for speaker in sorted(set(whose)):
        mine = found[whose == speaker]
        means.append(mine.mean(0) - middle)
        within += (mine - mine.mean(0)).T @ (mine - mine.mean(0)) / len(found)
    between = np.cov(np.array(means).T, bias=True)
    within += EVENED * np.trace(within) / len(within) * np.eye(len(within))
    strength, vectors = eigh(between, within)
    return middle, vectors[:, np.argsort(-strength)[:KEPT]]


found, whose = directions()
middle, kept = discriminants(found, whose)
print(len(set(whose)), "speakers,", len(found), "pieces")


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
    tensors.matrix("kept", kept.T)
    tensors.row("kept.bias", -middle @ kept)
    tensors.write(output, "first-fire voice network 1")

    s = np.arange(16000) / RATE
    tone = torch.from_numpy((0.2 * np.sin(2 * np.pi * (200 * s + 900 * s * s))).astype(np.float32))
    of_tone = (net(features(tone[None]))[0].numpy() - middle) @ kept
    json.dump([round(float(x), 4) for x in of_tone / np.linalg.norm(of_tone)], open(reference, "w"))
