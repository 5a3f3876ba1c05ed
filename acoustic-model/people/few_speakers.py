"""Digits and words of few people, and two small copies of Speech Commands: few_speakers.py OUTPUT PEOPLE TOY LEFT_RIGHT CHEN
MNIST [--beside FOLDER]

PEOPLE is the folder that the other makers wrote: what is in it is not taken again. Of a speaker at most MOST clips of a word, which
ones by hash: else one voice would be most of what is heard of a rare word. Of the copy of "left" and "right" one clip of a speaker
and a word, and only what is learned from."""

import hashlib
import re
from collections import Counter

import numpy as np
from commands_speakers import LICENCE, left_out, split_of
from packs import Beside, Repository, arguments, clip_of, split_by_hash, write_packs

MOST = 8
DIGITS = "zero one two three four five six seven eight nine".split()

asked = arguments(__doc__, "people", "toy", "left_right", "chen", "mnist")
beside, people, seen, dropped = Beside(asked.beside), Beside(asked.people), set(), Counter()

# name, repository, pattern of a path with word and speaker, licence, speaker where the path names none, most of a word, learned only
COPIES = [
    (
        "gsc-toy",
        Repository(asked.toy, "JackBL248/blspeech_commands", "edb60af86681c4f279f22b5feb5cde8406efe653"),
        r"toy_dataset/[a-z]+/(?P<word>[a-z]+)_(?P<speaker>[0-9a-f]{8})_nohash_\d+\.wav$",
        LICENCE,
        "",
        MOST,
        False,
    ),
    (
        "gsc-left-right",
        Repository(asked.left_right, "RoyzLevy/SpeechCommandClassifier", "1adccc0c8f135ed036554c3ca1b89371f8b78112"),
        r"sound_files_heirarchy_example/[a-z]+/(?P<word>left|right)/(?P<speaker>[0-9a-f]{8})_nohash_\d+\.wav$",
        LICENCE,
        "",
        1,
        True,
    ),
    (
        "chen",
        Repository(asked.chen, "felixchenfy/ros_speech_commands_classification", "c84b709e1e14a3696192ba8aebab941bef470ea5"),
        r"data/data_train/(?P<word>one|two|three|four|five|stop|left|right|front|back)/audio_[^/]+\.wav$",
        "MIT",
        "feiyu_chen",
        MOST,
        False,
    ),
    (
        "audio-mnist",
        Repository(asked.mnist, "spoluan/sound-classification", "08f02cb75bfcc5d93ebf0cb2d3b1b2dc7896de01"),
        r"datasets/(?:train/\d\d|test)/(?P<word>\d)_(?P<speaker>\d\d)_\d+\.wav$",
        "MIT (AudioMNIST)",
        "",
        MOST,
        False,
    ),
]


def taken(name, repository, pattern, licence, speaker_of_all, most, learned_only):
    clips, count = [], Counter()
    for path in sorted(repository.paths(), key=lambda p: hashlib.sha256(p.encode()).hexdigest()):
        file = re.match(pattern, path)
        if not file:
            continue
        known = file.groupdict()
        word = DIGITS[int(known["word"])] if known["word"].isdigit() else known["word"]
        if known.get("speaker") in left_out:
            dropped["left-out speaker"] += 1
            continue
        if name.startswith("gsc"):
            speaker = "sc_" + known["speaker"]
            split = split_of(beside, speaker)
        else:
            speaker = speaker_of_all or f"audiomnist_{known['speaker']}"
            split = split_by_hash(speaker)
        if count[speaker, word] == most or (learned_only and split != "train"):
            dropped["enough, or not to learn from"] += 1
            continue
        clip = clip_of(repository, path, kind="speech", text=word, speaker=speaker, split=split, licence=licence)
        if clip is None:
            dropped["not usable"] += 1
            continue
        digest = hashlib.sha256((np.clip(clip["audio"], -1, 1) * 32767).round().astype("<i2").tobytes()).hexdigest()
        if digest in seen or any(other.has(speaker, word, clip["audio"]) for other in (beside, people)):
            dropped["there already"] += 1
            continue
        seen.add(digest)
        count[speaker, word] += 1
        clips.append(clip)
    return sorted(clips, key=lambda c: (c["split"], hashlib.sha256((c["speaker"] + c["text"]).encode()).hexdigest()))


for copy in COPIES:
    write_packs(asked.output, copy[0], taken(*copy), 24)
print(dict(dropped))
