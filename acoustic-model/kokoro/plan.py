"""Who says which text and how: utterances drawn by chance, the same for the same seed.

English, or French with LANGUAGE=fr in the environment: the one French voice then lends its way of speaking to the others."""

import collections
import json
import math
import os

import numpy as np

FRENCH = os.environ.get("LANGUAGE") == "fr"
NATIVE = "ff_siwis"
# Voices that are in no mix: one to choose settings by, one for the report.
HELD = {"am_michael": "dev", "bf_emma": "test"}
# How often texts of a kind are drawn, and how often one of these as it is asked for.
KINDS = dict(reply=14, control=5, number=22, digits=14, stop=9, near=16, carrier=11, talk=15, words=4, long=5)
AS_ASKED = dict(reply=0.6, control=0.75, stop=0.65, near=0.5, number=0.2, digits=0.2)
# How many texts a held voice says of those that are made of others; what is asked for it says all.
HELD_TEXTS = dict(number=130, digits=60, stop=20, carrier=40, talk=60, reply=20, words=15, long=12)
SLOWEST, FASTEST = 0.75, 1.35
# Share of the French voice: least and most, in the sound of a voice and in its melody and timing.
TIMBRE, MELODY = (0.1, 0.9), (0.45, 1.0)
# Whispered, and called like Santa Claus: less often than the others.
RARE = {"af_nicole": 0.4, "am_santa": 0.4}


def read_texts(folder):
    """By kind: texts as they are asked for, and texts made of these."""
    by = collections.defaultdict(lambda: ([], []))
    with open(f"{folder}/spelled.jsonl", encoding="utf8") as file:
        for line in file:
            text = json.loads(line)
            by[text["kind"]][0 if text["base"] else 1].append(text)
    return by


class Voices:
    """English voices, alone and mixed, now and then with a share of a voice of another language."""

    def __init__(self, folder):
        styles = np.load(f"{folder}/voices.npz")
        self.styles = {name: styles[name].astype(np.float32) for name in styles.files}
        self.english = [name for name in self.styles if name[0] in "ab" and name not in HELD]
        self.foreign = [name for name in self.styles if name[0] not in "ab"]
        weights = np.array([RARE.get(name, 1) for name in self.english])
        self.weights = weights / weights.sum()

    def mix(self, random):
        """One, two or three voices and the share of each."""
        kind = random.random()
        count = 1 if kind < 0.2 else 2 if kind < 0.65 else 3
        names = [str(name) for name in random.choice(self.english, count, replace=False, p=self.weights)]
        shares = random.dirichlet(np.full(count, 1.5))
        if random.random() < 0.2:
            share = random.uniform(0.2, 0.55)
            names.append(str(random.choice(self.foreign)))
            shares = np.append(shares * (1 - share), share)
        return list(zip(names, (round(float(share), 3) for share in shares)))

    def french_mix(self, random, least, most):
        """The French voice with a share of one or two others, of whatever language."""
        share, count = random.uniform(least, most), 1 if random.random() < 0.6 else 2
        others = [name for name in self.styles if name != NATIVE and name not in HELD]
        names = [NATIVE, *(str(name) for name in random.choice(others, count, replace=False))]
        shares = [share, *((1 - share) * random.dirichlet(np.full(count, 1.5)))]
        return list(zip(names, (round(float(share), 3) for share in shares)))

    def style(self, mix, symbols):
        """Styles differ with the number of symbols said."""
        return sum(share * self.styles[name][min(symbols, 256) - 1] for name, share in mix)


ENDS = (".", "!", "?", "", ",", "…", "!!")
CALM = [0.5, 0.12, 0.14, 0.1, 0.08, 0.04, 0.02]
CALLED = [0.25, 0.4, 0.05, 0.08, 0.07, 0.03, 0.12]


def symbols_of(text, side, random):
    """The text's symbols with its pauses and an end: stop words are called out more often."""
    symbols = text[side]
    pause = random.random()
    if pause < 0.12:
        symbols = symbols.replace(", ", " ")
    elif pause < 0.22:
        symbols = symbols.replace(", ", ". ")
    elif pause < 0.27:
        symbols = symbols.replace(", ", "… ")
    return symbols + ENDS[random.choice(len(ENDS), p=CALLED if text["kind"] == "stop" else CALM)]


def speed_between(random, low, high):
    return float(np.exp(random.uniform(math.log(low), math.log(high))))


def training_plan(folder, seed, rank, world):
    """Utterances without end; each depends on the seed and its number alone."""
    by, voices = read_texts(folder), Voices(folder)
    kinds = sorted(kind for kind in by if kind in KINDS)
    weights = np.array([KINDS[kind] for kind in kinds], float)
    weights /= weights.sum()
    number = rank
    while True:
        random = np.random.default_rng([seed, number])
        kind = kinds[random.choice(len(kinds), p=weights)]
        asked, more = by[kind]
        pool = asked if asked and (not more or random.random() < AS_ASKED.get(kind, 0)) else more
        most_important = [text for text in asked if text["base"] > 1] if pool is asked else []
        if most_important and random.random() < 0.5:
            pool = most_important
        text = pool[random.integers(len(pool))]
        if FRENCH:
            side, mix = "fr", voices.french_mix(random, *TIMBRE)
            tone = voices.french_mix(random, *MELODY)
        else:
            mix = voices.mix(random)
            british = sum(share for name, share in mix if name[0] == "b") > 0.5 or (random.random() < 0.08)
            side = "gb" if british else "us"
            # Now and then the melody and the timing of somebody else.
            tone = mix if random.random() < 0.7 else voices.mix(random)
        speed = speed_between(random, SLOWEST, FASTEST)
        pitch = float(np.exp(random.normal(0, 0.07))) if random.random() < 0.5 else 1.0
        if kind == "stop" and random.random() < 0.3:
            pitch *= float(random.uniform(1.05, 1.3))
            speed = max(speed, 1.0)
        yield dict(text=text, side=side, mix=mix, tone=tone, speed=speed, pitch=pitch,
                   symbols=symbols_of(text, side, random), split="train", number=number)  # fmt: skip
        number += world


def held_plan(folder, seed):
    """All that the held voices say: every text as it is asked for, stop words twice, and some of the others."""
    by, number = read_texts(folder), 0
    for name, split in HELD.items():
        random = np.random.default_rng([seed, 7, len(name)])
        side, voice, texts = ("gb" if name[0] == "b" else "us"), [(name, 1.0)], []
        tone = voice
        if FRENCH:
            side, voice, tone = "fr", [(NATIVE, 0.3), (name, 0.7)], [(NATIVE, 0.6), (name, 0.4)]
        for kind in sorted(by):
            asked, more = by[kind]
            whole = list(asked) if kind in ("reply", "control", "stop", "near") else []
            rest = more + (asked if kind in ("number", "digits") else [])
            some = random.choice(len(rest), min(HELD_TEXTS.get(kind, 0), len(rest)), replace=False)
            texts += whole + [rest[i] for i in some] + (whole if kind == "stop" else [])
        for text in texts:
            speed = speed_between(random, 0.85, 1.25)
            yield dict(text=text, side=side, mix=voice, tone=tone, speed=speed, pitch=1.0,
                       symbols=symbols_of(text, side, random), split=split, number=number)  # fmt: skip
            number += 1
