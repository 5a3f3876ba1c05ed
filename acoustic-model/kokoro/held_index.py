"""Makes what a held voice says a folder of recordings as people/ makes them, to be heard: held_index.py OUTPUT HELD.json ...

Beside each HELD.json lies HELD.opus. What answers nothing (near misses, talk) has no text, as other talk has none."""

import json
import os
import shutil
import sys

COLUMNS = "pack startSample lengthSamples kind text speaker split source licence originalRateHz flags".split()
SAID = ("reply", "control", "number", "digits", "stop")

if __name__ == "__main__":
    output, *indexes = sys.argv[1:]
    os.makedirs(output, exist_ok=True)
    with open(f"{output}/index.tsv", "w", encoding="utf8") as file:
        file.write("\t".join(COLUMNS) + "\n")
        for index in indexes:
            name = os.path.basename(index)[:-5]
            shutil.copy(index[:-5] + ".opus", f"{output}/{name}.opus")
            for entry in json.load(open(index)):
                kind = entry["group"].split(".")[1]
                said = kind in SAID
                row = [f"{name}.opus", entry["at"], entry["length"], "speech" if said else "talk", entry["text"] if said else "",
                       entry["voice"], entry["split"], f"kokoro {kind}", "Apache-2.0", 16000, ""]  # fmt: skip
                file.write("\t".join(map(str, row)) + "\n")
