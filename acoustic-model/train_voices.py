"""Trains what tells voices apart: train_voices.py OUTPUT SECONDS FOLDER ... (packs of people and made speech)

Two pieces of each of many speakers, in rooms and noise: each is to be nearest to the other piece of its speaker, and to its
speaker's own direction, by a margin (Deng et al., arXiv:1801.07698). Writes OUTPUT/voices.pt, the running mean of the weights."""

import math
import os
import sys
import time
from concurrent.futures import ThreadPoolExecutor

import torch
import torch.nn.functional as F
from torch import nn

from material import gather
from network import RATE
from scenes import Scenes
from voice_network import OUT, Voices, features

output, budget, folders = sys.argv[1], float(sys.argv[2]), sys.argv[3:]
os.makedirs(output, exist_ok=True)
device = torch.device("cuda")
torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
started = time.time()
say = lambda *what: print(f"{time.time() - started:.0f}s", *what, flush=True)
EVEN = {"people": 1, "people-long": 1, "kokoro": 1, "kokoro-long": 1, "made": 1}
with ThreadPoolExecutor(8) as pool:
    audio, material, sizes = gather(folders, device, lambda f, a: list(pool.map(f, a)), EVEN)
scenes = Scenes(audio, material, device, 7)


def groups_of(material, least):
    """Clips by speaker, of those with enough of them and a name."""
    clips = material.clips
    where = {}
    for i, c in enumerate(clips):
        if c["kind"] == "made" or c["length"] < 0.25 * RATE or c["speaker"].endswith("?"):
            continue
        where.setdefault(c["speaker"], []).append(i)
    return {s: v for s, v in where.items() if len(v) >= least}


def crop(material, pick, seconds, r=True):
    """A piece of each clip, from the middle of what is longer."""
    n = int(seconds * RATE)
    length = material.length[pick]
    spare = (length - n).clamp(min=0)
    off = (scenes.rand(len(pick)) * spare).long()
    lead = (scenes.rand(len(pick)) * (n - length).clamp(min=0)).long()
    t = torch.arange(n, device=device)[None] - lead[:, None]
    inside = (t >= 0) & (t < length[:, None])
    index = (material.at[pick] + off)[:, None] + t.clamp(min=0)
    x = audio[index.clamp(max=len(audio) - 1)].float() / 32768 / material.rms[pick].clamp(min=1e-4)[:, None]
    return x * inside


def heard(x, low, high, clean):
    rows, samples = x.shape
    x = scenes.room(x, scenes.rand(rows, lo=0.06, hi=0.5), scenes.rand(rows, lo=0, hi=0.12) * scenes.chance(rows, 0.6))
    half = rows // 2
    noise = torch.cat([scenes.recorded(half, samples), scenes.machine(rows - half, samples)])
    noise = noise[torch.randperm(rows, device=device)]
    x = x + noise * (10 ** (-scenes.rand(rows, lo=low, hi=high) / 20) * (1 - scenes.chance(rows, clean)))[:, None]
    return scenes.microphone(x)


train = groups_of(material["train"], 4)
names = sorted(train)
people = [i for i, s in enumerate(names) if material["train"].clips[train[s][0]]["kind"] != "kokoro"]
say(len(names), "speakers to learn from,", len(people), "of them people;", sum(len(v) for v in train.values()), "clips")
flat = torch.tensor([i for s in names for i in train[s]], device=device)
counts = torch.tensor([len(train[s]) for s in names], device=device)
first = torch.cat([torch.zeros(1, dtype=torch.long, device=device), counts.cumsum(0)[:-1]])
is_people = torch.zeros(len(names), device=device)
is_people[people] = 1
draw = counts.float().clamp(max=40) ** 0.5
share = lambda which: draw * which / (draw * which).sum().clamp(min=1)
draw = 0.75 * share(is_people) + 0.25 * share(1 - is_people)

torch.manual_seed(1)
net = Voices().to(device)
heads = nn.Parameter(F.normalize(torch.randn(len(names), OUT, device=device), dim=1))
scale = nn.Parameter(torch.tensor(10.0, device=device))
opt = torch.optim.AdamW([{"params": net.parameters()}, {"params": [heads, scale], "weight_decay": 0.0}], lr=2e-3, weight_decay=2e-2)
mean = {k: v.detach().clone() for k, v in net.state_dict().items()}

P = 320
told, step = time.time(), 0
since = time.time()
while True:
    gone = time.time() - since
    if gone > budget:
        break
    part = gone / budget
    lr = 2e-3 * min(1, (step + 1) / 300) * (0.5 * (1 + math.cos(math.pi * part)) * 0.99 + 0.01)
    for g in opt.param_groups:
        g["lr"] = lr
    who = torch.multinomial(draw, P, False)
    pick = first[who].repeat(2) + (torch.rand(2 * P, device=device) * counts[who].repeat(2)).long()
    seconds = 0.7 + 0.9 * float(torch.rand(1))
    x = heard(crop(material["train"], flat[pick], seconds), 0, 30, 0.15)
    with torch.autocast("cuda", dtype=torch.bfloat16):
        e = net(features(x.float()))
    e = e.float()
    target = who.repeat(2)
    cos = e @ F.normalize(heads, dim=1).T
    margin = 0.2 * min(1, part * 4)
    theta = cos.gather(1, target[:, None]).clamp(-0.999, 0.999).acos() + margin
    logits = 30 * cos.scatter(1, target[:, None], theta.cos())
    a, b = e[:P], e[P:]
    sim = scale.clamp(5, 40) * a @ b.T
    label = torch.arange(P, device=device)
    pair = 0.5 * (F.cross_entropy(sim, label) + F.cross_entropy(sim.T, label))
    loss = F.cross_entropy(logits, target) + pair
    opt.zero_grad(set_to_none=True)
    loss.backward()
    nn.utils.clip_grad_norm_(net.parameters(), 3.0)
    opt.step()
    keep = min(0.999, step / (step + 20))
    with torch.no_grad():
        for k, v in net.state_dict().items():
            if v.dtype.is_floating_point:
                mean[k].lerp_(v, 1 - keep)
            else:
                mean[k].copy_(v)
    step += 1
    if time.time() - told > 30:
        told = time.time()
        say(f"step {step}, {step / (told - since):.1f}/s, loss {loss.item():.2f}, pair {pair.item():.3f}")
        torch.save({k: v.half() if v.dtype.is_floating_point else v for k, v in mean.items()}, f"{output}/voices.pt")
torch.save({k: v.half() if v.dtype.is_floating_point else v for k, v in mean.items()}, f"{output}/voices.pt")
say("ended")
