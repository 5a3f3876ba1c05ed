"""The sound that the network learns from, on the device, with what is known of each clip."""

import glob
import json
import os
import re

import numpy as np
import torch

from languages import spelled
from network import RATE
from rivals import FIGURES, table_of


def decoded(path):
    """A pack as 16 kHz whole numbers; decoded once and kept beside it."""
    kept = path[:-5] + ".s16"
    if not os.path.exists(kept):
        import soundfile
        from scipy.signal import resample_poly

        sound, rate = soundfile.read(path, dtype="float32")
        if rate != RATE:
            sound = resample_poly(sound, 1, rate // RATE)
        (np.clip(sound, -1, 1) * 32767).astype("<i2").tofile(kept)
    return np.fromfile(kept, "<i2")


def read_folder(folder, parallel):
    """Clips of a folder of packs with items.json, or of made speech (*.s16 with *.json of the same name)."""
    clips, sounds, base = [], [], 0
    if os.path.exists(f"{folder}/items.json"):
        items = json.load(open(f"{folder}/items.json"))
        names = sorted({i["pack"] for i in items})
        found = dict(zip(names, parallel(decoded, [f"{folder}/{n}.opus" for n in names])))
        at = {}
        for name in names:
            at[name], base = base, base + len(found[name])
            sounds.append(found[name])
        clips = [{**i, "at": i["at"] + at[i["pack"]]} for i in items]
    else:
        for path in sorted(glob.glob(f"{folder}/*.json")):
            if not os.path.exists(path[:-5] + ".s16"):
                continue
            sound = np.fromfile(path[:-5] + ".s16", "<i2")
            for i in json.load(open(path)):
                clips.append({"split": "train", **i, "at": i["at"] + base, "kind": "kokoro", "speaker": i["voice"], "source": "kokoro"})
            sounds.append(sound)
            base += len(sound)
    return clips, (np.concatenate(sounds) if sounds else np.zeros(0, np.int16))


LONGEST_PHONES = 160


class Material:
    """All clips of one kind in tensors: where, how long, how loud, phones, whose."""

    def __init__(self, clips, device, speech):
        self.clips = clips
        t = lambda x, d: torch.tensor(x, device=device, dtype=d)
        self.at = t([c["at"] for c in clips], torch.long)
        self.length = t([c["length"] for c in clips], torch.long)
        if speech:
            longest = max([len(c["spelled"]) for c in clips] + [1])
            phones = np.zeros((len(clips), longest), np.int16)
            for row, c in zip(phones, clips):
                row[: len(c["spelled"])] = c["spelled"]
            self.phones, self.count = t(phones, torch.int16), t([len(c["spelled"]) for c in clips], torch.long)
            self.quiet_around = t([float(c["kind"] == "kokoro") for c in clips], torch.float32)
            # Clips of a speaker stand together, so that a scene can have one speaker.
            first, size, where = [], [], {}
            for i, c in enumerate(clips):
                where.setdefault((c["kind"], c["speaker"]), []).append(i)
            for i, c in enumerate(clips):
                mine = where[(c["kind"], c["speaker"])]
                first.append(mine[0]), size.append(len(mine))
            self.first, self.size = t(first, torch.long), t(size, torch.long)

    def loudness(self, audio, block=512):
        """Root mean square of the part in which something is heard, of each clip, and how long it is quiet before and after that."""
        out, lead, tail = [], [], []
        for s in range(0, len(self.at), block):
            at, n = self.at[s : s + block], self.length[s : s + block].clamp(max=12 * RATE)
            frames = torch.arange(0, int(n.max()), 320, device=audio.device)
            idx = at[:, None, None] + frames[None, :, None] + torch.arange(0, 320, 4, device=audio.device)
            power = (audio[idx.clamp(max=len(audio) - 1)].float() / 32768).square().mean(2)
            power = torch.where(frames[None] + 320 <= n[:, None], power, torch.zeros_like(power))
            loud = power > power.amax(1, keepdim=True) / 3000
            on = power > power.amax(1, keepdim=True) / 300
            lead.append(torch.where(on, frames[None], n[:, None]).amin(1))
            tail.append((self.length[s : s + block] - torch.where(on, frames[None] + 320, 0).amax(1)))
            out.append(((power * loud).sum(1) / loud.sum(1).clamp(min=1) + 1e-10).sqrt())
        self.rms = torch.cat(out)
        around = RATE // 30
        self.lead, self.tail = ((torch.cat(quiet) - around).clamp(min=0) for quiet in (lead, tail))


def gather(folders, device, parallel, weights):
    """All folders: the sound, speech to learn and to test on, talk, noises, and how often each is drawn."""
    speech, noise, talk, sounds, base = [], [], [], [], 0
    for folder in folders:
        clips, sound = read_folder(folder, parallel)
        for c in clips:
            c = {**c, "at": c["at"] + base}
            if c["length"] < 0.12 * RATE or c["at"] + c["length"] > base + len(sound):
                continue
            if c["kind"] == "noise":
                if c["split"] == "train":
                    noise.append(c)
                continue
            c["spelled"] = spelled(c["phones"])
            if c["kind"] == "talk" or not c["spelled"]:
                if c["split"] == "train":
                    talk.append(c)
            elif c["length"] <= 16 * RATE and len(c["spelled"]) <= LONGEST_PHONES * 1.5:
                speech.append(c)
        sounds.append(sound)
        base += len(sound)
    audio = torch.from_numpy(np.concatenate(sounds + [np.zeros(RATE, np.int16)])).to(device)
    speech.sort(key=lambda c: (c["kind"], c["speaker"]))
    train = [c for c in speech if c["split"] == "train"]
    dev = [c for c in speech if c["split"] == "dev"]
    # Words of which there are many by many people do not drown the others.
    counts, sizes = {}, {}
    for c in train:
        c["group"] = group_of(c)
        counts[(c["group"], c["text"])] = counts.get((c["group"], c["text"]), 0) + 1
    draw = np.array([counts[(c["group"], c["text"])] ** -0.6 * weight_of(c) for c in train])
    groups = np.array([c["group"] for c in train])
    for g in set(groups):
        sizes[str(g)] = int((groups == g).sum())
        draw[groups == g] *= weights.get(g, 1.0) / draw[groups == g].sum()
    kinds = {}
    for c in noise:
        kinds.setdefault(c["speaker"] if c["source"] == "made" else c["source"], []).append(c)
    noise_draw = np.array([1.0 / (len(kinds[c["speaker"] if c["source"] == "made" else c["source"]]) ** 0.7) for c in noise])
    m = {
        "train": Material(train, device, True),
        "dev": Material(dev, device, True),
        "talk": Material(talk + train, device, False),
        "noise": Material(noise, device, False),
    }
    for each in m.values():
        if len(each.clips):
            each.loudness(audio)
    m["train"].draw = torch.tensor(draw / draw.sum(), device=device)
    # Those of people, where there are some.
    stops = [i for i, c in enumerate(train) if STOP.search(c["text"]) and c["length"] <= 1.6 * RATE]
    said = [i for i in stops if train[i]["kind"] == "speech"]
    m["train"].stops = torch.tensor(said if len(said) > 100 else stops, device=device, dtype=torch.long)
    train_figures(m["train"], device)
    mine, table, count = table_of(train)
    m["train"].rivals, m["train"].rival_phones, m["train"].rival_count = (torch.from_numpy(a).to(device) for a in (mine, table, count))
    m["noise"].draw = torch.tensor(noise_draw / noise_draw.sum(), device=device)
    # Other people's talk comes from talk without a transcript, and from what is said near too.
    talk_draw = np.concatenate([np.full(len(talk), 0.35 / max(1, len(talk))), np.asarray(draw) / draw.sum() * 0.65])
    m["talk"].draw = torch.tensor(talk_draw / talk_draw.sum(), device=device)
    return audio, m, sizes


def train_figures(material, device):
    """Figures that people say one at a time, by speaker, of whom there are enough to make rows of: material.figures and who says which."""
    by = {}
    for i, c in enumerate(material.clips):
        if c["kind"] == "speech" and c["text"] in FIGURES and c["length"] <= 1.6 * RATE and not c["speaker"].endswith("?"):
            by.setdefault(c["speaker"], []).append(i)
    rows = [mine for mine in by.values() if len({material.clips[i]["text"] for i in mine}) >= 2]
    t = lambda x: torch.tensor(x, device=device, dtype=torch.long)
    material.figures = t([i for mine in rows for i in mine])
    material.figure_size = t([len(mine) for mine in rows])
    material.figure_first = material.figure_size.cumsum(0) - material.figure_size
    material.figure_draw = t([len({material.clips[i]["text"] for i in mine}) for mine in rows]).double() ** 1.5


STOP = re.compile(r"\b(stop|arrêtez?)\b")
# Words that were taken for "stop", and ends that were lost.
NEAR_STOP = re.compile(r"\b(s[tkpm][aeio]|squ|thermostat|(top|tap|tip|shop|chop|swap)\b)")
# Told wrongly most, above what is near to it: taken for "stop" before this.
TAKEN_FOR_STOP = re.compile(r"\b(squeal\w*|squeak\w*|status|thermostat|smoke|skip)\b")
# The last figure of a row is lost most.
ROW = re.compile(r"^((zero|oh|one|two|three|four|five|six|seven|eight|nine|niner|point) ?){3,}$|(fifty|eighty|teen)\b")
WEAK_END = re.compile(r"\b(on|in|open|off|out|yet|it|is|up|here|clear|leak|hold|help|back|dark|torqued|quarts?|degrees)$")


def weight_of(c):
    """How much more often than others a clip is drawn."""
    text = c["text"].replace(",", "")
    if "stop" in text.split():
        return 3 if c["group"] == "people" else 1
    if TAKEN_FOR_STOP.search(text):
        return 4
    return 2 if NEAR_STOP.search(text) or WEAK_END.search(text) or ROW.search(text) else 1


def group_of(c):
    # Rows of figures that were put together of what people said (joined.py).
    if c.get("pack", "").startswith("made-joined"):
        return "joined"
    if c["kind"] in ("made", "kokoro"):
        return c["kind"] if c["length"] <= 6 * RATE else c["kind"] + "-long"
    # The few who speak the language of a network that learned from others too.
    if c.get("native"):
        return "native"
    return "people" if c["length"] <= 3.5 * RATE else "people-long"


def contents(material):
    """How many clips and minutes of each source there are to learn from, and of noise."""
    told = {}
    for kind in ("train", "noise"):
        for c in material[kind].clips:
            row = told.setdefault(f"{kind} {c['source']}", {"clips": 0, "minutes": 0.0})
            row["clips"] += 1
            row["minutes"] += c["length"] / RATE / 60
    return told
