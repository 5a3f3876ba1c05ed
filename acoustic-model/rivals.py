"""What a short utterance must not be taken for: the other answers of the same moment, near misses, and itself without a figure.

Which of them is likeliest decides between right, asked again and wrong, and no likelihood of phones alone trains that."""

import re

import numpy as np

from languages import INDEX
from network import RATE

MOST, LONGEST = 12, 48
# Longer clips are talk.
LONGEST_S = 4.0
FIGURES = {
    "zero": "Z IH R OW", "oh": "OW", "one": "W AH N", "two": "T UW", "three": "TH R IY", "four": "F AO R", "five": "F AY V",
    "six": "S IH K S", "seven": "S EH V AH N", "eight": "EY T", "nine": "N AY N",
}  # fmt: skip
NUMBERS = FIGURES | {
    "ten": "T EH N", "eleven": "IH L EH V AH N", "twelve": "T W EH L V", "thirteen": "TH ER T IY N", "fourteen": "F AO R T IY N",
    "fifteen": "F IH F T IY N", "sixteen": "S IH K S T IY N", "seventeen": "S EH V AH N T IY N", "eighteen": "EY T IY N",
    "nineteen": "N AY N T IY N", "twenty": "T W EH N T IY", "thirty": "TH ER D IY", "forty": "F AO R T IY", "fifty": "F IH F T IY",
    "sixty": "S IH K S T IY", "seventy": "S EH V AH N T IY", "eighty": "EY T IY", "ninety": "N AY N T IY",
    "hundred": "HH AH N D R AH D", "point": "P OY N T",
}  # fmt: skip
# Other pronunciations of the dictionary.
ALSO = {
    "zero": ("Z IY R OW",), "one": ("HH W AH N",), "four": ("F OW R",), "eleven": ("IY L EH V AH N",), "twenty": ("T W EH N IY",),
    "thirty": ("TH ER T IY",), "seventeen": ("S EH V AH N T IY N",), "ninety": ("N AY N D IY",), "hundred": ("HH AH N D ER D",),
}  # fmt: skip
COLOURS = {"black": "B L AE K", "white": "W AY T", "blue": "B L UW", "grey": "G R EY", "gray": "G R EY"}
STOPS = ("S T AA P", "K IH L IH T", "SH AH T IH T D AW N", "S T AA P IH T")
NEAR_STOP = ("T AA P", "S T AH K", "S T EH P", "SH AA P", "S T AA K", "AH P", "AO F", "S K IH P", "S M OW K", "S AA P", "AA P")
ANSWERS = ("Y EH S", "N OW", *STOPS[:2], "OW", "T UW", "F AO R", "EY T", "HH EH L P", "N AY N", "R AY T", "G OW")
CONFUSED = {
    "zero": "two four oh", "oh": "four zero", "one": "nine four", "two": "three zero eight", "three": "two", "four": "five",
    "five": "nine four one", "six": "seven", "seven": "six eleven", "eight": "two three", "nine": "five one", "ten": "two eight",
    "eleven": "seven", "twelve": "twenty", "twenty": "thirty forty", "thirty": "forty twenty", "forty": "fifty thirty",
    "fifty": "sixty forty", "sixty": "fifty seventy", "seventy": "sixty", "eighty": "ninety fifty", "ninety": "eighty fifty",
}  # fmt: skip
# Beside "stop" and what is near to it, to be told from it by the early outputs.
SHORT = {"up": "AH P", "off": "AO F", "go": "G OW", "down": "D AW N", "left": "L EH F T", "right": "R AY T", "on": "AA N", "no": "N OW"}


def heard_words(text, phones):
    """Where the figures and colours of a text stand in its phones: (word, from, to) of each that is found, in order."""
    found, at = [], 0
    for word in text.replace(",", "").split():
        for spelled in (NUMBERS.get(word) or COLOURS.get(word), *ALSO.get(word, ())):
            p = spelled.split() if spelled else None
            where = next((i for i in range(at, len(phones) - len(p) + 1) if phones[i : i + len(p)] == p), None) if p else None
            if where is not None:
                found.append((word, where, where + len(p)))
                at = where + len(p)
                break
    return found


