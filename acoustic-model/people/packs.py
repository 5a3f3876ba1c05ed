"""What the makers of packs share: reading sound out of a git repository, checking it, splitting by speaker, packing as Opus."""

import argparse
import csv
import hashlib
import io
import os
import subprocess
import tempfile
import wave

import numpy as np
import soundfile
import soxr

RATE = 16000
GAP = 1600
LONGEST_PACK = 20 * 60 * RATE - RATE
COLUMNS = "pack startSample lengthSamples kind text speaker split source licence originalRateHz flags".split()


class Repository:
    """One commit of a fetched repository: its paths, and the bytes of a path."""

    def __init__(self, folder, name, commit):
        self.folder, self.name, self.commit, self.reader = folder, name, commit, None

    def git(self, *arguments):
        return ["git", "-C", self.folder, *arguments]

    def paths(self):
        listed = subprocess.check_output(self.git("ls-tree", "-r", "-z", "--name-only", self.commit))
        # Files that macOS leaves beside others are no sound.
        return sorted(p for p in listed.decode("utf8", "replace").split("\0") if p and not os.path.basename(p).startswith("._"))

    def read(self, path):
        """The bytes of a file; None when there is none."""
        if self.reader is None:
            self.reader = subprocess.Popen(self.git("cat-file", "--batch"), stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        self.reader.stdin.write(f"{self.commit}:{path}\n".encode())
        self.reader.stdin.flush()
        answer = self.reader.stdout.readline().split()
        if answer[-1] == b"missing":
            return None
        data = self.reader.stdout.read(int(answer[2]))
        self.reader.stdout.read(1)
        return data


def decoded(data):
    """Mono sound at 16 kHz, and the rate that it had. WAV of that rate is taken as it is."""
    try:
        with wave.open(io.BytesIO(data)) as file:
            if file.getframerate() == RATE and file.getsampwidth() == 2 and file.getnchannels() == 1:
                return np.frombuffer(file.readframes(file.getnframes()), "<i2").astype(np.float32) / 32768, RATE
    except (wave.Error, EOFError):
        pass
    sound, rate = soundfile.read(io.BytesIO(data), dtype="float32", always_2d=True)
    sound = sound.mean(1)
    return (sound if rate == RATE else soxr.resample(sound, rate, RATE, "HQ").astype(np.float32)), rate


def checked(sound, noise=False):
    """Whether it can be used, and what is to be said of it: by level, clipping and contrast."""
    if len(sound) < RATE * 0.15 or not np.isfinite(sound).all():
        return False, []
    frames = sound[: len(sound) // 320 * 320].reshape(-1, 320)
    levels = 10 * np.log10((frames * frames).mean(1) + 1e-12)
    loud, floor = np.percentile(levels, 95), np.percentile(levels, 10)
    clipped = (np.abs(sound) > 0.985).mean()
    flags = []
    if clipped > 0.002:
        flags.append("clipped")
    if loud < -45:
        flags.append("quiet")
    if not noise and loud - floor < 12:
        flags.append("lowcontrast")
    useless = np.abs(sound).max() < 0.002 or loud < -62 or clipped > 0.03 or (not noise and loud - floor < 5)
    return not useless, flags


def hashed(speaker):
    """A number from 0 to 1 for a speaker."""
    return int(hashlib.sha256(speaker.encode()).hexdigest()[:8], 16) / 2**32


def split_by_hash(speaker, test=0.12, dev=0.08):
    part = hashed(speaker)
    return "test" if part < test else "dev" if part < test + dev else "train"


class Beside:
    """Another set of packs that is used too: its speakers keep their split, and what it has is not taken again."""

    def __init__(self, folder):
        self.folder, self.sounds, self.rows = folder, {}, []
        if folder:
            with open(f"{folder}/index.tsv", encoding="utf8", newline="") as file:
                self.rows = list(csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE))
        self.splits = {row["speaker"]: row["split"] for row in self.rows if row["speaker"]}
        self.said = {}
        for row in self.rows:
            self.said.setdefault((row["speaker"], row["text"]), []).append(row)

    def split(self, speaker):
        return self.splits.get(speaker) or split_by_hash(speaker)

    def sound(self, row):
        pack = row["pack"]
        if pack not in self.sounds:
            where = f"{self.folder}/packs/{pack}" if os.path.exists(f"{self.folder}/packs/{pack}") else f"{self.folder}/{pack}"
            self.sounds[pack] = decoded(open(where, "rb").read())[0]
        at = int(row["startSample"])
        return self.sounds[pack][at : at + int(row["lengthSamples"])]

    def has(self, speaker, text, sound):
        """Whether it has this very recording."""
        return any(same_recording(sound, self.sound(row)) for row in self.said.get((speaker, text), []))


def same_recording(a, b):
    """Whether one is the other, through a codec, begun at the same moment."""
    n = min(len(a), len(b))
    if n < 800 or abs(len(a) - len(b)) > 800:
        return False
    a, b = a[:n] - a[:n].mean(), b[:n] - b[:n].mean()
    likest = 0.0
    for shift in (-1, 0, 1):
        u, v = a[max(0, shift) : n + min(0, shift)], b[max(0, -shift) : n - max(0, shift)]
        likest = max(likest, float((u * v).sum() / (np.sqrt((u * u).sum() * (v * v).sum()) + 1e-9)))
    return likest > 0.8


def clip_of(repository, path, noise=False, **known):
    """A clip with what is known of it; None when it cannot be used."""
    data = repository.read(path)
    if not data:
        return None
    sound, rate = decoded(data)
    usable, flags = checked(sound, noise)
    if not usable:
        return None
    return {"audio": sound, "source": repository.name, "originalRateHz": rate, "flags": ",".join(flags), **known}


def write_packs(folder, name, clips, kbps=32):
    """Writes NAME-1.opus, ... and NAME.tsv, and index.tsv of all .tsv files there; says what is in each split."""
    os.makedirs(folder, exist_ok=True)
    rows, pieces, at, nth = [], [], 0, 1

    def flush():
        if pieces:
            encode(np.concatenate([*pieces, np.zeros(GAP, np.float32)]), f"{folder}/{name}-{nth}.opus", kbps)

    for clip in clips:
        sound = clip["audio"].astype(np.float32)
        if at and at + len(sound) + 2 * GAP > LONGEST_PACK:
            flush()
            pieces, at, nth = [], 0, nth + 1
        pieces += [np.zeros(GAP, np.float32), sound]
        rows.append({**clip, "pack": f"{name}-{nth}.opus", "startSample": at + GAP, "lengthSamples": len(sound)})
        at += GAP + len(sound)
    flush()
    with open(f"{folder}/{name}.tsv", "w", encoding="utf8") as file:
        for row in rows:
            file.write("\t".join(str(row.get(column, "")) for column in COLUMNS) + "\n")
    with open(f"{folder}/index.tsv", "w", encoding="utf8") as index:
        index.write("\t".join(COLUMNS) + "\n")
        for other in sorted(f for f in os.listdir(folder) if f.endswith(".tsv") and f != "index.tsv"):
            index.write(open(f"{folder}/{other}", encoding="utf8").read())
    for split in ("train", "dev", "test"):
        mine = [row for row in rows if row["split"] == split]
        minutes = sum(row["lengthSamples"] for row in mine) / RATE / 60
        print(f"{name} {split}: {len(mine)} clips, {len({row['speaker'] for row in mine})} speakers, {minutes:.1f} min")


def encode(sound, path, kbps):
    with tempfile.NamedTemporaryFile(suffix=".wav") as plain:
        with wave.open(plain.name, "wb") as file:
            file.setnchannels(1), file.setsampwidth(2), file.setframerate(RATE)
            file.writeframes((np.clip(sound, -1, 1) * 32767).round().astype("<i2").tobytes())
        kind = "--speech" if kbps <= 32 else "--music"
        subprocess.check_call(["opusenc", "--quiet", "--bitrate", str(kbps), kind, "--comp", "4", "--serial", "1", "--discard-comments",
                               plain.name, path])  # fmt: skip


def arguments(doc, *repositories):
    """OUTPUT, the folder of each repository, and --beside."""
    parser = argparse.ArgumentParser(description=doc)
    parser.add_argument("output")
    for name in repositories:
        parser.add_argument(name, help="folder of a clone of that repository")
    parser.add_argument("--beside", help="a folder of packs that are used too (index.tsv, packs/)")
    return parser.parse_args()
