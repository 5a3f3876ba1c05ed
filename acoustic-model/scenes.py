"""Training scenes: utterances of the made speech, as other people, places and microphones would give them, in noise."""
import glob
import json
import os

import numpy as np
from scipy.signal import fftconvolve, lfilter, resample_poly

from network import BANDS, FLOOR, FORGETTING, PHONES, band_powers

RATE = 16000
SECONDS = 5.0
LENGTH = int(SECONDS * RATE)
# For phones whose time nobody knows.
UNKNOWN = -100
# Settings are chosen on a voice that nothing was learned from.
HELD_BACK = "flite-kal16"
SPEECH_DBFS = (-42.0, -14.0)
PHONE_INDEX = {phone: i + 1 for i, phone in enumerate(PHONES)}


def read_s16(path):
    return np.fromfile(path, dtype=np.int16).astype(np.float32) / 32768.0


class Speech:
    """All made utterances at 16 kHz, cut to where they are loud."""

    def __init__(self, folder):
        self.pieces, self.phones, self.segments, self.draws = [], [], [], []
        for path in sorted(glob.glob(f"{folder}/*.jsonl")):
            if not path.endswith("texts.jsonl"):
                self.read(path.removesuffix(".jsonl"))

    def read(self, path):
        sound = np.memmap(f"{path}.s16", dtype=np.int16, mode="r")
        for line in open(f"{path}.jsonl"):
            entry = json.loads(line)
            segments = segments_of(entry.get("segments", ""))
            if entry["voice"] == HELD_BACK or (entry["voice"].startswith("flite") and not segments):
                continue
            piece = np.array(sound[entry["at"] : entry["at"] + entry["length"]], dtype=np.float32) / 32768.0
            if entry["sampleRateHz"] != RATE:
                piece = resample_poly(piece, RATE // 50, entry["sampleRateHz"] // 50).astype(np.float32)
            piece, cut = trimmed(piece)
            if 0.15 * RATE < len(piece) < 3.9 * RATE:
                self.pieces.append((piece * 32767).astype(np.int16))
                # Speech from recordings is more like people than speech by rule.
                share = 3 if entry["voice"].startswith("flite") else 1 if entry["voice"].startswith("espeak") else 2
                self.draws += [len(self.phones)] * share
                spelled = [PHONE_INDEX[p] for p in entry["phones"].split()]
                self.phones.append([phone for phone, _ in segments if phone] or spelled)
                self.segments.append([(phone, end - cut / RATE) for phone, end in segments])

    def one(self, rng):
        i = self.draws[rng.integers(len(self.draws))]
        return self.pieces[i].astype(np.float32) / 32768.0, self.phones[i], self.segments[i]


def segments_of(text):
    """Flite's own account of its phones and their ends, "s:0.256 t:0.308": outputs of the network and seconds."""
    same = {"AX": "AH", "DX": "T"}
    pairs = [part.split(":") for part in text.split()]
    named = [(phone.upper(), float(end)) for phone, end in pairs]
    return [(PHONE_INDEX.get(same.get(phone, phone), 0), end) for phone, end in named]


def trimmed(x):
    """The loud part, and how many samples were cut off before it."""
    loud = np.nonzero(np.abs(x) > 0.01 * np.abs(x).max())[0]
    return (x[loud[0] : loud[-1] + 1], loud[0]) if len(loud) else (x[:0], 0)


def power(x):
    return float(np.mean(x * x)) + 1e-12


def speech_power(x):
    frames = x[: len(x) // 320 * 320].reshape(-1, 320)
    powers = (frames * frames).mean(1)
    return float(powers[powers > powers.max() / 3000].mean()) + 1e-12


class Scenes:
    def __init__(self, folder, seed):
        self.speech = Speech(folder)
        self.rng = np.random.default_rng(seed)
        self.noises = {}
        for path in glob.glob(f"{folder}/noise/*.s16"):
            self.noises.setdefault(os.path.basename(path).split("-")[0], []).append(read_s16(path))

    def warped(self, x):
        """Faster or slower, higher or lower, larger or smaller a throat: a plain change of the rate."""
        factor = self.rng.uniform(0.86, 1.16)
        at = np.arange(0, len(x) - 1, factor)
        return np.interp(at, np.arange(len(x)), x).astype(np.float32), factor

    def noise(self, length):
        rng, kind = self.rng, self.rng.random()
        if kind < 0.72:
            loops = self.noises[rng.choice(sorted(self.noises))]
            loop = loops[rng.integers(len(loops))]
            factor = rng.uniform(0.8, 1.25)
            at = (rng.integers(len(loop)) + np.arange(length) * factor) % (len(loop) - 1)
            return np.interp(at, np.arange(len(loop)), loop).astype(np.float32)
        if kind < 0.86:
            white = rng.standard_normal(length).astype(np.float32)
            return lfilter([1.0], [1.0, -rng.uniform(-0.5, 0.97)], white).astype(np.float32)
        talk = np.zeros(length, np.float32)
        for _ in range(rng.integers(1, 6)):
            at = 0
            gain = rng.uniform(0.3, 1.0)
            while at < length:
                x, _, _ = self.speech.one(rng)
                x = x / np.sqrt(speech_power(x))
                end = min(length, at + len(x))
                talk[at:end] += gain * x[: end - at]
                at = end + int(rng.uniform(0, 0.6) * RATE)
        return self.room(talk, 1.0)

    def room(self, x, probability):
        rng = self.rng
        if rng.random() > probability:
            return x
        seconds = rng.uniform(0.08, 0.45)
        n = int(seconds * RATE)
        tail = rng.standard_normal(n) * np.exp(-6.9 * np.arange(n) / n) * rng.uniform(0.02, 0.12)
        tail[0] = 1.0
        return fftconvolve(x, tail)[: len(x)].astype(np.float32)

    def microphone(self, x):
        rng = self.rng
        if rng.random() < 0.5:
            x = lfilter([1.0, -rng.uniform(-0.4, 0.9)], [1.0], x)
        if rng.random() < 0.15:
            x = lfilter([1.0, -1.0], [1.0, -rng.uniform(0.8, 0.95)], x)
        if rng.random() < 0.1:
            limit = np.abs(x).max() * rng.uniform(0.2, 0.8)
            x = np.clip(x, -limit, limit)
        return x.astype(np.float32)

    def scene(self):
        """What the network is fed, the phones in it, and for each 10 ms whether somebody near speaks, and which phone."""
        rng = self.rng
        near = np.zeros(LENGTH, np.float32)
        at_phone = np.zeros(LENGTH // 160, np.int64)
        phones = []
        if rng.random() > 0.06:
            at = int(rng.uniform(0.25, 0.95) * RATE)
            while True:
                x, said, segments = self.speech.one(rng)
                x, factor = self.warped(x)
                if at + len(x) > LENGTH - 0.1 * RATE:
                    if phones:
                        break
                    at = int(0.15 * RATE)
                    if at + len(x) > LENGTH:
                        continue
                x = x / np.sqrt(speech_power(x))
                near[at : at + len(x)] += x * 10 ** (rng.uniform(-2, 2) / 20)
                phones += said
                begin = at / 160
                at_phone[int(begin) : int(begin + len(x) / 160)] = 0 if segments else UNKNOWN
                for phone, end in segments:
                    stop = at / 160 + max(0.0, end) * 100 / factor
                    at_phone[int(begin) : int(min(stop, (at + len(x)) / 160))] = phone
                    begin = max(begin, stop)
                at += len(x) + int(rng.uniform(0.35, 1.2) * RATE)
                if rng.random() < 0.25:
                    break
        level = near[: LENGTH // 160 * 160].reshape(-1, 160)
        active = (level * level).mean(1) > 1e-3
        heard = self.room(near, 0.35)
        if rng.random() > 0.12:
            noise = self.noise(LENGTH)
            if rng.random() < 0.2:
                noise = noise / np.sqrt(power(noise)) + self.noise(LENGTH) * 1.0
            snr = rng.uniform(-3, 25)
            heard = heard + noise / np.sqrt(power(noise)) * 10 ** (-snr / 20)
        heard = self.microphone(heard)
        heard = heard * 10 ** (rng.uniform(*SPEECH_DBFS) / 20)
        heard = heard + rng.standard_normal(LENGTH).astype(np.float32) * 10 ** (rng.uniform(-100, -65) / 20)
        return self.features(np.clip(heard, -1, 1).astype(np.float32)), phones, active, at_phone

    def features(self, sound):
        """What the network is fed, with bands moved and left out by chance: throats and microphones differ."""
        rng = self.rng
        logs = np.log10(band_powers(sound) + FLOOR)
        if rng.random() < 0.7:
            factor = rng.uniform(0.88, 1.14)
            at = np.clip(np.arange(BANDS) * factor, 0, BANDS - 1)
            low = np.minimum(at.astype(int), BANDS - 2)
            logs = logs[:, low] * (1 - (at - low)) + logs[:, low + 1] * (at - low)
        features = centred(logs)
        for _ in range(rng.integers(0, 3)):
            width = rng.integers(1, 7)
            start = rng.integers(BANDS - width)
            features[:, start : start + width] = 0
        for _ in range(rng.integers(0, 3)):
            width = rng.integers(1, 9)
            start = rng.integers(len(features) - width)
            features[start : start + width] = 0
        return features.T.astype(np.float32).copy()


def centred(logs):
    """Each band against its mean so far: the sound before the scene was like its first moments."""
    first = logs[:10].mean(0)
    means, _ = lfilter([1 - FORGETTING], [1, -FORGETTING], logs, axis=0, zi=(FORGETTING * first)[None])
    return logs - means
