"""Google Speech Commands out of five public copies: speech_commands.py OUTPUT PICO MINI SMALL FOUR NINE [--beside FOLDER]

The same recording is kept once. Speakers in left-out-speakers.txt are left out: they stay unheard for tests by others. Of the
copies of four and of nine words only what is learned from is taken: what is chosen and tested on stays what it was."""

import hashlib
import re
from collections import Counter

import numpy as np
from commands_speakers import LICENCE, left_out, split_of
from packs import Beside, Repository, arguments, clip_of, write_packs

asked = arguments(__doc__, "pico", "mini", "small", "four", "nine")
recording = r"(?P<word>[a-z]+){}(?P<speaker>[0-9a-f]{{8}})_nohash_\d+\.wav"
COPIES = [
    (
        "gsc-pico",
        Repository(asked.pico, "thegtagamer/PICO-tinyML-benchmark", "c66f6b0d78fe9218f6de9d07189691cfae077bee"),
        r"MLTK_keyworkSpotting/dataset/(?:_unknown_/)?" + recording.format("[/_]") + r"(?:\.wav)?$",
    ),
    (
        "gsc-mini",
        Repository(asked.mini, "KhanhAn22/speech_command", "b3eea6ec37d0886cde5ab16c10fef0a319f37f45"),
        r"mini_speech_commands/" + recording.format("/") + "$",
    ),
    (
        "gsc-anose",
        Repository(asked.small, "a-n-rose/mini-audio-datasets", "9b42f28db945dae521af677e26996338127d2c0b"),
        r"speech_commands/" + recording.format("/") + "$",
    ),
    (
        "gsc-four",
        Repository(asked.four, "Feevicun/audio-classifier-project", "09ddbb8900e8a7f0d97847b7d77456de4f6575ce"),
        r"data/SpeechCommands/speech_commands_v0.02/" + recording.format("/") + "$",
    ),
    (
        "gsc-nine",
        Repository(asked.nine, "Minali24/Identify-Speech-Commands", "2ccde6356565aec448afb656453367af84d7e395"),
        r"audio/audio/" + recording.format("/") + "$",
    ),
]
TO_LEARN_ONLY, KBPS = ("gsc-four", "gsc-nine"), 20  # fmt: skip

beside, seen, dropped = Beside(asked.beside), set(), Counter()

for name, repository, pattern in COPIES:
    clips = []
    for path in repository.paths():
        file = re.match(pattern, path)
        if not file:
            continue
        if file["speaker"] in left_out:
            dropped["left-out speaker"] += 1
            continue
        speaker, word = "sc_" + file["speaker"], file["word"]
        if name in TO_LEARN_ONLY and split_of(beside, speaker) != "train":
            dropped["not to learn from"] += 1
            continue
        clip = clip_of(repository, path, kind="speech", text=word, speaker=speaker, split=split_of(beside, speaker), licence=LICENCE)
        if clip is None:
            dropped["not usable"] += 1
            continue
        digest = hashlib.sha256((np.clip(clip["audio"], -1, 1) * 32767).round().astype("<i2").tobytes()).hexdigest()
        if digest in seen or beside.has(speaker, word, clip["audio"]):
            dropped["there already"] += 1
            continue
        seen.add(digest)
        clips.append(clip)
    clips.sort(key=lambda c: (beside.split(c["speaker"]), hashlib.sha256((c["speaker"] + c["text"]).encode()).hexdigest()))
    write_packs(asked.output, name, clips, KBPS if name in TO_LEARN_ONLY else 32)
print(dict(dropped))
