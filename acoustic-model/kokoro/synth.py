"""Speech of the texts by mixed voices, many utterances at once: synth.py FOLDER OUTPUT [options]

FOLDER is what extract.py, texts.ts and phones.py wrote. Writes OUTPUT/NAME.s16 (16 kHz, 16 bits, utterances one after the
other) and OUTPUT/NAME.json, where each lies and what it says. Several processes can share the work and a GPU: --rank, --world."""

import argparse
import collections
import itertools
import json
import os
import time

import numpy as np
import torch
import torch.nn.functional as F
from plan import Voices, held_plan, training_plan
from speaker import FRAME, RATE, Kokoro, load_weights

OUT_RATE = 16000
# Frames; durations are rounded up to it with silence, so that more utterances have equally many.
ROUND = 8
LONGEST_SYMBOLS = 400
LONGEST_EDGE_FRAMES = 14
LEVEL, PEAK = 0.07, 0.97
BEFORE_S, AFTER_S = 0.06, 0.12


def resampler(device, taps=48):
    """24 kHz to 16 kHz: a windowed sinc at 48 kHz, two phases, each a convolution with stride 3."""
    n = torch.arange(-taps, taps + 1, dtype=torch.float64)
    h = torch.sinc(n * 7600 / 24000) * torch.kaiser_window(2 * taps + 1, periodic=False, beta=8.0, dtype=torch.float64)
    h = 2 * h / h.sum()
    # out[m] = sum over k of x[k] h[3m - 2k]: h[-2(k - 3m/2)] where m is even, h[1 - 2(k - (3m - 1)/2)] where it is odd.
    half = taps // 2
    offset = torch.arange(-half, half + 1)
    at = lambda i: torch.where(i.abs() <= taps, h[(i + taps).clamp(0, 2 * taps)], 0.0)
    even, odd = (at(phase - 2 * offset).float().to(device)[None, None] for phase in (0, 1))

    def run(x):
        a = F.conv1d(F.pad(x[:, None], (half, half)), even, stride=3)[:, 0]
        b = F.conv1d(F.pad(x[:, None, 1:], (half, half + 1)), odd, stride=3)[:, 0]
        count = min(a.shape[1], b.shape[1])
        return torch.stack([a[:, :count], b[:, :count]], 2).reshape(x.shape[0], -1)

    return run


def heard(x):
    """Start and end of what is heard in each row of 16 kHz."""
    count = x.shape[1] // 160
    power = x[:, : count * 160].reshape(x.shape[0], count, 160).pow(2).mean(2)
    on = power > power.amax(1, keepdim=True).clamp(min=1e-9) * 10**-4.2
    first, last = on.int().argmax(1), count - 1 - on.flip(1).int().argmax(1)
    start = (first * 160 - int(BEFORE_S * OUT_RATE)).clamp(min=0)
    return start, ((last + 1) * 160 + int(AFTER_S * OUT_RATE)).clamp(max=count * 160)


