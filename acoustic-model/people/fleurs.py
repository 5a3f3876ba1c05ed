"""FLEURS, ten French clips: fleurs.py OUTPUT CUTTLEDOC"""

import re

from packs import Repository, arguments, clip_of, write_packs

NAME, FOLDER = "sebastian-software/cuttledoc", "packages/cuttledoc/fixtures"

asked = arguments(__doc__, "cuttledoc")
repository = Repository(asked.cuttledoc, NAME, "e0c587883f1fdf67d521f8e0b3c216b22d91fda6")
clips = []
for path in repository.paths():
    if re.fullmatch(rf"{FOLDER}/fleurs-fr-\d+\.ogg", path):
        text = repository.read(path[:-4] + ".txt").decode().strip().lower().replace("’", "'")
        # Who speaks is not said: nobody of them is in another split.
        clip = clip_of(repository, path, kind="speech", text=re.sub(r"[^\w' -]", "", text), speaker="", split="train",
                       licence="CC BY 4.0 (FLEURS, Google)", flags="text_approx" if re.search(r"\d", text) else "")  # fmt: skip
        if clip:
            clips.append(clip)
write_packs(asked.output, "fleurs-fr", clips)
