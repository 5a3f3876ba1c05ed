"""Voices of Debian's festival that were made for other languages say English: accents.py MADE COUNT [SEED]

They are put together from halves of phones, as no other voice that is learned from: festvox-czech-*, -ital*16k, -suopuhe-*, -hi-nsk,
-te-nsk and -mr-nsk. Their own phones stand for English ones, as who speaks with such an accent has it; timing and melody are drawn
here. Says COUNT of MADE/texts.jsonl (texts.ts) and writes MADE/accents.s16 and accents.jsonl, as speak.ts writes its own. Also
with PICO in the environment (the package py-nanotts): voices of SVOX Pico, to pico.s16 and pico.jsonl."""

import json
import os
import random
import subprocess
import sys
import tempfile

import numpy as np
import soundfile

from languages import LANGUAGE

PLAIN = dict(B="b", D="d", F="f", G="g", K="k", L="l", M="m", N="n", P="p", R="r", S="s", T="t", V="v", DH="d", TH="t")
CZECH = dict(
    PLAIN, AA="a:", AE="e", AH="a", AO="o:", AW="a u", AY="a j", EH="e", ER="e r", EY="e j", IH="i", IY="i:", OW="o u", OY="o j", UH="u",
    UW="u:", CH="c~", HH="h", JH="dz~", NG="n*", SH="s~", W="u", Y="j", Z="z", ZH="z~",
)  # fmt: skip
# Who speaks Italian has no "h".
ITALIAN = dict(
    PLAIN, AA="a1", AE="E1", AH="a", AO="O1", AW="a1 u", AY="a1 i", EH="E1", ER="E1 r", EY="e1 i", IH="i", IY="i1", OW="o1 u", OY="O1 i",
    UH="u", UW="u1", CH="tS", JH="dZ", NG="ng", SH="S", W="w", Y="j", Z="z",
)  # fmt: skip
FINNISH = dict(
    PLAIN, AA="a:", AE="&", AH="a", AO="o:", AW="a u", AY="a i", EH="e", ER="e r", EY="e i", IH="i", IY="i:", OW="o u", OY="o i", UH="u",
    UW="u:", CH="t s", HH="h", NG="N", W="v", Y="j", Z="s",
)  # fmt: skip
INDIAN = dict(
    PLAIN, AA="aa", AE="ay", AH="a", AO="aw", AW="aa uh", AY="aa ih", EH="eh", ER="a r", EY="ee", IH="ih", IY="iy", OW="oo", OY="oh ih",
    UH="uh", UW="uw", CH="ch", D="D", DH="dh", HH="h", JH="j", NG="n g", SH="sh", T="T", TH="th", W="w", Y="y", ZH="zh",
)  # fmt: skip
# Phones, silence, and the pitch of each voice in Hz.
VOICES = {
    "czech_dita": (CZECH, "#", 190), "czech_krb": (CZECH, "#", 230), "czech_machac": (CZECH, "#", 105), "czech_ph": (CZECH, "#", 110),
    "lp_diphone": (ITALIAN, "#", 190), "pc_diphone": (ITALIAN, "#", 120), "suo_fi_lj_diphone": (FINNISH, "#", 180),
    "hy_fi_mv_diphone": (FINNISH, "#", 110), "hindi_NSK_diphone": (INDIAN, "pau", 130), "telugu_NSK_diphone": (INDIAN, "pau", 130),
    "marathi_NSK_diphone": (INDIAN, "pau", 130),
}  # fmt: skip
VOWEL = set("AA AE AH AO AW AY EH ER EY IH IY OW OY UH UW".split())
# Milliseconds in running speech (typical, from memory).
LASTS = dict(
    AA=125, AE=130, AH=70, AO=125, AW=160, AY=155, EH=95, ER=110, EY=135, IH=70, IY=105, OW=140, OY=170, UH=75, UW=110, B=65, CH=110, D=58,
    DH=45, F=95, G=65, HH=60, JH=90, K=85, L=65, M=70, N=65, NG=80, P=85, R=60, S=108, SH=115, T=75, TH=85, V=60, W=60, Y=55, Z=85, ZH=80,
)  # fmt: skip
PICO_VOICES = ("fr-FR",) if LANGUAGE == "fr" else ("en-US", "en-GB")


