"""Trains what tells voices apart: train_voices.py OUTPUT SECONDS FOLDER ... (packs of people and made speech)

Four pieces of each of many speakers, each in a room and noise of its own: each is to be nearest to the middle of the other three
of its speaker, as it is asked for (`src/voice/who-speaks/known-voices.ts`), and to its speaker's own direction, by a margin (Deng et
al., arXiv:1801.07698). Faster and slower a speaker is somebody else. Now and then (EVERY in the environment: seconds) the running
mean of the weights is tried on the speakers of the dev split as `npm run who-speaks` tries it; OUTPUT/voices.pt is that which did
best. Also in the environment: SPEAKERS, how many in a batch; RATE, the highest learning rate."""

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
device = torch.device("cuda" if torch.cuda.is_available() else "cpu")
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


def spoken(material, around=0.08, block=256):
    """Leaves of each clip the part in which somebody speaks: what the ear hands over."""
    margin = int(around * RATE)
    for s in range(0, len(material.at), block):
        at, n = material.at[s : s + block], material.length[s : s + block]
        frames = torch.arange(0, int(n.max()), 320, device=device)
        index = at[:, None, None] + frames[None, :, None] + torch.arange(0, 320, 4, device=device)
        power = (audio[index.clamp(max=len(audio) - 1)].float() / 32768).square().mean(2)
        loud = (frames[None] + 320 <= n[:, None]) & (
            power > torch.where(frames[None] + 320 <= n[:, None], power, 0).amax(1, keepdim=True) / 1000
        )
        first = (torch.where(loud, frames[None], n[:, None]).amin(1) - margin).clamp(min=0)
        last = torch.minimum(torch.where(loud, frames[None] + 320, 0).amax(1) + margin, n)
        good = last - first > 0.2 * RATE
        material.at[s : s + block] = torch.where(good, at + first, at)
        material.length[s : s + block] = torch.where(good, last - first, n)


for each in ("train", "dev"):
    spoken(material[each])


def crop(material, pick, seconds, pace):
    """A piece of each clip, from the middle of what is longer, so much faster (and higher)."""
    n = int(seconds * RATE)
    length = (material.length[pick] / pace).long()
    spare = (length - n).clamp(min=0)
    off = (scenes.rand(len(pick)) * spare).long()
    lead = (scenes.rand(len(pick)) * (n - length).clamp(min=0)).long()
    t = torch.arange(n, device=device)[None] - lead[:, None]
    inside = (t >= 0) & (t + off[:, None] < length[:, None] - 1)
    source = (t.clamp(min=0) + off[:, None]) * pace[:, None]
    whole = source.floor()
    index = (material.at[pick][:, None] + whole.long()).clamp(max=len(audio) - 2)
    x = audio[index].float() * (1 - source + whole) + audio[index + 1].float() * (source - whole)
    return x / 32768 / material.rms[pick].clamp(min=1e-4)[:, None] * inside


def left_out(logs):
    """Some bands and moments left out by chance."""
    rows, bands, frames = logs.shape
    band, moment = torch.arange(bands, device=device)[None], torch.arange(frames, device=device)[None]
    keep = torch.ones_like(logs)
    for _ in range(2):
        first, width = scenes.rand(rows, 1) * bands, scenes.rand(rows, 1) * 8
        keep *= 1 - ((band >= first) & (band < first + width)).float()[:, :, None]
        first, width = scenes.rand(rows, 1) * frames, scenes.rand(rows, 1) * 12
        keep *= 1 - ((moment >= first) & (moment < first + width)).float()[:, None]
    return logs * keep


def heard(x, low, high, clean):
    rows, samples = x.shape
    x = scenes.room(x, scenes.rand(rows, lo=0.06, hi=0.5), scenes.rand(rows, lo=0, hi=0.12) * scenes.chance(rows, 0.6))
    half = rows // 2
    noise = torch.cat([scenes.recorded(half, samples), scenes.machine(rows - half, samples)])
    noise = noise[torch.randperm(rows, device=device)]
    x = x + noise * (10 ** (-scenes.rand(rows, lo=low, hi=high) / 20) * (1 - scenes.chance(rows, clean)))[:, None]
    return scenes.microphone(x)


LEAST, PIECES = 4, 4
PACES = (0.88, 1.0, 1.14)
# What the dev split is asked: so many utterances known of each, six others of the same recordings, at this level.
KNOWN, OTHERS, LEVEL_DB, MOST_CLIPS, OWN_TAKEN = 4, 6, 10.0, 10, 0.972
PER_ODDS = (0.066, 0.04)
train, dev = groups_of(material["train"], LEAST), groups_of(material["dev"], KNOWN + 2)
names = sorted(train)
people = [i for i, s in enumerate(names) if material["train"].clips[train[s][0]]["kind"] != "kokoro"]
say(
    len(names), "speakers to learn from,", len(people), "of them people;", sum(len(v) for v in train.values()), "clips;", len(dev), "to try"
)
flat = torch.tensor([i for s in names for i in train[s]], device=device)
counts = torch.tensor([len(train[s]) for s in names], device=device)
first = torch.cat([torch.zeros(1, dtype=torch.long, device=device), counts.cumsum(0)[:-1]])
is_people = torch.zeros(len(names), device=device)
is_people[people] = 1
draw = counts.float().clamp(max=40) ** 0.5
share = lambda which: draw * which / (draw * which).sum().clamp(min=1)
draw = 0.9 * share(is_people) + 0.1 * share(1 - is_people)
drawn = min(int(os.environ.get("SPEAKERS", 240)), len(names))

