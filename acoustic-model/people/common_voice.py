"""Common Voice 6.1, a hundred English clips by chance: common_voice.py OUTPUT COMMON_VOICE [--beside FOLDER]"""

import csv
import io
import re
import unicodedata

from packs import Beside, Repository, arguments, clip_of, write_packs

LICENCE = "CC0 1.0 (Mozilla Common Voice)"
NAME = "omnilingo/rsample-100-cv-corpus-6.1-2020-12-11"

asked = arguments(__doc__, "common_voice")
repository, beside = Repository(asked.common_voice, NAME, "6785f863fec9770151abfe50a5e3e3787fd20ba2"), Beside(asked.beside)


def normalized(text):
    text = unicodedata.normalize("NFC", text.replace("’", "'").replace("‘", "'")).lower()
    text = re.sub(r'["“”«»!?,;:.()…]', " ", text).replace("–", " ").replace("—", " ")
    return re.sub(r"\s+", " ", re.sub(r"\s-|-\s", " ", text)).strip()


clips = []
for row in csv.DictReader(io.StringIO(repository.read("en/validated.tsv").decode()), delimiter="\t", quoting=csv.QUOTE_NONE):
    speaker = "cv_" + row["client_id"][:12]
    clip = clip_of(repository, f"en/clips/{row['path']}", kind="speech", text=normalized(row["sentence"]), speaker=speaker,
                   split=beside.split(speaker), licence=LICENCE)  # fmt: skip
    if clip:
        clips.append(clip)
clips.sort(key=lambda clip: (clip["split"], clip["speaker"]))
write_packs(asked.output, "cv-en", clips)
