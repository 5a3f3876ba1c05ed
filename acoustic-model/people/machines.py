"""Recorded engines, tools and radio, CC0 or CC BY each as its repository says: machines.py OUTPUT SOUNDPACK GAME

Each original recording counts as a speaker. Writes who made what to OUTPUT/machines-authors.txt (see CREDITS.md)."""

import hashlib
import re

import numpy as np
from packs import RATE, Repository, arguments, clip_of, split_by_hash, write_packs

LONGEST_S, LOUDEST = 60, 0.99

asked = arguments(__doc__, "soundpack", "game")
soundpack = Repository(asked.soundpack, "Fris0uman/CDDA-Soundpacks", "88586bb600eae4b053a8928bddbd5371d0b1ecc6")
game = Repository(asked.game, "RedundantC/wis_part1", "9c9adecf2f77b899e7929a3f4a82700d416cb4e4")
clips, authors, seen = [], [], set()

# Folders of the soundpack, each with its own credits.md.
FOLDERS = {
    "engine_start/combustion": "engine start",
    "engine_stop/combustion": "engine stop",
    "engine_working_external/combustion": "engine running",
    "engine_working_external/v8": "engine running",
    "engine_working_internal/combustion": "engine running inside cab",
    "engine_working_internal/v8": "engine running inside cab",
    "radio": "radio",
    "tool": "tool",
    "vehicle/rear_beeper": "reversing beeper",
    "vehicle/horn_medium": "horn",
    "vehicle/car_alarm": "car alarm",
    "vehicle/gear_shift": "gear shift",
    "smash_fail/metal": "metal blow",
    "smash_success/metal": "metal blow",
    "environment/ambient": "ambience",
    "smash_success/hit_vehicle": "metal blow",
    "close_door/door_metal": "metal door",
    "plmove/walk_metal": "steps on metal",
}
NOT_OF_A_WORKSHOP = re.compile("church|camera|geiger")
# Rows of the game's sources.md.
ROWS = {
    "car engine": "car_motor",
    "compressor": "compressor_motor_0[12]",
    "engine idle": "vehicle_motor_idle",
    "motorbike idle": "motorbike_idle",
    "helicopter": "helicopter",
    "propeller plane": "airplane_prop",
    "horn": "vehicle_horn_0[12]",
    "wind": "wind",
    "rain": "rain_(heavy|medium|light)(_0\\d)?",
    "metal": "dug_metal|dig_metal",
}


def add(repository, path, what, author, licence, address):
    """The first minute of a recording; the same sound once."""
    number = re.search(r"(\d{4,})", address)
    recording = "rec_" + (number[1] if number else re.sub(r"\W+", "_", address or path)[-40:])
    clip = clip_of(repository, path, noise=True, kind="noise", text=what, speaker=recording,
                   split=split_by_hash(recording, 0.2, 0.12), licence=licence)  # fmt: skip
    if clip is None:
        print("not usable:", path)
        return
    digest = hashlib.sha256((clip["audio"] * 32767).astype("<i2").tobytes()).hexdigest()
    if digest in seen:
        return
    seen.add(digest)
    sound = clip["audio"][: LONGEST_S * RATE]
    peak = np.abs(sound).max()
    clips.append({**clip, "audio": sound * (LOUDEST / peak) if peak > LOUDEST else sound})
    authors.append((repository.name, path, what, author, licence, address))


def name_of(what, file):
    if "chatter" in file:
        return "radio talk"
    if "static" in file:
        return "radio static"
    return what + " " + re.sub(r"[_\d]+|\.ogg", " ", file).strip() if what in ("tool", "ambience") else what


for folder, what in FOLDERS.items():
    credits = soundpack.read(f"sound/CC-Sounds/{folder}/credits.md")
    for line in credits.decode("utf8", "replace").splitlines() if credits else []:
        fields = [field.strip() for field in line.strip().strip("|").split("|")]
        if len(fields) < 4 or not re.search(r"\.(ogg|wav)$", fields[0]) or NOT_OF_A_WORKSHOP.search(fields[0]):
            continue
        file, author, licence, address = fields[0], fields[1], fields[2].replace("*", "").strip(), fields[3]
        if re.match(r"CC0|CC[ -]BY", licence, re.I) and not re.search("NC|SA|ND", licence):
            add(soundpack, f"sound/CC-Sounds/{folder}/{file}", name_of(what, file), author, licence, address)
        else:
            print("licence does not allow it:", file, licence)

paths, sources = game.paths(), game.read("mods/sounds/sources.md").decode()
addresses = dict(re.findall(r"^\[([^\]]+)\]:\s*(\S+)", sources, re.M))
for what, pattern in ROWS.items():
    for row in re.finditer(
        rf"^\| \[(?P<name>{pattern})\]\[[^\]]*\]\**\s*\|\s*(?P<author>[^|]+?)\s*\|\s*(?P<licence>[^|]+?)\s*\|", sources, re.M
    ):
        for path in paths:
            if re.search(rf"/sounds_{row['name']}(\.\d+)?\.ogg$", path) and re.match(r"CC0|CC BY [34]\.0", row["licence"]):
                add(game, path, what, row["author"], row["licence"], addresses.get(row["name"], ""))

clips.sort(key=lambda clip: (clip["split"], clip["text"]))
write_packs(asked.output, "machines", clips, 64)
with open(f"{asked.output}/machines-authors.txt", "w") as file:
    file.write("repository\tpath\twhat\tauthor\tlicence\taddress\n" + "".join("\t".join(row) + "\n" for row in authors))
