"""A Piper voice, of one speaker or of many, says hard texts: many_voices.py VOICE.onnx KOKORO MADE HOURS [SEED [PART OF]]

VOICE.onnx.json lies beside the model; such voices are VITS networks that learned from people. Says texts drawn from
KOKORO/spelled.jsonl (phones.py), most of them numbers, by the phones that stand there, so that the label is what is said. Pace and
noise are drawn anew for each; a voice of a single speaker is also made larger and smaller (its sampleRateHz is not the true one).
Writes MADE/NAME.s16 and NAME.jsonl, as accents.py does. Of more than fifty speakers, twelve are kept for the split "dev", and say
25 each. With PART and OF, one of so many processes: another seed, files of its own."""

import json
import os
import random
import sys

import numpy as np

from hard_texts import kind_of
from rivals import FIGURES, NUMBERS

# Share of what is said, and of at most how many words each is.
DRAWN = {"figures": (0.40, 7), "figure": (0.15, 1), "answer": (0.20, 5), "stop": (0.05, 7), "near": (0.05, 4), "talk": (0.15, 12)}
HELD, HELD_SAY, HELD_KINDS = 12, 25, ("figure", "figures", "answer")
# Symbols of misaki as espeak-ng writes the same sound, the longer ones first.
ESPEAK = {
    "ɜɹ": "ɜː", "əɹ": "ɚ", "A": "eɪ", "I": "aɪ", "O": "oʊ", "W": "aʊ", "Y": "ɔɪ", "ʤ": "dʒ", "ʧ": "tʃ", "ᵊ": "ə", "ɑ": "ɑː", "u": "uː",
    "ɔ": "ɔː",
}  # fmt: skip
# How long a vowel is that has a stress, and at which it has none.
STRESS, VOWELS = "ˈˌ", "AIOWYaiuæɑɔəɛɜɪʊʌᵻɐᵊ"
PACE, NOISE, UNEVEN, SIZE = (0.75, 1.3), (0.4, 0.9), (0.5, 1.0), (0.86, 1.24)


def espeak_of(symbols):
    """Symbols of misaki (American) as espeak-ng would have written them; "i" is long where it bears a stress."""
    out, at, stressed = "", 0, False
    while at < len(symbols):
        s = next((n for n in (2, 1) if symbols[at : at + n] in ESPEAK), 0)
        here = symbols[at : at + max(1, s)]
        if here == "i":
            out += "iː" if stressed else "i"
        else:
            out += ESPEAK.get(here, here)
        stressed = here in STRESS or (stressed and here[0] not in VOWELS)
        at += len(here)
    return out


def what_of(words, kind):
    """As what a text is drawn; None: not at all."""
    if len(words) == 1 and words[0] in FIGURES:
        return "figure"
    as_ = kind_of(words, kind)
    if kind == "stop" or kind == "near":
        return kind
    if any(w in NUMBERS for w in words):
        return "figures" if kind in ("number", "digits", "carrier") else None
    return "answer" if as_ in ("reply", "smoke") else kind if kind == "talk" else None


def texts_of(kokoro):
    of = {kind: [] for kind in DRAWN}
    with open(f"{kokoro}/spelled.jsonl", encoding="utf8") as file:
        for row in map(json.loads, file):
            words = row["text"].replace(",", "").split()
            what = what_of(words, row["kind"])
            if what and len(words) <= DRAWN[what][1] and row["us_phones"]:
                of[what].append({"text": " ".join(words), "phones": row["us_phones"], "kind": what, "symbols": row["us"]})
    return of


class Piper:
    """A voice of Piper: phones as espeak-ng writes them to 16-bit sound."""

    def __init__(self, path, threads=1):
        import onnxruntime

        told = json.load(open(f"{path}.json", encoding="utf8"))
        self.ids, self.rate = told["phoneme_id_map"], told["audio"]["sample_rate"]
        self.speakers = told["num_speakers"]
        options = onnxruntime.SessionOptions()
        options.intra_op_num_threads = threads
        self.net = onnxruntime.InferenceSession(path, options)

    def say(self, symbols, speaker, pace, noise, uneven):
        """None where the voice lacks a symbol."""
        if any(s not in self.ids for s in symbols):
            return None
        # A full stop, and a filler between all of them.
        ids = [*self.ids["^"], *self.ids["_"]]
        for s in f"{symbols}.":
            ids += [*self.ids[s], *self.ids["_"]]
        ids += self.ids["$"]
        fed = {
            "input": np.array([ids], np.int64),
            "input_lengths": np.array([len(ids)], np.int64),
            "scales": np.array([noise, pace, uneven], np.float32),
        }
        if self.speakers > 1:
            fed["sid"] = np.array([speaker], np.int64)
        x = self.net.run(None, fed)[0].reshape(-1)
        return (np.clip(x / max(0.01, np.abs(x).max()), -1, 1) * 26000).astype("<i2")


def main(path, kokoro, made, hours, seed=27, part=0, of=1):
    name = os.path.basename(path).removesuffix(".onnx").replace("_", "-")
    voice, texts = Piper(path), texts_of(kokoro)
    chance = random.Random(f"{seed} {part}")
    # The same ones in every part.
    held = random.Random(seed).sample(range(voice.speakers), HELD) if voice.speakers > 50 else []
    learned = [s for s in range(voice.speakers) if s not in held]
    shares, at, spoken = [DRAWN[kind][0] for kind in DRAWN], 0, 0.0
    os.makedirs(made, exist_ok=True)
    file = f"{made}/{name}-{part}"
    with open(f"{file}.s16", "wb") as sound, open(f"{file}.jsonl", "w", encoding="utf8") as index:

        def say(speaker, kind, split):
            nonlocal at, spoken
            text = chance.choice(texts[kind])
            size = 1.0 if voice.speakers > 1 else chance.uniform(*SIZE)
            # What plays faster is said more slowly.
            pace = chance.uniform(*PACE) * size
            x = voice.say(espeak_of(text["symbols"]), speaker, pace, chance.uniform(*NOISE), chance.uniform(*UNEVEN))
            if x is None or len(x) < voice.rate * 0.15:
                return
            rate = round(voice.rate * size / 50) * 50
            x.tofile(sound)
            told = {"text": text["text"], "phones": text["phones"], "kind": kind, "voice": f"{name}-{speaker}", "split": split}
            index.write(json.dumps({**told, "sampleRateHz": rate, "at": at, "length": len(x)}) + "\n")
            at, spoken = at + len(x), spoken + len(x) / rate

        for speaker in held[part::of]:
            for nth in range(HELD_SAY):
                say(speaker, HELD_KINDS[nth % len(HELD_KINDS)], "dev")
        while spoken < hours * 3600 / of:
            chance.shuffle(learned)
            for speaker in learned:
                if spoken >= hours * 3600 / of:
                    break
                say(speaker, chance.choices(list(DRAWN), shares)[0], "train")


if __name__ == "__main__":
    path, kokoro, made, hours, *rest = sys.argv[1:]
    main(path, kokoro, made, float(hours), *map(int, rest))
