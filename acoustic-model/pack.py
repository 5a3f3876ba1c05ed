"""Packs what the network learns from, for a machine that has nothing: pack.py OUTPUT SPEECH_FOLDER ... [--made FOLDER]

A speech folder has index.tsv and packs/*.opus or *.opus (people/ makes such). Writes OUTPUT/<name>.opus; OUTPUT/items.json:
for each clip where it lies, its phones, who says it and in which split; OUTPUT/contents.txt: sources, minutes and SHA-256.
Clips of the test split and of share-alike sets are left out. Words that the dictionary lacks are spelled as espeak-ng says them.
ONLY in the environment: which packs (a regular expression); DICTIONARY: where that of the pronunciations is; LANGUAGE: fr for
French."""

import csv
import glob
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys

import numpy as np

from guess import guessed
from languages import LANGUAGE

RATE = 16000
# Sounds of others that lie in a repository which is share-alike as a whole: heard by no network.
SHARE_ALIKE = ("Fris0uman/CDDA-Soundpacks",)


def dictionary(path):
    words = {}
    for line in open(path, encoding="utf-8"):
        entry, *phones = line.split()
        if phones and entry[0].isalpha():
            words.setdefault(entry.split("(")[0], []).append(" ".join(phones))
    return words


def words_of(text):
    said = [w.strip('.,!?;:"()') for w in text.lower().replace("-", " ").replace("’", "'").split()]
    return [w for w in said if w]


def phones_of(text, words):
    """One pronunciation of each word, the packaged first; None when a word is unknown."""
    if LANGUAGE == "fr":
        from french import phones_of_text

        return phones_of_text(text)
    said = words_of(text)
    if not said or not all(w in words for w in said):
        return None
    return " ".join(words[w][0] for w in said)


def from_speech(folder, output, words, items):
    packs = set()
    with open(f"{folder}/index.tsv", encoding="utf-8", newline="") as f:
        rows = list(csv.DictReader(f, delimiter="\t", quoting=csv.QUOTE_NONE))
    rows = [row for row in rows if re.match(os.environ.get("ONLY", ""), row["pack"])]
    unknown = {w for row in rows if row["kind"] == "speech" for w in words_of(row["text"]) if w not in words and w.strip("'").isalpha()}
    if LANGUAGE == "en":
        words = {**words, **{word: [phones] for word, phones in guessed(sorted(unknown)).items()}}
    name = os.path.basename(os.path.abspath(folder))
    for row in rows:
        if row["split"] == "test" or "testOnly" in row["flags"] or "SA" in row["licence"] or row["source"] in SHARE_ALIKE:
            continue
        kind = row["kind"]
        phones = phones_of(row["text"], words) if kind == "speech" else None
        if kind == "speech" and (phones is None or "text_approx" in row["flags"]):
            kind = "talk"
        packs.add(row["pack"])
        items.append(
            {
                "pack": f"{name}-{row['pack'][:-5]}",
                "at": int(row["startSample"]),
                "length": int(row["lengthSamples"]),
                "kind": kind,
                "phones": phones or "",
                "text": row["text"],
                "split": row["split"],
                "speaker": row["speaker"] or f"{row['source']}?",
                "source": row["source"],
                **({"native": True} if LANGUAGE == "fr" else {}),
            }
        )
    for pack in sorted(packs):
        where = f"{folder}/packs/{pack}" if os.path.exists(f"{folder}/packs/{pack}") else f"{folder}/{pack}"
        shutil.copy(where, f"{output}/{name}-{pack}")


def opus(samples, path, kbps):
    subprocess.run(
        ["opusenc", "--quiet", "--comp", "1", "--raw", "--raw-rate", str(RATE), "--raw-chan", "1", "--bitrate", str(kbps), "-", path],
        input=samples.astype("<i2").tobytes(),
        check=True,
    )


def from_made(folder, output, items):
    """The speech that `speak.ts` made, and the noises of `noises.ts`."""
    from scipy.signal import resample_poly

    for path in sorted(glob.glob(f"{folder}/*.jsonl")):
        name = os.path.basename(path)[:-6]
        if name == "texts":
            continue
        sound, pieces, at, part = np.memmap(f"{folder}/{name}.s16", "<i2", "r"), [], 0, 0

        def flush():
            nonlocal pieces, at, part
            if pieces:
                opus(np.concatenate(pieces), f"{output}/made-{name}-{part}.opus", 18)
            pieces, at, part = [], 0, part + 1

        for line in open(path):
            entry = json.loads(line)
            if entry["at"] + entry["length"] > len(sound):
                break
            x = np.array(sound[entry["at"] : entry["at"] + entry["length"]], np.float32)
            if entry["sampleRateHz"] != RATE:
                x = resample_poly(x, RATE // 50, entry["sampleRateHz"] // 50)
            loud = np.nonzero(np.abs(x) > 0.01 * np.abs(x).max())[0]
            if not len(loud):
                continue
            x = np.clip(x[max(0, loud[0] - 400) : loud[-1] + 400], -32768, 32767).astype(np.int16)
            items.append(
                {
                    "pack": f"made-{name}-{part}",
                    "at": at,
                    "length": len(x),
                    "kind": "made",
                    "phones": entry["phones"],
                    "text": entry["text"],
                    "split": entry.get("split", "train"),
                    "speaker": entry["voice"],
                    "source": "made",
                }
            )
            pieces += [x, np.zeros(1600, np.int16)]
            at += len(x) + 1600
            if at > 20 * 60 * RATE:
                flush()
        flush()
    pieces, at = [], 0
    for path in sorted(glob.glob(f"{folder}/noise/*.s16")):
        x = np.fromfile(path, "<i2")
        kind = os.path.basename(path).split("-")[0]
        items.append(
            {
                "pack": "made-noise",
                "at": at,
                "length": len(x),
                "kind": "noise",
                "phones": "",
                "text": kind,
                "split": "train",
                "speaker": f"made-{kind}",
                "source": "made",
            }
        )
        pieces.append(x)
        at += len(x)
    if pieces:
        opus(np.concatenate(pieces), f"{output}/made-noise.opus", 48)


if __name__ == "__main__":
    arguments = sys.argv[1:]
    made = arguments.pop(arguments.index("--made") + 1) if "--made" in arguments else None
    output, *folders = [a for a in arguments if a != "--made"]
    os.makedirs(output, exist_ok=True)
    words = dictionary(os.environ.get("DICTIONARY", "node_modules/soundswallower/model/en-us/dict.txt"))
    items = []
    for folder in folders:
        from_speech(folder, output, words, items)
    if made:
        from_made(made, output, items)
    json.dump(items, open(f"{output}/items.json", "w"))
    minutes, clips = {}, {}
    for i in items:
        key = (i["source"], i["kind"], i["split"])
        minutes[key] = minutes.get(key, 0) + i["length"] / RATE / 60
        clips[key] = clips.get(key, 0) + 1
    told = [f"{' '.join(key)}: {clips[key]} clips, {minutes[key]:.1f} min" for key in sorted(minutes)]
    for path in sorted(glob.glob(f"{output}/*.opus")):
        told.append(f"{os.path.basename(path)} {hashlib.sha256(open(path, 'rb').read()).hexdigest()}")
    open(f"{output}/contents.txt", "w").write("\n".join(told) + "\n")
    print("\n".join(told))
