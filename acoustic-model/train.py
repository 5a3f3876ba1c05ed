"""Trains the acoustic model. python3 train.py FOLDER STEPS [CHECKPOINT]; writes FOLDER/model.pt as it goes."""
import sys
import time

import numpy as np
import torch
from torch import nn

from network import Acoustic
from scenes import UNKNOWN, Scenes

folder, steps = sys.argv[1], int(sys.argv[2])
BATCH = 32
# How much earlier, in frames of 10 ms, is the speech that an output tells of.
DELAY = 8
# The same for the phone that it tells of, where its time is known: long enough to hear what comes after it.
PHONE_DELAY = 10


class Stream(torch.utils.data.IterableDataset):
    def __iter__(self):
        info = torch.utils.data.get_worker_info()
        scenes = Scenes(folder, int(time.time()) + (info.id if info else 0))
        while True:
            yield scenes.scene()


def collate(batch):
    features, phones, active, at_phone = zip(*batch)
    targets = torch.tensor([phone for each in phones for phone in each], dtype=torch.long)
    lengths = torch.tensor([len(each) for each in phones])
    stacked = lambda arrays: torch.tensor(np.stack(arrays))
    return stacked(features), targets, lengths, stacked(active).float(), stacked(at_phone)


def earlier(frames, delay, moments):
    """What was in each frame of 10 ms, so much earlier, for each output."""
    return frames[:, (torch.arange(moments) * 4 - delay).clamp(0, frames.shape[1] - 1)]


torch.set_num_threads(2)
model = Acoustic()
if len(sys.argv) > 3:
    model.load_state_dict(torch.load(sys.argv[3]))
optimizer = torch.optim.AdamW(model.parameters(), weight_decay=1e-2)
schedule = torch.optim.lr_scheduler.OneCycleLR(optimizer, 3e-3, total_steps=steps, pct_start=0.1)
ctc = nn.CTCLoss(zero_infinity=True, reduction="none")
loader = iter(torch.utils.data.DataLoader(Stream(), BATCH, num_workers=1, collate_fn=collate, prefetch_factor=4))
means, began = None, time.time()
for step in range(steps):
    features, targets, lengths, active, at_phone = next(loader)
    logp, near = model(features)
    times = torch.full((len(features),), logp.shape[2], dtype=torch.long)
    each = ctc(logp.permute(2, 0, 1), targets, times, lengths)
    loss_ctc = (each / torch.clamp(lengths, min=3)).mean()
    moments = logp.shape[2]
    loss_near = nn.functional.binary_cross_entropy_with_logits(near, earlier(active, DELAY, moments))
    loss_phone = nn.functional.nll_loss(logp, earlier(at_phone, PHONE_DELAY, moments), ignore_index=UNKNOWN)
    # First which phone is when, then which phones there are.
    aligned = max(0.2, 1 - 2 * step / steps)
    optimizer.zero_grad()
    ((1.2 - aligned) * loss_ctc + 2 * aligned * loss_phone + 0.5 * loss_near).backward()
    nn.utils.clip_grad_norm_(model.parameters(), 5.0)
    optimizer.step()
    schedule.step()
    now = np.array([loss_ctc.item(), loss_phone.item(), loss_near.item()])
    means = now if means is None else 0.97 * means + 0.03 * now
    if step % 50 == 49:
        ctc_mean, phone_mean, near_mean = means
        speed = (step + 1) / (time.time() - began)
        print(f"{step + 1} ctc {ctc_mean:.3f} phone {phone_mean:.3f} near {near_mean:.3f} {speed:.2f} steps/s", flush=True)
    if step % 250 == 249 or step == steps - 1:
        torch.save(model.state_dict(), f"{folder}/model.pt")
