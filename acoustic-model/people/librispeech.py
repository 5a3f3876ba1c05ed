"""LibriSpeech, read sentences of books, up to 4.5 minutes a reader: librispeech.py OUTPUT DEV_CLEAN TEST_CLEAN [--beside FOLDER]

The readers take turns, so that the first packs hold all of them."""

import hashlib
import re

from packs import RATE, Beside, Repository, arguments, clip_of, write_packs

LICENCE = "CC BY 4.0 (LibriSpeech)"
MOST_OF_A_READER_S, LONGEST_CLIP_S = 4.5 * 60, 24

asked = arguments(__doc__, "dev_clean", "test_clean")
COPIES = [
    ("dev-clean", Repository(asked.dev_clean, "Marcotabordaa/AUDIO_PYTORCH", "d9a8e9c0e9053bd800c56cba080a815d63e9ad34")),
    ("test-clean", Repository(asked.test_clean, "keweizhan77/SwitchNet", "91d7fdb800769c4d424c5bf97c20c37ef81d998e")),
]
digest = lambda text: hashlib.sha256(text.encode()).hexdigest()
beside, readers = Beside(asked.beside), {}

for part, repository in COPIES:
    paths, texts = repository.paths(), {}
    for path in paths:
        if path.endswith(".trans.txt"):
            for line in repository.read(path).decode().splitlines():
                number, text = line.split(" ", 1)
                texts[number] = text.strip().lower()
    sounds = [path for path in paths if re.search(rf"{part}/\d+/\d+/[\d-]+\.flac$", path)]
    for path in sorted(sounds, key=lambda path: digest(path.split("/")[-1])):
        number = path.split("/")[-1][: -len(".flac")]
        speaker = "libri_" + number.split("-")[0]
        mine = readers.setdefault(speaker, [])
        enough = sum(len(clip["audio"]) for clip in mine) / RATE > MOST_OF_A_READER_S
        if number not in texts or enough or (speaker, texts[number]) in beside.said:
            continue
        clip = clip_of(repository, path, kind="speech", text=texts[number], speaker=speaker, split=beside.split(speaker), licence=LICENCE)
        if clip and len(clip["audio"]) <= LONGEST_CLIP_S * RATE:
            mine.append({**clip, "source": f"{repository.name} ({part})"})

for split in ("train", "dev", "test"):
    queues = [
        list(clips) for speaker, clips in sorted(readers.items(), key=lambda one: digest(one[0])) if clips and clips[0]["split"] == split
    ]
    turns = []
    while any(queues):
        turns += [queue.pop(0) for queue in queues if queue]
    write_packs(asked.output, f"libri-{split}", turns)
