"""Spells French: in the phones of languages.py, and in Kokoro's symbols. Alone: french.py FOLDER MADE, or french.py -

Reads FOLDER/texts.jsonl (kokoro/french-texts.ts) and writes spelled.jsonl; every 24th as MADE/texts.jsonl, for speak.ts.
With - each line of the input is answered with the phones of each of its words. espeak-ng says how French is spoken, through
its library (Debian: libespeak-ng1)."""

import ctypes
import hashlib
import json
import os
import re
import sys

from languages import FRENCH

SPEECH_INTO_MEMORY, UTF8, IPA = 1, 1, 2
library = ctypes.CDLL("libespeak-ng.so.1")
library.espeak_Initialize(SPEECH_INTO_MEMORY, 0, None, 0)
library.espeak_SetVoiceByName(b"fr")
library.espeak_TextToPhonemes.restype = ctypes.c_char_p
library.espeak_TextToPhonemes.argtypes = [ctypes.POINTER(ctypes.c_char_p), ctypes.c_int, ctypes.c_int]

MARKS = re.compile(r"[ˈˌː\-‍]")
# What espeak says otherwise than people do: a "t" that nobody says in "quatre-vingt-deux".
MENDED = [(re.compile(r"(katʁ vˈ?ɛ̃)t "), r"\1 "), (re.compile(r"(kˈatʁ vˈ?ɛ̃)t "), r"\1 ")]
# As many say: "quat' bars" or "quatre-bars", "j'suis", "brin" for "brun". How often.
CONSONANT = "[pbtdkɡfvszʃʒmnlʁjw]"
VARIED = [
    (0.35, re.compile(rf"atʁ (?=ˈ?{CONSONANT})"), "at "),
    (0.35, re.compile(rf"atʁ (?=ˈ?{CONSONANT})"), "atʁə "),
    (0.25, re.compile(rf"(?<=[ʒdlsmn])ə-? (?=ˈ?{CONSONANT})"), " "),
    (0.5, re.compile("œ̃"), "ɛ̃"),
]
# Symbols of one sound that espeak writes as several, or otherwise.
SOUNDS = {"œ̃": "ɛ̃", "ɲ": "n j", "ɑ": "a", "r": "ʁ", "ʀ": "ʁ", "g": "ɡ", "ɛɪ": "ɛ j"}
SYMBOL = re.compile(r"[ɛɑɔœ]̃|.")


def spoken(text):
    """What espeak says, in the International Phonetic Alphabet, its pauses as commas; None when a word is not French."""
    rest, parts = ctypes.c_char_p(text.encode()), []
    while rest.value is not None:
        part = library.espeak_TextToPhonemes(ctypes.byref(rest), UTF8, IPA).decode().strip()
        if part:
            parts.append(part)
    said = ", ".join(parts)
    for wrong, right in MENDED:
        said = wrong.sub(right, said)
    return None if "(" in said else said


def varied(said, text):
    """The same as others say it, now and then; always alike for the same text."""
    chance = int(hashlib.sha256(text.encode()).hexdigest()[:8], 16) / 2**32
    for often, usual, other in VARIED:
        if chance < often:
            said = usual.sub(other, said)
        chance = (chance * 7.31) % 1
    return said


def phones_of(said):
    """Phones of what espeak says; None when it has a sound that French lacks."""
    plain = MARKS.sub("", said).replace(",", "").replace(" ", "")
    # espeak writes the glide of "huit" as its vowel.
    plain = re.sub("y(?=i)", "ɥ", plain)
    phones = " ".join(SOUNDS.get(s, s) for s in SYMBOL.findall(plain)).split()
    return " ".join(phones) if phones and all(p in FRENCH for p in phones) else None


def phones_of_text(text):
    """Phones of a French text; None when a word is not French."""
    said = spoken(text.replace("’", "'"))
    return said and phones_of(said)


def kokoro_symbols(said):
    """As the voice was taught to read French, by espeak too."""
    return said.replace("-", "").replace("tʃ", "ʧ").replace("dʒ", "ʤ")


def words_of(text):
    """Phones of each word of a text as it is spoken there; None where it is not as many words to espeak, or not French."""
    said = spoken(text)
    phones = [phones_of(word) for word in said.replace(",", "").split()] if said else []
    return phones if len(phones) == len(text.split()) and all(phones) else None


if __name__ == "__main__":
    if sys.argv[1] == "-":
        for line in sys.stdin:
            print(json.dumps(words_of(line.strip()), ensure_ascii=False))
        sys.exit()
    (folder, made), kept, left = sys.argv[1:3], 0, []
    os.makedirs(made, exist_ok=True)
    few = open(f"{made}/texts.jsonl", "w", encoding="utf8")
    with open(f"{folder}/texts.jsonl", encoding="utf8") as source, open(f"{folder}/spelled.jsonl", "w", encoding="utf8") as target:
        for line in source:
            text = json.loads(line)
            usual = spoken(text["say"])
            said = usual and varied(usual, text["say"])
            phones = said and phones_of(said)
            if not phones:
                left.append(text["say"])
                continue
            kept += 1
            if kept % 24 == 0 and (phones_usual := phones_of(usual)):
                kind = text["kind"] if text["kind"] in ("reply", "stop") else "other"
                few.write(json.dumps({"text": text["say"], "phones": phones_usual, "kind": kind}, ensure_ascii=False) + "\n")
            entry = {"kind": text["kind"], "base": text["base"], "text": text["say"].replace(",", "")}
            target.write(json.dumps({**entry, "fr": kokoro_symbols(said), "fr_phones": phones}, ensure_ascii=False) + "\n")
    print(f"{kept} texts; {len(left)} left out, such as {left[:12]}")