class Synth:
    def __init__(self, folder, device, half, seed):
        self.device = torch.device(device)
        self.kokoro = Kokoro(load_weights(f"{folder}/weights.npz", self.device), self.device, half)
        self.vocabulary = json.load(open(f"{folder}/vocabulary.json", encoding="utf8"))
        self.voices, self.resample = Voices(folder), resampler(self.device)
        self.random = torch.Generator(device=self.device)
        self.random.manual_seed(seed)

    def styles(self, part):
        return torch.from_numpy(np.stack([one["style"] for one in part])).float().to(self.device)

    def timed(self, utterances, most_symbols=8192):
        """First stage: each utterance with its frames and features. Those of equally many symbols go together."""
        groups = collections.defaultdict(list)
        for one in utterances:
            one["ids"] = [self.vocabulary[s] for s in one["symbols"] if s in self.vocabulary][:LONGEST_SYMBOLS]
            count = len(one["ids"])
            if count == 0:
                continue
            sound, melody = (self.voices.style(one[whose], count) for whose in ("mix", "tone"))
            one["style"] = np.concatenate([sound[:128], melody[128:]])
            groups[count].append(one)
        for count, group in groups.items():
            size = max(1, most_symbols // count)
            for at in range(0, len(group), size):
                yield from self.with_frames(group[at : at + size])

    def with_frames(self, part):
        ids = torch.tensor([[0, *one["ids"], 0] for one in part]).to(self.device)
        speed = torch.tensor([one["speed"] for one in part]).to(self.device)
        frames, melody, sound = self.kokoro.tokens(ids, self.styles(part), speed)
        frames = frames.cpu().numpy()
        for i, one in enumerate(part):
            mine = frames[i].copy()
            mine[0], mine[-1] = min(mine[0], LONGEST_EDGE_FRAMES), min(mine[-1], LONGEST_EDGE_FRAMES)
            more = -int(mine.sum()) % ROUND
            mine[0] += more // 2
            mine[-1] += more - more // 2
            one.update(frames=mine, melody=melody[i], sound=sound[i], total=int(mine.sum()))
            yield one

    def spoken(self, part):
        """Second stage: the sound of utterances of equally many frames, cut out and levelled, 16 kHz in 16 bits."""
        frames = torch.from_numpy(np.concatenate([one["frames"] for one in part])).to(self.device)
        rows, total = len(part), part[0]["total"]
        index = torch.repeat_interleave(torch.arange(len(frames), device=self.device), frames, output_size=rows * total)
        spread = lambda what: torch.cat([one[what] for one in part])[index].view(rows, total, -1)
        style = self.styles(part)
        pitch, energy = self.kokoro.melody(spread("melody"), style)
        pitch = pitch * torch.tensor([one["pitch"] for one in part], device=self.device)[:, None]
        x = self.resample(self.kokoro.sound(spread("sound"), pitch, energy, style, self.random).float())
        start, end = heard(x)
        at = torch.arange(x.shape[1], device=self.device)[None]
        x = torch.where((at >= start[:, None]) & (at < end[:, None]), x, 0.0)
        level = (x.pow(2).sum(1) / (end - start).clamp(min=1)).sqrt().clamp(min=1e-5)
        gain = torch.minimum(LEVEL / level, PEAK / x.abs().amax(1).clamp(min=1e-5))
        x = (x * gain[:, None] * 32767).round().to(torch.int16).cpu().numpy()
        for i, one in enumerate(part):
            yield one, x[i, start[i] : end[i]]


class Part:
    """A file of sound and its index."""

    def __init__(self, stem):
        self.stem, self.file, self.samples, self.entries = stem, open(stem + ".s16", "wb"), 0, []

    def put(self, one, sound):
        text = one["text"]
        # British is written only where it differs.
        phones = text.get(f"{one['side']}_phones") or text["us_phones"]
        voice = "+".join(f"{name}*{share}" if share < 1 else name for name, share in one["mix"])
        self.entries.append(
            dict(
                at=self.samples,
                length=len(sound),
                kind="speech",
                phones=phones,
                group="kokoro." + text["kind"],
                split=one["split"],
                text=text["text"],
                voice=voice,
                speed=round(one["speed"], 2),
                n=one["number"],
            )
        )
        self.file.write(sound.tobytes())
        self.samples += len(sound)

    def close(self):
        self.file.close()
        json.dump(self.entries, open(self.stem + ".json", "w"))


def options():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder")
    parser.add_argument("output")
    parser.add_argument("--seconds", type=float, default=240, help="how long this process may take, loading and all")
    parser.add_argument("--most", type=int, default=10**9, help="how many utterances at most")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--rank", type=int, default=0, help="which of the processes this is")
    parser.add_argument("--world", type=int, default=1, help="how many processes share the work")
    parser.add_argument("--held", action="store_true", help="what the two held voices say")
    parser.add_argument("--half", choices=["fp16", "bf16", "no"], default="no", help="precision of the second stage")
    parser.add_argument("--batch", type=float, default=200, help="seconds of speech in a batch")
    parser.add_argument("--pool", type=int, default=512, help="utterances that are timed at once")
    parser.add_argument("--device", default="cuda" if torch.cuda.is_available() else "cpu")
    return parser.parse_args()


def main():
    asked, began = options(), time.time()
    torch.set_grad_enabled(False)
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
    half = dict(fp16=torch.float16, bf16=torch.bfloat16, no=None)[asked.half]
    synth = Synth(asked.folder, asked.device, half, asked.seed * 1000 + asked.rank)
    plan = held_plan(asked.folder, asked.seed) if asked.held else training_plan(asked.folder, asked.seed, asked.rank, asked.world)
    os.makedirs(asked.output, exist_ok=True)
    parts = {}
    # Some seconds are left for what has been begun.
    over = lambda: time.time() - began > asked.seconds - 8

    def flush(batch):
        for one, sound in synth.spoken(batch):
            split = one["split"]
            if split not in parts:
                name = f"kokoro-held-{split}" if asked.held else f"kokoro-{asked.seed}-{asked.rank}"
                parts[split] = Part(f"{asked.output}/{name}")
            parts[split].put(one, sound)

    batches, left, ended = collections.defaultdict(list), asked.most, False
    while left > 0 and not ended and not over():
        pool = list(itertools.islice(plan, min(asked.pool, left)))
        left, ended = left - len(pool), len(pool) == 0
        for one in synth.timed(pool):
            batch = batches[one["total"]]
            batch.append(one)
            if len(batch) * one["total"] >= asked.batch * RATE / FRAME:
                flush(batches.pop(one["total"]))
            if over():
                break
    for _, batch in sorted(batches.items(), key=lambda item: -len(item[1]) * item[0]):
        if asked.held or asked.most < 10**9 or time.time() - began < asked.seconds:
            flush(batch)
    for part in parts.values():
        part.close()
    made, hours = sum(len(p.entries) for p in parts.values()), sum(p.samples for p in parts.values()) / OUT_RATE / 3600
    print(f"{asked.rank}: {made} utterances, {hours:.3f} hours in {time.time() - began:.0f} s", flush=True)


if __name__ == "__main__":
    main()
