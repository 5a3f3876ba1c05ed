"""Spells the texts for Kokoro and for the network that learns: phones.py FOLDER

Reads FOLDER/texts.jsonl and dictionary.json (texts.ts). Writes FOLDER/spelled.jsonl: each text in Kokoro's symbols, American
and British, by the dictionaries of `misaki`, and in those phones of the CMU dictionary that are nearest to what is spoken."""

import collections
import json
import sys
import types

# misaki takes words in sentences apart with spaCy; here words are looked up one by one.
sys.modules["spacy"] = types.ModuleType("spacy")
from misaki.en import Lexicon, TokenContext  # noqa: E402

SIDES = ("us", "gb")
# How words of two pronunciations are used here, in the terms that misaki asks for.
USES = {"a": "DT", "the": "DT", "to": "TO", "in": "IN", "am": "VBP", "used": "VBD", "i": "PRP"}
# Words that misaki lacks.
OWN = {
    "niner": "nˈInəɹ",
    "psi": "pˌiˌɛsˈI",
    "kpa": "kˌApˌiˈA",
    "rpm": "ˌɑɹpˌiˈɛm",
    "kilopascals": "kˈɪləpˌæskᵊlz",
    "kilopascal": "kˈɪləpˌæskᵊl",
}
SPOKEN_VOWELS = set("AIOQWYaiuæɑɒɔəɛɜɪʊʌᵻɐᵊ")
STRESS = "ˈˌ"

# Which phones a symbol may stand for, and how far each is from it.
ONE = dict(
    A="EY", I="AY", O="OW", Q="OW", W="AW", Y="OY", ʤ="JH", ʧ="CH", ʃ="SH", ʒ="ZH", θ="TH", ð="DH", ŋ="NG", ɹ="R", ɡ="G", j="Y", h="HH",
    b="B", d="D", f="F", k="K", l="L", m="M", n="N", p="P", s="S", t="T", v="V", w="W", z="Z", ʔ="T",
    i="IY", u="UW", æ="AE", a="AE", ɛ="EH", ʊ="UH", ʌ="AH", ɔ="AO", ɑ="AA",
)  # fmt: skip
SEVERAL = {
    "ɾ": {"T": 0, "D": 0},
    "ɒ": {"AO": 0, "AA": 0.02},
    "ɪ": {"IH": 0, "AH": 0.15, "IY": 0.2},
    "ᵻ": {"IH": 0, "AH": 0.02},
    "ə": {"AH": 0, "IH": 0.1, "ER": 0.1, "AE": 0.3, "AA": 0.3, "EH": 0.3, "OW": 0.3},
    "ɐ": {"AH": 0},
    "ᵊ": {"AH": 0},
    "ɜ": {"ER": 0},
}
PAIRS = {"ɜɹ": {"ER": 0}, "ɜː": {"ER": 0}, "əɹ": {"ER": 0, "AH": 0.4}}
VOWELS = set("AA AE AH AO AW AY EH ER EY IH IY OW OY UH UW".split())
NEAR = {
    ("AA", "AO"): 0.1, ("AE", "AA"): 0.2, ("IH", "IY"): 0.25, ("IH", "AH"): 0.25, ("UH", "UW"): 0.25, ("EH", "AH"): 0.3,
    ("EH", "AE"): 0.4, ("EH", "EY"): 0.4, ("S", "Z"): 0.3, ("T", "D"): 0.4, ("AH", "ER"): 0.3, ("AH", "AA"): 0.35,
    ("AO", "OW"): 0.3, ("AH", "UH"): 0.3,
}  # fmt: skip
# Above this a word is told (SUSPECT), above the other no text with it is kept: the dictionaries mean different words.
SUSPECT, TOO_FAR = 0.2, 0.33


def substitution(a, b):
    if a == b:
        return 0
    near = NEAR.get((a, b), NEAR.get((b, a)))
    if near is not None:
        return near
    if a in VOWELS and b in VOWELS:
        return 0.7
    return 1.1 if (a in VOWELS) == (b in VOWELS) else 2


def gap(phone):
    """What it costs that a phone is left out."""
    return 0.25 if phone in ("R", "AH") else 0.5 if phone in ("Y", "T", "D", "HH") else 0.9


def choices(symbols):
    """For each sound of a word the phones that it may be, with their costs."""
    for mark in STRESS:
        symbols = symbols.replace(mark, "")
    found, at = [], 0
    while at < len(symbols):
        pair, symbol = symbols[at : at + 2], symbols[at]
        if pair in PAIRS:
            found.append(PAIRS[pair])
            at += 2
            continue
        at += 1
        if symbol != "ː":
            found.append(SEVERAL[symbol] if symbol in SEVERAL else {ONE[symbol]: 0})
    return found


