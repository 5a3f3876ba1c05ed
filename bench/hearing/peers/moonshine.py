"""What Moonshine tiny hears in each WAV file that a line of the input names; the model lies in the package, as of moonshine-voice 0.1.0"""

import sys
import wave
from pathlib import Path

import moonshine_voice
import numpy

folder = Path(moonshine_voice.__file__).parent / "assets" / "tiny-en"
# It is told where speech lies, so its own detector, which loses short words, is left out.
model = moonshine_voice.Transcriber(folder, moonshine_voice.ModelArch.TINY, options={"vad_threshold": "0"})
for line in sys.stdin:
    with wave.open(line.strip()) as file:
        sound = numpy.frombuffer(file.readframes(file.getnframes()), numpy.int16).astype(numpy.float32) / 32768
    heard = model.transcribe_without_streaming(sound.tolist(), file.getframerate())
    print(" ".join(" ".join(line.text for line in heard.lines).split()), flush=True)
