"""Phone errors on people of the dev split: measure.py MODEL FOLDER ... (folders as pack.py makes them)

HELD in the environment: at most so many clips of each source."""

import os
import sys
from concurrent.futures import ThreadPoolExecutor

import torch

from material import gather
from network import HANN_WINDOW, RATE, centred, loaded, log_bands, mel_bands
from scenes import Scenes

# Clips that end well before the scene does.
SCENE_S, LONGEST_S = 10, 9
HELD = int(os.environ.get("HELD", 96))
NOISES = (("clean", None), ("10 dB", 10.0))


def targets_of(phones, count):
    """Phones of the clips that are in the scene, one after the other, without what fills up."""
    longest = phones.shape[-1]
    inside = torch.arange(longest, device=phones.device) < count[..., None]
    return phones[inside].long(), count.sum(1)


def errors(out, targets, lengths):
    """Phones wrong, left out or too many in the likeliest path, and how many there are."""
    best, wrong, at = out.argmax(-1).cpu().tolist(), 0, 0
    refs = targets.cpu().tolist()
    for row, n in zip(best, lengths.cpu().tolist()):
        ref, at = refs[at : at + n], at + n
        said = [p for i, p in enumerate(row) if p and (i == 0 or row[i - 1] != p)]
        d = list(range(len(said) + 1))
        for i, r in enumerate(ref, 1):
            before, d[0] = d[:], i
            for j, h in enumerate(said, 1):
                d[j] = min(before[j] + 1, d[j - 1] + 1, before[j - 1] + (h != r))
        wrong += d[-1] if n else 0
    return wrong, len(refs)


@torch.no_grad()
def phone_errors(net, scenes, dev, most, batch=32):
    """A line for each source: errors of the late and of the early outputs, at most so many clips, each alone in a scene."""
    net.eval()
    bands, window = torch.from_numpy(mel_bands()).to(scenes.device), HANN_WINDOW.to(scenes.device)
    sources = {}
    for i, clip in enumerate(dev.clips):
        if clip["length"] < LONGEST_S * RATE:
            sources.setdefault(clip["source"], []).append(i)
    for source, clips in sorted(sources.items()):
        pick = clips[:: max(1, len(clips) // most)][:most]
        speakers, told = {dev.clips[i]["speaker"] for i in pick}, []
        for name, snr in NOISES:
            late, early, phones = 0, 0, 0
            for part in (pick[at : at + batch] for at in range(0, len(pick), batch)):
                x, spelled, count, _ = scenes.held(torch.tensor(part, device=scenes.device), SCENE_S, snr)
                with torch.autocast(scenes.device.type, dtype=torch.bfloat16, enabled=scenes.device.type == "cuda"):
                    out = net(centred(log_bands(x, bands, window)))
                targets, lengths = targets_of(spelled, count)
                (a, n), (b, _) = errors(out[0], targets, lengths), errors(out[1], targets, lengths)
                late, early, phones = late + a, early + b, phones + n
            told.append(f"{name} {100 * late / max(1, phones):.1f} % late, {100 * early / max(1, phones):.1f} % early")
        yield f"{source}: {'; '.join(told)} ({len(pick)} clips, {len(speakers)} speakers, {phones} phones)"


if __name__ == "__main__":
    model, *folders = sys.argv[1:]
    device = torch.device("cuda" if torch.cuda.is_available() else "cpu")
    with ThreadPoolExecutor(8) as pool:
        audio, material, _ = gather(folders, device, lambda f, a: list(pool.map(f, a)), {})
    net = loaded(model, device)
    for line in phone_errors(net, Scenes(audio, material, device, 1), material["dev"], HELD):
        print(line, flush=True)
