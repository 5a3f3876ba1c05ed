"""How words that the dictionary lacks are said: espeak-ng's American English in phones of the CMU dictionary."""

import subprocess
from concurrent.futures import ThreadPoolExecutor

# What espeak-ng -x writes, the longest first.
SOUNDS = {
    "aI@": "AY AH", "aI3": "AY ER", "i@3": "IH R", "3r-": "ER", "r-": "ER", "n-": "AH N", "@L": "AH L", "A@": "AA R",
    "O@": "AO R", "o@": "AO R", "U@": "UH R", "e@": "EH R", "i@": "IY AH", "I;@": "IY AH", "tS": "CH", "dZ": "JH", "eI": "EY", "aI": "AY",
    "oU": "OW", "OI": "OY", "aU": "AW", "A:": "AA", "O:": "AO", "O2": "AO", "u:": "UW", "i:": "IY", "3:": "ER", "aa": "AE", "a#": "AH",
    "I2": "IH", "I#": "IH", "t#": "T", "t2": "T", "V": "AH", "@": "AH", "I": "IH", "i": "IY", "0": "AA", "a": "AE", "E": "EH", "U": "UH",
    "3": "ER", "S": "SH", "Z": "ZH", "T": "TH", "D": "DH", "N": "NG", "h": "HH", "j": "Y", "?": "T", "x": "K", "b": "B", "d": "D", "f": "F",
    "g": "G", "k": "K", "l": "L", "m": "M", "n": "N", "p": "P", "r": "R", "s": "S", "t": "T", "v": "V", "w": "W", "z": "Z",
}  # fmt: skip
SILENT = "',;:_|=-%"
LONGEST = max(map(len, SOUNDS))


def phones_from(written):
    """Phones of what espeak-ng wrote; None where it wrote something else than sounds of English."""
    phones, at = [], 0
    while at < len(written):
        if written[at] in SILENT or written[at].isspace():
            at += 1
            continue
        for size in range(LONGEST, 0, -1):
            sound = SOUNDS.get(written[at : at + size])
            if sound is not None:
                phones.append(sound)
                at += size
                break
        else:
            return None
    return " ".join(phones) or None


def guessed(words):
    """The phones of each word that can be guessed."""

    def one(word):
        run = subprocess.run(["espeak-ng", "-q", "-x", "-v", "en-us", "--", word], capture_output=True, text=True)
        return phones_from(run.stdout.strip())

    with ThreadPoolExecutor(4) as pool:
        return {word: phones for word, phones in zip(words, pool.map(one, words)) if phones}
