"""Numbers that people never said in one go, joined out of what they did say: joined.py MODEL PEOPLE MADE COUNT [SEED]

PEOPLE is packed (pack.py). The network MODEL (shipped.py makes one of a shipped file) tells where each phone stands in a person's
figures and numbers; these are cut between words, where it is quietest, and runs of one to three words of the same person joined to
COUNT others. Kept are those that the network hears as they are spelled, but for one phone in eight. Splits stay what they were.
Writes MADE/joined.s16 and joined.jsonl, as accents.py does. DICTIONARY as for pack.py."""

import json
import os
import random
import sys

import numpy as np
import torch

from languages import INDEX
from material import decoded
from network import HANN_WINDOW, HOP, RATE, STRIDE, centred, loaded, log_bands, mel_bands
from pack import dictionary, words_of
from rivals import FIGURES, NUMBERS, distance

# Who reads figures and numbers one after the other.
SOURCE = "cmusphinx/an4"
LONGEST_S, LONGEST_PIECE, LONGEST_ROW = 17, 3, 6
# Of four rows, three have a word that is no single figure.
BEYOND = 0.75
# Of how many words a person must have been heard, and how many rows one makes at most of each.
FEWEST, ROWS_A_WORD = 6, 3
MOMENT = HOP * STRIDE
# The network tells a phone well after its sound began (measured at the beginning of 45 clips: 180 ms, one in ten below 140): so
# long before that a word may begin, and so long before it tells the last phone of the word before, that one may have ended.
LATE, LAST_LATE = (RATE // 5, RATE * 2 // 25), RATE * 9 // 100
BANDS, WINDOW = torch.from_numpy(mel_bands()), HANN_WINDOW


@torch.no_grad()
def heard(net, sound):
    """Log probabilities of each phone in each moment (30 ms), of 16-bit sound with rests around it."""
    x = torch.from_numpy(sound.astype(np.float32) / 32768)[None]
    return net(centred(log_bands(x, BANDS, WINDOW)))[0][0].numpy()


def stands(scores, phones):
    """In which moment each phone begins and ends: the likeliest path through all of them."""
    states = [0]
    for p in phones:
        states += [p, 0]
    states = np.array(states)
    # What may be left out: nothing between two phones that differ.
    skip = np.array([i > 1 and s and s != states[i - 2] for i, s in enumerate(states)])
    best, back = np.full(len(states), -1e9), []
    best[:2] = scores[0][states[:2]]
    for row in scores[1:]:
        from_ = np.stack([best, np.r_[-1e9, best[:-1]], np.where(skip, np.r_[-1e9, -1e9, best[:-2]], -1e9)])
        back.append(from_.argmax(0))
        best = from_.max(0) + row[states]
    at = len(states) - 1 if best[-1] > best[-2] else len(states) - 2
    path = [at]
    for step in reversed(back):
        at -= step[at]
        path.append(at)
    path.reverse()
    begins, ends = {}, {}
    for moment, state in enumerate(path):
        begins.setdefault(state, moment)
        ends[state] = moment
    return [(begins.get(2 * i + 1), ends.get(2 * i + 1)) for i in range(len(phones))]


def greedy(scores):
    best = scores.argmax(-1)
    return [int(p) for i, p in enumerate(best) if p and (i == 0 or best[i - 1] != p)]


def quietest(sound, begin, end):
    """Where between two samples 20 ms have the least power, high frequencies raised: an "s" is not quiet."""
    if end - begin < 2 * HOP:
        return (begin + end) // 2
    raised = np.diff(sound.astype(np.float64), prepend=0)
    starts = np.arange(begin, end - HOP, HOP // 2)
    power = [np.square(raised[max(0, s - HOP) : s + HOP]).mean() for s in starts]
    return int(starts[int(np.argmin(power))])


def pieces_of(net, item, sound, words):
    """Runs of numbers of a clip: (words, phones of each, sound, where the words end in it)."""
    said = words_of(item["text"])
    spelled = [words[w][0].split() if w in words else None for w in said]
    if None in spelled or " ".join(p for word in spelled for p in word) != item["phones"]:
        return []
    rest = np.zeros(RATE // 2, np.int16)
    where = stands(heard(net, np.concatenate([rest, sound, rest])), [INDEX[p] for word in spelled for p in word])
    if any(begin is None for begin, _ in where):
        return []
    at, cuts = 0, [0]
    for word, after in zip(spelled, spelled[1:]):
        at += len(word)
        last, first = (m * MOMENT - len(rest) for m in (where[at - 1][1], where[at][0]))
        begin, end = max(last - LAST_LATE, first - LATE[0]), first - LATE[1]
        cuts.append(quietest(sound, *(min(max(0, x), len(sound)) for x in (begin, max(begin, end)))))
    cuts.append(len(sound))
    found = []
    for i in range(len(said)):
        for j in range(i + 1, min(i + LONGEST_PIECE, len(said)) + 1):
            if not all(w in NUMBERS for w in said[i:j]):
                break
            # Nothing of the next word.
            end = cuts[j] - (HOP if j < len(said) else 0)
            if cuts[j] - cuts[i] > 0.12 * RATE * (j - i):
                found.append((tuple(said[i:j]), [" ".join(p) for p in spelled[i:j]], sound[cuts[i] : end]))
    return found


def trimmed(x):
    """Without rests before and behind, 10 ms of them left, and faded in and out over 6."""
    loud = np.nonzero(np.abs(x) > 0.04 * np.abs(x).max())[0]
    x = x[max(0, loud[0] - HOP) : loud[-1] + HOP].astype(np.float32)
    ramp = np.minimum(1, np.arange(len(x)) / 96)
    return x * ramp * ramp[::-1]


def joined(parts, chance):
    """Pieces behind one another, of even loudness, run together or a little apart."""
    level = np.median([np.sqrt(np.square(p).mean()) for p in parts])
    out = []
    for part in parts:
        part = part * (level / np.sqrt(np.square(part).mean())) * 10 ** (chance.uniform(-2, 2) / 20)
        if out:
            out.append(np.zeros(int(RATE * (0 if chance.random() < 0.4 else chance.uniform(0.02, 0.2))), np.float32))
        out.append(part)
    x = np.concatenate(out)
    return (x * min(1, 30000 / np.abs(x).max())).astype("<i2")


def main(model, people, made, count, seed=28):
    net, chance = loaded(model).eval(), random.Random(seed)
    words = dictionary(os.environ.get("DICTIONARY", "node_modules/soundswallower/model/en-us/dict.txt"))
    items, sounds, of = json.load(open(f"{people}/items.json")), {}, {}
    for item in items:
        numbers = sum(w in NUMBERS for w in words_of(item["text"]))
        if item["kind"] != "speech" or item["source"] != SOURCE or not numbers or item["length"] > LONGEST_S * RATE:
            continue
        if item["pack"] not in sounds:
            sounds[item["pack"]] = decoded(f"{people}/{item['pack']}.opus")
        sound = sounds[item["pack"]][item["at"] : item["at"] + item["length"]]
        for said, phones, piece in pieces_of(net, item, sound, words):
            one = trimmed(piece)
            rest = np.zeros(RATE // 2, np.int16)
            target = [INDEX[p] for p in " ".join(phones).split()]
            if distance(target, greedy(heard(net, np.concatenate([rest, one.astype(np.int16), rest])))) * 5 <= len(target):
                of.setdefault((item["split"], item["speaker"]), []).append((said, phones, one))
    of = {who: pieces for who, pieces in of.items() if len({(p[0], len(p[2])) for p in pieces}) >= FEWEST}
    room = {who: ROWS_A_WORD * len(pieces) for who, pieces in of.items()}
    print(len(of), "people", sum(map(len, of.values())), "pieces", flush=True)
    at, kept, tried, known = 0, 0, 0, set()
    os.makedirs(made, exist_ok=True)
    with open(f"{made}/joined.s16", "wb") as out, open(f"{made}/joined.jsonl", "w", encoding="utf8") as index:
        while kept < count and tried < 4 * count and any(room.values()):
            tried += 1
            who = chance.choices(list(room), list(room.values()))[0]
            beyond = [p for p in of[who] if any(w not in FIGURES for w in p[0])]
            chosen = [chance.choice(of[who]) for _ in range(chance.choice((2, 2, 3)))]
            if beyond and chance.random() < BEYOND:
                chosen[chance.randrange(len(chosen))] = chance.choice(beyond)
            said = [w for p in chosen for w in p[0]]
            same = (who, tuple((p[0], len(p[2])) for p in chosen))
            if len(said) > LONGEST_ROW or same in known:
                continue
            known.add(same)
            x = joined([p[2] for p in chosen], chance)
            phones = " ".join(p for piece in chosen for p in piece[1])
            target, rest = [INDEX[p] for p in phones.split()], np.zeros(RATE // 2, np.int16)
            if distance(target, greedy(heard(net, np.concatenate([rest, x, rest])))) * 8 > len(target):
                continue
            x.tofile(out)
            told = {"text": " ".join(said), "phones": phones, "kind": "joined", "voice": who[1], "split": who[0]}
            index.write(json.dumps({**told, "sampleRateHz": RATE, "at": at, "length": len(x)}) + "\n")
            at, kept, room[who] = at + len(x), kept + 1, room[who] - 1
    print(kept, "rows of", tried, "tried,", round(at / RATE / 60, 1), "minutes")


if __name__ == "__main__":
    model, people, made, count, *seed = sys.argv[1:]
    main(model, people, made, int(count), *map(int, seed))