def segments(phones, map_, silence, pitch, chance):
    """Festival's phones of an utterance, each with its length in seconds and its pitch; None where one is lacking."""
    if any(p not in map_ for p in phones):
        return None
    pace, base = chance.uniform(0.78, 1.3), pitch * chance.uniform(0.82, 1.22)
    vowels = [i for i, p in enumerate(phones) if p in VOWEL]
    raised = {i for i in vowels if chance.random() < 0.3}
    told = [f"({silence} 0.12 (0 {base:.0f}))"]
    for i, phone in enumerate(phones):
        through = i / max(1, len(phones))
        hz = base * (1.12 - 0.25 * through + (chance.uniform(0.08, 0.3) if i in raised else 0))
        # The last syllable is drawn out.
        last = 1.35 if vowels and i >= vowels[-1] else 1.0
        seconds = LASTS[phone] / 1000 * pace * last * chance.uniform(0.82, 1.2) * (1.15 if i in raised else 1)
        parts = map_[phone].split()
        told += [f"({part} {seconds / len(parts):.3f} (0 {hz:.0f}))" for part in parts]
    return " ".join([*told, f"({silence} 0.15)"])


def by_festival(texts, chance):
    """Each voice says its share: text, voice, sound and its rate."""
    for nth, (voice, (map_, silence, pitch)) in enumerate(VOICES.items()):
        with tempfile.TemporaryDirectory() as folder:
            script, said = [f"(voice_{voice})"], []
            for text in texts[nth :: len(VOICES)]:
                utterance = segments(text["phones"].split(), map_, silence, pitch, chance)
                if utterance:
                    file = f"{folder}/{len(said)}.wav"
                    script.append(f'(utt.save.wave (utt.synth (Utterance Segments ({utterance}))) "{file}" \'riff)')
                    said.append((text, file))
            open(f"{folder}/all.scm", "w").write("\n".join(script))
            subprocess.run(["festival", "-b", f"{folder}/all.scm"], capture_output=True, timeout=1200)
            for text, file in said:
                if os.path.exists(file):
                    sound, rate = soundfile.read(file, dtype="int16")
                    yield text, f"festival-{voice}", sound, rate


def by_pico(texts, chance):
    from py_nanotts import NanoTTS

    speaker = NanoTTS()
    for text in texts:
        voice = chance.choice(PICO_VOICES)
        spoken = speaker.speak(text["text"], voice=voice, speed=chance.uniform(0.8, 1.3), pitch=chance.uniform(0.8, 1.25))
        yield text, f"pico-{voice}", np.frombuffer(spoken, "<i2"), 16000


def write(folder, name, utterances):
    at = 0
    with open(f"{folder}/{name}.s16", "wb") as sound, open(f"{folder}/{name}.jsonl", "w", encoding="utf8") as index:
        for text, voice, samples, rate in utterances:
            if len(samples) < rate * 0.15 or np.abs(samples).max() < 300:
                continue
            samples.astype("<i2").tofile(sound)
            index.write(json.dumps({**text, "voice": voice, "sampleRateHz": rate, "at": at, "length": len(samples)}) + "\n")
            at += len(samples)


if __name__ == "__main__":
    folder, count, seed = sys.argv[1], int(sys.argv[2]), int(sys.argv[3]) if len(sys.argv) > 3 else 7
    chance = random.Random(seed)
    with open(f"{folder}/texts.jsonl", encoding="utf8") as file:
        texts = [json.loads(line) for line in file]
    chance.shuffle(texts)
    if os.environ.get("PICO"):
        write(folder, "pico", by_pico(texts[:count], chance))
    else:
        write(folder, "accents", by_festival(texts[:count], chance))
