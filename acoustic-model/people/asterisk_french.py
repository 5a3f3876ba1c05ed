"""French telephone prompts of Debian, two women, only tested on: asterisk_french.py OUTPUT [ARMELLE]

June of Québec: the package asterisk-core-sounds-fr-g722 (CC BY-SA 3.0). Armelle, 8 kHz: asterisk-prompt-fr-armelle (BSD-like),
or the folder that it is unpacked in. Needs ffmpeg."""

import os
import subprocess
import sys

import numpy as np
from packs import RATE, checked, write_packs

UNITS = "zéro un deux trois quatre cinq six sept huit neuf dix onze douze treize quatorze quinze seize".split()
TENS = {20: "vingt", 30: "trente", 40: "quarante", 50: "cinquante", 60: "soixante", 70: "soixante dix", 80: "quatre vingt",
        90: "quatre vingt dix"}  # fmt: skip
ALONE = {**dict(enumerate(UNITS)), 17: "dix sept", 18: "dix huit", 19: "dix neuf", **TENS}
# Put together from two recordings, where nothing is bound over.
TOGETHER = [(20, 2), (20, 5), (20, 9), (30, 3), (30, 4), (30, 7), (40, 2), (40, 5), (40, 6), (50, 3), (50, 8), (50, 9), (60, 4),
            (60, 7), (60, 12), (80, 2), (80, 5), (80, 13)]  # fmt: skip
PAUSE = np.zeros(int(0.04 * RATE), np.float32)
# Words, tones and letters, which are no sentence.
NO_TALK = ("beep", "silence", "ascending", "descending", "tt-")
LEAST_TALK_S = 1.2


def read(path):
    """Sound at 16 kHz; None where there is none."""
    if not os.path.exists(path):
        return None
    kind = ["-f", "g722"] if path.endswith(".g722") else ["-f", "gsm"]
    raw = subprocess.check_output(["ffmpeg", "-v", "error", *kind, "-i", path, "-f", "f32le", "-ac", "1", "-ar", str(RATE), "-"])
    return np.frombuffer(raw, np.float32)


def trimmed(sound):
    loud = np.nonzero(np.abs(sound) > 0.02 * np.abs(sound).max())[0]
    return sound[max(0, loud[0] - 320) : loud[-1] + 320] if len(loud) else sound


def clips_of(folder, ending, speaker, licence, rate):
    known = dict(speaker=speaker, split="test", source=f"Debian {speaker}", licence=licence, originalRateHz=rate, flags="testOnly")
    digit = lambda n: read(f"{folder}/digits/{n}.{ending}")
    for n, text in ALONE.items():
        if (sound := digit(n)) is not None:
            yield {"audio": sound, "kind": "speech", "text": text, **known}
    for ten, unit in TOGETHER:
        first, second = digit(ten), digit(unit)
        if first is not None and second is not None:
            sound = np.concatenate([trimmed(first), PAUSE, trimmed(second)])
            yield {"audio": sound, "kind": "speech", "text": f"{ALONE[ten]} {ALONE[unit]}", **known}
    for name in sorted(os.listdir(folder)):
        if name.endswith("." + ending) and not name.startswith(NO_TALK):
            sound = read(f"{folder}/{name}")
            if sound is not None and len(sound) > LEAST_TALK_S * RATE and checked(sound)[0]:
                yield {"audio": sound, "kind": "talk", "text": "", **known}


if __name__ == "__main__":
    output, armelle = sys.argv[1], sys.argv[2] if len(sys.argv) > 2 else ""
    sounds = "/usr/share/asterisk/sounds"
    june = clips_of(f"{sounds}/fr_CA_f_June", "g722", "asterisk-june", "CC BY-SA 3.0", 16000)
    write_packs(output, "asterisk-june", list(june))
    write_packs(output, "asterisk-armelle", list(clips_of(f"{armelle}{sounds}/fr", "gsm", "asterisk-armelle", "BSD-like", 8000)))
