"""Texts that voices put together from halves of phones were heard wrongly in: hard_texts.py KOKORO MADE

Out of KOKORO/spelled.jsonl (phones.py) into MADE/texts.jsonl, for accents.py: smoke and its colours, figures in a row, numbers,
stop words, what is near to them, and answers."""

import json
import os
import random
import sys

from rivals import COLOURS, NUMBERS

# How many of each are drawn, and of at most how many words.
DRAWN = {"smoke": (900, 4), "digits": (1400, 7), "number": (1500, 7), "stop": (350, 9), "near": (500, 3), "reply": (1350, 5)}


def kind_of(words, kind):
    """As what a text is drawn; None: not at all."""
    if any(w in COLOURS or w == "smoke" for w in words) and len(words) <= DRAWN["smoke"][1]:
        return "smoke"
    if all(w in NUMBERS for w in words):
        return "digits"
    if any(w in NUMBERS for w in words) and len(words) <= DRAWN["number"][1]:
        return "number"
    return "reply" if kind == "control" else kind


def main(kokoro, made, seed=6):
    chance, of = random.Random(seed), {kind: [] for kind in DRAWN}
    with open(f"{kokoro}/spelled.jsonl", encoding="utf8") as file:
        for row in map(json.loads, file):
            words = row["text"].replace(",", "").split()
            kind = kind_of(words, row["kind"])
            if kind in DRAWN and len(words) <= DRAWN[kind][1]:
                of[kind].append({"text": " ".join(words), "phones": row["us_phones"], "kind": kind})
    texts = []
    for kind, (count, _) in DRAWN.items():
        for _ in range(-(-count // max(1, len(of[kind])))):
            chance.shuffle(of[kind])
            texts += of[kind][: count - sum(t["kind"] == kind for t in texts)]
    chance.shuffle(texts)
    os.makedirs(made, exist_ok=True)
    with open(f"{made}/texts.jsonl", "w", encoding="utf8") as file:
        file.writelines(json.dumps(text) + "\n" for text in texts)


if __name__ == "__main__":
    main(*sys.argv[1:])