def other_of(word):
    """What is told wrongly for a figure or a colour, the likeliest first."""
    if word in COLOURS:
        return [c for c in ("white", "black", "blue") if c != word]
    tens = {"thir": "thirty", "four": "forty", "fif": "fifty", "six": "sixty", "seven": "seventy", "eigh": "eighty", "nine": "ninety"}
    other = [tens[word[:-4]]] if word.endswith("teen") else [next((k + "teen" for k, v in tens.items() if v == word), "")]
    return [o for o in other + CONFUSED.get(word, "").split() if o]


def number_rivals(phones, found):
    """The same without a figure, with another in its place, and with one more."""
    told = []
    # The last first: it is lost most.
    for word, begin, end in reversed(found):
        others = [NUMBERS.get(o) or COLOURS.get(o) for o in other_of(word)]
        told.append([phones[:begin] + o.split() + phones[end:] for o in others])
        if word in NUMBERS and len(found) > 1:
            told[-1].insert(0, phones[:begin] + phones[end:])
    if all(word in FIGURES for word, *_ in found):
        told.append([phones + FIGURES[f].split() for f in ("oh", "eight", "two")])
    # One of each in turn.
    most = max(map(len, told), default=0)
    return [each[i] for i in range(most) for each in told if i < len(each)]


def distance(a, b):
    """Phones wrong, left out or too many."""
    row = list(range(len(b) + 1))
    for i, p in enumerate(a, 1):
        before, row[0] = row[:], i
        for j, q in enumerate(b, 1):
            row[j] = min(before[j] + 1, row[j - 1] + 1, before[j - 1] + (p != q))
    return row[-1]


def rivals_of(text, phones, wordings):
    """Phones of what a clip must not be taken for, the most important first; none where nothing is known."""
    words = text.replace(",", "").split()
    joined = " ".join(phones)
    if text in FIGURES:
        told = [p.split() for f, p in FIGURES.items() if f != text] + [["N", "OW"], STOPS[0].split()]
    elif text in ("yes", "no") or text in SHORT:
        told = [p.split() for p in ANSWERS] + [p.split() for w, p in SHORT.items() if w != text]
    elif text == "stop":
        told = [p.split() for p in NEAR_STOP]
    elif re.search(r"\bstop\b", text):
        swapped = [joined.replace(STOPS[0], near, 1).split() for near in NEAR_STOP[:6]] if STOPS[0] in joined else []
        told = [*swapped, [p for p in joined.replace(STOPS[0], "", 1).split()]]
    else:
        found = heard_words(text, phones)
        told = number_rivals(phones, found) if found else []
        if text in wordings:
            near = ((distance(phones, w), w) for w in wordings.values() if abs(len(w) - len(phones)) < 5)
            told += [w for d, w in sorted(near) if 0 < d <= 4][:5]
        if len(words) <= 3 and len(phones) <= 12:
            if len(words) > 1 or len(phones) > 5:
                told += [phones[1:], phones[:-1]]
            told.append(STOPS[0].split())
    kept = []
    for each in told:
        if each and each != phones and len(each) <= LONGEST and each not in kept:
            kept.append(each)
    return kept[:MOST]


def table_of(clips):
    """For each clip which row of rivals is its own, or -1; rivals padded [rows, MOST, LONGEST] and their count of phones (0: none)."""
    usual = {}
    for c in clips:
        if c["kind"] == "kokoro" and len(c["text"].split()) <= 3 and 2 <= len(c["phones"].split()) <= 12:
            usual[c["text"]] = usual.get(c["text"], 0) + 1
    often = set(sorted(usual, key=lambda text: -usual[text])[:500])
    wordings = {c["text"]: c["phones"].split() for c in clips if c["text"] in often}
    rows, which, mine = [], {}, []
    for c in clips:
        key = (c["text"], c["phones"])
        phones = c["phones"].split()
        if c["length"] > LONGEST_S * RATE or len(phones) > LONGEST or any(p not in INDEX for p in phones):
            mine.append(-1)
            continue
        if key not in which:
            told = rivals_of(*(key[0], phones), wordings)
            which[key] = len(rows) if told else -1
            if told:
                rows.append([[INDEX[p] for p in each] for each in told])
        mine.append(which[key])
    # The last: what nothing must not be taken for.
    rows.append([[INDEX[p] for p in each.split() if p in INDEX] for each in ANSWERS[: MOST - 1]])
    table, count = np.zeros((len(rows), MOST, LONGEST), np.int16), np.zeros((len(rows), MOST), np.int64)
    for r, row in enumerate(rows):
        for k, each in enumerate(row):
            table[r, k, : len(each)], count[r, k] = each, len(each)
    return np.array(mine), table, count