def distance(sounds, phones):
    """The least cost of turning the sounds into the phones."""
    row = [0.0]
    for phone in phones:
        row.append(row[-1] + gap(phone))
    for sound in sounds:
        left_out = min(gap(phone) for phone in sound)
        new = [row[0] + left_out]
        for j, phone in enumerate(phones):
            changed = min(cost + substitution(own, phone) for own, cost in sound.items())
            new.append(min(row[j] + changed, row[j + 1] + left_out, new[j] + gap(phone)))
        row = new
    return row[-1]


class Speller:
    def __init__(self, pronunciations):
        self.pronunciations = {word: [p.split() for p in all_] for word, all_ in pronunciations.items()}
        self.lexicons = {"us": Lexicon(False), "gb": Lexicon(True)}
        self.alone, self.nearest = {}, {}

    def word_alone(self, word, side):
        if (word, side) not in self.alone:
            written = "I" if word == "i" else word
            self.alone[word, side] = OWN.get(word) or self.lexicons[side].get_word(written, USES.get(word, "XX"), None, TokenContext())[0]
        return self.alone[word, side]

    def begins_with_vowel(self, word, side):
        symbols = self.word_alone(word, side)
        return next((s for s in symbols if s not in STRESS), "") in SPOKEN_VOWELS if symbols else None

    def symbols(self, words, side):
        """Kokoro's symbols of each word; None when one is unknown."""
        found = []
        for i, word in enumerate(words):
            before_vowel = self.begins_with_vowel(words[i + 1], side) if i + 1 < len(words) else None
            if word in OWN:
                spoken = OWN[word] if side == "us" else OWN[word].replace("əɹ", "ə").replace("ɑɹ", "ɑː").replace("æ", "a")
            else:
                written = "I" + word[1:] if word == "i" or word.startswith("i'") else word
                spoken = self.lexicons[side].get_word(written, USES.get(word, "XX"), None, TokenContext(future_vowel=before_vowel))[0]
            if not spoken:
                return None
            found.append(spoken)
        return found

    def phones(self, word, symbols):
        """The pronunciation in the dictionary that is nearest to what is spoken, and how far it is."""
        if (word, symbols) not in self.nearest:
            sounds = choices(symbols)
            cost, _, phones = min((distance(sounds, p), i, p) for i, p in enumerate(self.pronunciations[word]))
            self.nearest[word, symbols] = (" ".join(phones), cost / max(3, len(sounds)))
        return self.nearest[word, symbols]


def spelled(text, speller, told):
    """A text's entry, or None where a word is unknown or spoken otherwise than the dictionary has it."""
    parts = [part.split() for part in text["say"].split(", ")]
    entry = {"kind": text["kind"], "base": text["base"], "text": " ".join(word for part in parts for word in part)}
    for side in SIDES:
        said, phones = [], []
        for part in parts:
            symbols = speller.symbols(part, side)
            if symbols is None:
                told["unknown"].update(word for word in part if not speller.word_alone(word, side))
                return None
            for word, spoken in zip(part, symbols):
                nearest, far = speller.phones(word, spoken)
                phones.append(nearest)
                if far > SUSPECT:
                    told["far"][word, side] += 1
                if far > TOO_FAR:
                    return None
            said.append(" ".join(symbols))
        entry[side] = ", ".join(said)
        entry[side + "_phones"] = " ".join(phones)
    if entry["gb_phones"] == entry["us_phones"]:
        del entry["gb_phones"]
    return entry


if __name__ == "__main__":
    folder = sys.argv[1]
    speller, told = Speller(json.load(open(f"{folder}/dictionary.json", encoding="utf8"))), collections.defaultdict(collections.Counter)
    kept = 0
    with open(f"{folder}/texts.jsonl", encoding="utf8") as source, open(f"{folder}/spelled.jsonl", "w", encoding="utf8") as target:
        for line in source:
            text = json.loads(line)
            entry = spelled(text, speller, told)
            if entry:
                target.write(json.dumps(entry, ensure_ascii=False) + "\n")
                kept += 1
            elif text["base"]:
                print("left out though asked for:", text["say"])
    print(f"{kept} texts; words that misaki lacks: {told['unknown'].most_common(20)}; spoken otherwise: {told['far'].most_common(20)}")
