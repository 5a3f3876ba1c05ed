"""Trains the network: train.py OUTPUT SECONDS FROM TO FOLDER ...

FROM and TO say which part of the whole schedule this run is (0 to 1), so that it goes on from OUTPUT/state.pt in several
runs. On several devices: torchrun --nproc_per_node N train.py ... Writes OUTPUT/model.pt (the running mean of the weights),
state.pt and learned.json (what went in). In the environment: LANGUAGE; ROWS and SCENE, scenes in a batch (8 or more) and
their seconds; HELD, how many clips of each source a trial hears; RATE, the highest learning rate; SHARES, of the losses; SEED, of
the scenes; FIRST, the weights of a network to begin with where shapes agree."""

import json
import math
import os
import sys
import time
from concurrent.futures import ThreadPoolExecutor

import torch
import torch.distributed as dist
import torch.nn.functional as F
from torch import nn

from discriminate import row_loss, span_loss, spans_of
from languages import LANGUAGE
from material import contents, gather
from measure import HELD, phone_errors, targets_of
from network import HANN_WINDOW, Acoustic, centred, log_bands, mel_bands
from scenes import Scenes

output, budget, begin, end = sys.argv[1], *map(float, sys.argv[2:5])
folders = sys.argv[5:]
rank, world = int(os.environ.get("RANK", 0)), int(os.environ.get("WORLD_SIZE", 1))
cuda = torch.cuda.is_available()
device = torch.device("cuda", int(os.environ.get("LOCAL_RANK", 0))) if cuda else torch.device("cpu")
if cuda:
    torch.cuda.set_device(device)
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
if world > 1:
    dist.init_process_group("nccl" if cuda else "gloo")
ROWS, SECONDS = int(os.environ.get("ROWS", 160)), float(os.environ.get("SCENE", 10))
PEAK = float(os.environ.get("RATE", 2e-3))
WEIGHTS = {
    "en": {"people": 0.26, "people-long": 0.23, "joined": 0.06, "kokoro": 0.24, "kokoro-long": 0.05, "made": 0.16},
    "fr": {"people": 0.14, "people-long": 0.14, "native": 0.10, "kokoro": 0.45, "kokoro-long": 0.10, "made": 0.07},
}[LANGUAGE]
# How much each loss counts: phones late and early, nearness, none while nobody near speaks; against rivals late, early, and in rows.
SHARES = [float(s) for s in os.environ.get("SHARES", "1,0.7,0.4,0.15,0.08,0.04,0.03").split(",")]
started = time.time()
say = lambda *what: rank == 0 and print(f"{time.time() - started:.0f}s", *what, flush=True)

with ThreadPoolExecutor(8) as pool:
    audio, material, sizes = gather(folders, device, lambda f, a: list(pool.map(f, a)), WEIGHTS)
hours = len(audio) / 16000 / 3600
say(f"{hours:.1f} hours of sound; clips to learn {sizes},", *(f"{kind} {len(material[kind].clips)}" for kind in ("dev", "talk", "noise")))

torch.manual_seed(1)
net = Acoustic().to(device)
say("parameters", sum(p.numel() for p in net.parameters()) / 1e6, "million")
if os.environ.get("FIRST"):
    mine = net.state_dict()
    first = torch.load(os.environ["FIRST"], map_location=device)
    agree = {k: v.float() for k, v in first.items() if k in mine and mine[k].shape == v.shape}
    net.load_state_dict({**mine, **agree})
    say(f"begun with {len(agree)} of {len(mine)} tensors of {os.environ['FIRST']}")
optimizer = torch.optim.AdamW(net.parameters(), lr=PEAK, betas=(0.9, 0.98), weight_decay=1e-2, fused=cuda)
mean = {k: v.detach().clone() for k, v in net.state_dict().items()}
step = 0
if begin > 0:
    state = torch.load(f"{output}/state.pt", map_location=device)
    net.load_state_dict(state["net"]), optimizer.load_state_dict(state["optimizer"])
    mean, step = {k: v.to(device) for k, v in state["mean"].items()}, state["step"]
model = nn.parallel.DistributedDataParallel(net, device_ids=[device.index] if cuda else None) if world > 1 else net
scenes = Scenes(audio, material, device, 1000 * int(begin * 1000) + rank + 100 * int(os.environ.get("SEED", 0)))
bands, window = torch.from_numpy(mel_bands()).to(device), HANN_WINDOW.to(device)
ctc = nn.CTCLoss(zero_infinity=True, reduction="none")


def masked(f):
    """Bands and moments left out by chance."""
    rows, channels, frames = f.shape
    half = channels // 2
    band = torch.arange(half, device=f.device)[None]
    time_ = torch.arange(frames, device=f.device)[None]
    keep = torch.ones(rows, half, frames, device=f.device)
    for _ in range(2):
        s, w = scenes.rand(rows, 1) * half, scenes.rand(rows, 1) * 10
        keep *= 1 - ((band >= s) & (band < s + w)).float()[:, :, None]
    for _ in range(3):
        s, w = scenes.rand(rows, 1) * frames, scenes.rand(rows, 1) * 12
        keep *= 1 - ((time_ >= s) & (time_ < s + w)).float()[:, None]
    return torch.cat([f[:, :half] * keep, f[:, half:]], 1)


