"""CMU AN4 census: letters, digits, numbers, dates and control words, read in an office: an4.py OUTPUT AN4"""

import re

from packs import Repository, arguments, clip_of, hashed, write_packs

LICENCE = "free for any purpose (AN4 licence, BSD-like)"
TEST_SPEAKERS, DEV_SPEAKERS = 32, 7

asked = arguments(__doc__, "an4")
repository = Repository(asked.an4, "cmusphinx/an4", "b567d132f43304e70a2b2eca6077f22255311812")
texts = {}
for part in ("train", "test"):
    for line in repository.read(f"etc/an4_{part}.transcription").decode().splitlines():
        said = re.match(r"(?:<s> )?(.*?)(?: </s>)? \((\S+)\)", line)
        texts[said[2]] = re.sub(r"\s+", " ", said[1].lower().strip())

clips, official = [], set()
for path in repository.paths():
    file = re.match(r"wav/an4(test)?_clstk/(\w+)/([\w-]+)\.(wav|sph|raw)$", path)
    if not file or file[3] not in texts:
        continue
    speaker = "an4_" + file[2]
    if file[1]:
        official.add(speaker)
    clip = clip_of(repository, path, kind="speech", text=texts[file[3]], speaker=speaker, licence=LICENCE)
    if clip:
        clips.append(clip)

# The speakers of the official test, and so many more that test has 32; of the others seven are dev.
others = sorted({clip["speaker"] for clip in clips} - official, key=hashed)
more = TEST_SPEAKERS - len(official)
test, dev = official | set(others[:more]), set(others[more : more + DEV_SPEAKERS])
for clip in clips:
    clip["split"] = "test" if clip["speaker"] in test else "dev" if clip["speaker"] in dev else "train"
clips.sort(key=lambda clip: (clip["split"], clip["speaker"], clip["text"]))
write_packs(asked.output, "an4", clips)
