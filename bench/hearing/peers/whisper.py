"""What Whisper hears in each WAV file that a line of the input names: whisper.py FOLDER (a model converted for faster-whisper)"""

import sys
import wave

import numpy
from faster_whisper import WhisperModel

model = WhisperModel(sys.argv[1], device="cpu", compute_type="int8", cpu_threads=1)
for line in sys.stdin:
    with wave.open(line.strip()) as file:
        sound = numpy.frombuffer(file.readframes(file.getnframes()), numpy.int16).astype(numpy.float32) / 32768
    segments, _ = model.transcribe(sound, language="en")
    print(" ".join(" ".join(segment.text for segment in segments).split()), flush=True)