torch.manual_seed(1)
net = Voices().to(device)
heads = nn.Parameter(F.normalize(torch.randn(len(names) * len(PACES), OUT, device=device), dim=1))
scale = nn.Parameter(torch.tensor(10.0, device=device))
PEAK = float(os.environ.get("RATE", 2e-3))
opt = torch.optim.AdamW([{"params": net.parameters()}, {"params": [heads, scale], "weight_decay": 0.0}], lr=PEAK, weight_decay=5e-2)
mean = {k: v.detach().clone() for k, v in net.state_dict().items()}


@torch.no_grad()
def tried():
    """How often one of the same recordings is taken for the second person, where OWN_TAKEN of that person's own words are taken."""
    kept = {k: v.clone() for k, v in net.state_dict().items()}
    net.load_state_dict(mean)
    net.eval()
    sources, rng = {}, scenes.rng.get_state()
    scenes.rng.manual_seed(11)
    for speaker in sorted(dev):
        pick = torch.tensor(dev[speaker][:MOST_CLIPS], device=device)
        x = heard(crop(material["dev"], pick, 1.2, torch.ones(len(pick), device=device)), LEVEL_DB, LEVEL_DB, 0)
        sources.setdefault(material["dev"].clips[dev[speaker][0]]["source"], []).append(net(features(x)).float())
    scenes.rng.set_state(rng)
    own, other = [], []
    for voices in sources.values():
        for i, second in enumerate(voices):
            for k in range(min(OTHERS, len(voices) - 1)):
                technician = voices[(i + 1 + k * 7) % len(voices)]
                if technician is second:
                    continue
                middle = lambda v: F.normalize(v.mean(0), dim=0)
                apart = middle(second[:KNOWN]) - middle(technician[:KNOWN])
                for said, scores in ((second, own), (technician, other)):
                    for at in range(KNOWN, len(said) - 1, 2):
                        one, both = said[at] @ apart, middle(said[at : at + 2]) @ apart
                        scores.append(min(float(one) / PER_ODDS[0], float(both) / PER_ODDS[1]))
    net.load_state_dict(kept)
    net.train()
    if not own or not other:
        return 1.0, 0
    bound = sorted(own)[int((1 - OWN_TAKEN) * len(own))]
    return sum(score >= bound for score in other) / len(other), len(own)


def save():
    torch.save({k: v.half() if v.dtype.is_floating_point else v for k, v in mean.items()}, f"{output}/voices.pt")


step, best = 0, 2.0
since = told = time.time()
while True:
    gone = time.time() - since
    if gone > budget:
        break
    part = gone / budget
    lr = PEAK * min(1, (step + 1) / 300) * (0.5 * (1 + math.cos(math.pi * part)) * 0.99 + 0.01)
    for g in opt.param_groups:
        g["lr"] = lr
    who = torch.multinomial(draw, drawn, False)
    pace = (scenes.rand(drawn) * len(PACES)).long().clamp(max=len(PACES) - 1)
    pick = first[who].repeat(PIECES) + (scenes.rand(PIECES * drawn) * counts[who].repeat(PIECES)).long()
    seconds = 0.6 + 1.0 * float(torch.rand(1))
    paces = torch.tensor(PACES, device=device)[pace].repeat(PIECES) * scenes.rand(PIECES * drawn, lo=0.98, hi=1.02)
    x = heard(crop(material["train"], flat[pick], seconds, paces), -2, 30, 0.12)
    with torch.autocast(device.type, dtype=torch.bfloat16, enabled=device.type == "cuda"):
        e = net(left_out(features(x.float())))
    e = e.float()
    target = (who * len(PACES) + pace).repeat(PIECES)
    cos = e @ F.normalize(heads, dim=1).T
    margin = 0.2 * min(1, part * 4)
    theta = cos.gather(1, target[:, None]).clamp(-0.999, 0.999).acos() + margin
    logits = 30 * cos.scatter(1, target[:, None], theta.cos())
    pieces = e.view(PIECES, drawn, OUT)
    label, pair = torch.arange(drawn, device=device), 0.0
    for one in range(PIECES):
        others = F.normalize(pieces.sum(0) - pieces[one], dim=1)
        sim = scale.clamp(5, 40) * pieces[one] @ others.T
        pair = pair + 0.5 * (F.cross_entropy(sim, label) + F.cross_entropy(sim.T, label)) / PIECES
    loss = F.cross_entropy(logits, target) + pair
    opt.zero_grad(set_to_none=True)
    loss.backward()
    nn.utils.clip_grad_norm_(net.parameters(), 3.0)
    opt.step()
    keep = min(0.998, step / (step + 20))
    with torch.no_grad():
        for k, v in net.state_dict().items():
            if v.dtype.is_floating_point:
                mean[k].lerp_(v, 1 - keep)
            else:
                mean[k].copy_(v)
    step += 1
    if time.time() - told > float(os.environ.get("EVERY", 45)):
        told = time.time()
        taken, trials = tried()
        say(
            f"step {step}, {step / (told - since):.1f}/s, loss {loss.item():.2f}, pair {pair.item():.3f};",
            f"taken {100 * taken:.2f} % of {trials}",
        )
        if taken < best:
            best = taken
            save()
taken, trials = tried()
say(f"ended at step {step}: taken {100 * taken:.2f} % of {trials}; the best was {100 * best:.2f} %")
if taken < best:
    save()
