"""Common Voice 6.1, a hundred clips of a language by chance: common_voice.py OUTPUT COMMON_VOICE [--beside FOLDER]

LANGUAGE in the environment: en, or fr. Of the few French speakers more are kept for the report."""

import csv
import io
import os
import re
import unicodedata

from packs import Beside, Repository, arguments, clip_of, split_by_hash, write_packs

LANGUAGE = os.environ.get("LANGUAGE", "en")
LICENCE = "CC0 1.0 (Mozilla Common Voice)"
NAME = "omnilingo/rsample-100-cv-corpus-6.1-2020-12-11"

asked = arguments(__doc__, "common_voice")
repository, beside = Repository(asked.common_voice, NAME, "6785f863fec9770151abfe50a5e3e3787fd20ba2"), Beside(asked.beside)


def normalized(text):
    text = unicodedata.normalize("NFC", text.replace("’", "'").replace("‘", "'")).lower()
    text = re.sub(r'["“”«»!?,;:.()…]', " ", text).replace("–", " ").replace("—", " ")
    return re.sub(r"\s+", " ", re.sub(r"\s-|-\s", " ", text)).strip()


clips = []
for row in csv.DictReader(io.StringIO(repository.read(f"{LANGUAGE}/validated.tsv").decode()), delimiter="\t", quoting=csv.QUOTE_NONE):
    speaker = "cv_" + row["client_id"][:12]
    clip = clip_of(repository, f"{LANGUAGE}/clips/{row['path']}", kind="speech", text=normalized(row["sentence"]), speaker=speaker,
                   split=split_by_hash(speaker, 0.36, 0.06) if LANGUAGE == "fr" else beside.split(speaker), licence=LICENCE)  # fmt: skip
    if clip:
        clips.append(clip)
clips.sort(key=lambda clip: (clip["split"], clip["speaker"]))
write_packs(asked.output, f"cv-{LANGUAGE}", clips)
