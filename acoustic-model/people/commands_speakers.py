"""Which speakers of Google Speech Commands are learned from: the same for every maker that reads a copy of it."""

import os

from packs import hashed

LICENCE = "CC BY 4.0 (Google Speech Commands)"
# So many speakers go to test that it has 300 clips of "stop".
TEST_FROM = 0.83

left_out = set(open(os.path.join(os.path.dirname(__file__), "left-out-speakers.txt")).read().split())


def split_of(beside, speaker):
    """A speaker whom nobody knows is in test too from TEST_FROM on."""
    return "test" if speaker not in beside.splits and hashed(speaker) >= TEST_FROM else beside.split(speaker)