def warped(f):
    """Throats differ: the bands moved up or down a little."""
    rows, channels, frames = f.shape
    half = channels // 2
    at = (torch.arange(half, device=f.device)[None] * scenes.rand(rows, 1, lo=0.92, hi=1.08)).clamp(max=half - 1.001)
    low = at.long()
    part = (at - low)[:, :, None]
    index = low[:, :, None].expand(-1, -1, frames)
    x = f[:, :half].gather(1, index) * (1 - part) + f[:, :half].gather(1, index + 1) * part
    return torch.cat([x, f[:, half:]], 1)


def losses(x, phones, count, active, said):
    with torch.autocast(device.type, dtype=torch.bfloat16, enabled=cuda):
        late, early, near = model(masked(warped(centred(log_bands(x, bands, window)))))
    targets, lengths = targets_of(phones, count)
    times = torch.full((len(x),), late.shape[1], dtype=torch.long, device=device)
    moments = min(active[0].shape[1], near.shape[1])
    loud, heard = (a[:, :moments] for a in active)
    # What was said is told before long: a phone may stand where its speaker is heard, or one moment before.
    quiet = F.pad(1 - F.max_pool1d(F.pad(heard, (0, 1))[:, None], 2, 1)[:, 0], (0, late.shape[1] - moments))
    cost = F.pad(8 * quiet[..., None].expand(-1, -1, late.shape[2] - 1), (1, 0))
    each = [ctc((o - cost).transpose(0, 1), targets, times, lengths) / lengths.clamp(min=8) for o in (late, early)]
    near_loss = F.binary_cross_entropy_with_logits(near[:, :moments], loud)
    blank = [-(o[:, :, 0] * quiet).sum() / quiet.sum().clamp(min=1) for o in (late, early)]
    spans = spans_of(scenes, said, count, late.shape[1])
    (told_late, won), (told_early, _) = span_loss(late, spans), span_loss(early, spans)
    in_rows = row_loss(late, scenes, phones, count, said.figures)
    return each[0].mean(), each[1].mean(), near_loss, blank[0] + blank[1], told_late, told_early, in_rows, won


def trial():
    """Phone errors of the mean weights on people that were not learned from."""
    kept = {k: v.clone() for k, v in net.state_dict().items()}
    net.load_state_dict(mean)
    for line in phone_errors(net, scenes, material["dev"], HELD):
        say("  ", line)
    net.load_state_dict(kept)
    net.train()


def save():
    torch.save({k: v.half() for k, v in mean.items()}, f"{output}/model.pt")
    torch.save({"net": net.state_dict(), "optimizer": optimizer.state_dict(), "mean": mean, "step": step}, f"{output}/state.pt")


since, spoke, average, done = time.time(), time.time(), None, 0
while True:
    # All devices stop at the same step.
    gone = torch.tensor([time.time() - since], device=device)
    if done % 10 == 0:
        if world > 1:
            dist.broadcast(gone, 0)
        if gone.item() > budget:
            break
        part = begin + (end - begin) * min(1.0, gone.item() / budget)
    rate = PEAK * min(1, (step + 1) / 500) * (0.5 * (1 + math.cos(math.pi * part)) * 0.99 + 0.01)
    for g in optimizer.param_groups:
        g["lr"] = rate
    easy = part < 0.06 and not os.environ.get("FIRST")
    # Sentences want longer scenes: every fourth time.
    rows, seconds = (ROWS, SECONDS) if step % 4 else (ROWS * 10 // 17, SECONDS * 1.7)
    told = losses(*scenes.batch(rows, seconds, (5.0, 35.0) if easy else (-6.0, 30.0), 0.3 if easy else 0.15))
    loss = sum(share * each for share, each in zip(SHARES, told))
    optimizer.zero_grad(set_to_none=True)
    loss.backward()
    nn.utils.clip_grad_norm_(net.parameters(), 2.0)
    optimizer.step()
    keep = min(0.9992, step / (step + 20))
    with torch.no_grad():
        torch._foreach_lerp_(list(mean.values()), [v for v in net.state_dict().values()], 1 - keep)
    step, done = step + 1, done + 1
    if step % 50 == 0:
        now = torch.stack(told).detach().cpu()
        average = now if average is None else 0.8 * average + 0.2 * now
    if rank == 0 and time.time() - spoke > 120:
        spoke = time.time()
        say(
            f"step {step}, {done / (time.time() - since):.1f}/s here, part {part:.2f},",
            "losses late early near blank, rivals late early rows, won",
            [round(v, 3) for v in average.tolist()] if average is not None else "",
        )
        trial()
        save()
if rank == 0:
    trial()
    save()
    learned = {"steps": step, "clips": sizes, "hours": hours, "rows": ROWS * world, "seconds": SECONDS, "sources": contents(material)}
    json.dump(learned, open(f"{output}/learned.json", "w"), indent=1)
    say("steps", step)
if world > 1:
    dist.destroy_process_group()
