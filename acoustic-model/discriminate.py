"""The loss that decides: how much likelier what was said is than each thing that it must not be taken for (rivals.py)."""

import torch
import torch.nn.functional as F

from measure import targets_of
from network import HOP, RATE, STRIDE
from scenes import SLOTS

MOMENT = HOP * STRIDE
# Of the sound around a clip at most so much is looked at, and clips are left out that stand closer together.
BEFORE_S, AFTER_S, LEAST_ROOM_S = 0.12, 0.12, 0.06
# Likelihoods are compared at this part of their logarithm, and what was said has to win by so much of it.
SCALE, MARGIN = 0.6, 2.0
# Where nobody near says anything, pieces this long are looked at.
SILENT_MOMENTS = 45


class Spans:
    """Pieces of scenes: which row, from which moment, how many; what was said there, and its rivals [spans, MOST, LONGEST]."""

    def __init__(self, row, begin, length, phones, count, rivals, rival_count, silent):
        self.row, self.begin, self.length, self.phones, self.count = row, begin, length, phones, count
        self.rivals, self.rival_count, self.silent = rivals, rival_count, silent


def spans_of(scenes, said, count, moments):
    """As many pieces as there are scenes: clips that have rivals, those of people most, and pieces in which nobody near speaks."""
    m = scenes.m["train"]
    rows, longest = len(count), m.rival_phones.shape[2]
    end = said.end.clamp(max=moments * MOMENT)
    begin = said.begin.clamp(max=moments * MOMENT)
    before = begin - F.pad(end, (1, 0))[:, :SLOTS]
    after = F.pad(begin, (0, 1), value=moments * MOMENT)[:, 1:] - end
    which = m.rivals[said.pick]
    able = said.fits & (which >= 0) & (torch.minimum(before, after) >= LEAST_ROOM_S * RATE)
    # Those of people are few.
    weight = able * (1 + 3 * (1 - m.quiet_around[said.pick]))
    chosen = (scenes.rand(rows, SLOTS).clamp(min=1e-6) ** (1 / weight.clamp(min=1e-6)) * able).flatten().topk(rows).indices
    chosen = chosen[able.flatten()[chosen]]
    row, slot = chosen // SLOTS, chosen % SLOTS
    first = ((begin - before.div(2).clamp(max=BEFORE_S * RATE))[row, slot] / MOMENT).floor().long().clamp(min=0)
    last = ((end + after.div(2).clamp(max=AFTER_S * RATE))[row, slot] / MOMENT).ceil().long().clamp(max=moments)
    pick = said.pick[row, slot]
    quiet = (count.sum(1) == 0).nonzero()[:, 0]
    start = (scenes.rand(len(quiet)) * max(1, moments - SILENT_MOMENTS)).long()
    none = torch.zeros(len(quiet), dtype=torch.long, device=row.device)
    which = torch.cat([m.rivals[pick], none + len(m.rival_phones) - 1])
    phones = m.phones[pick][:, :longest]
    phones = F.pad(phones, (0, longest - phones.shape[1], 0, len(quiet)))
    silent = torch.cat([torch.zeros(len(row), dtype=torch.bool, device=row.device), none == 0])
    return Spans(
        torch.cat([row, quiet]), torch.cat([first, start]), torch.cat([last - first, none + SILENT_MOMENTS]), phones,
        torch.cat([m.count[pick], none]), m.rival_phones[which], m.rival_count[which], silent,
    )  # fmt: skip


def compared(scores, able, truth):
    """The loss of each, and whether the truth was likeliest."""
    scores = torch.where(able, scores, torch.full_like(scores, -1e4))
    won = scores.argmax(1) == truth
    mine = F.one_hot(truth, scores.shape[1])
    loss = F.cross_entropy(SCALE * (scores - MARGIN * mine), truth, reduction="none")
    return loss, won


def span_loss(out, spans):
    """Of one kind of outputs [rows, moments, phones]: the mean loss, and the share in which what was said is likeliest."""
    longest = int(spans.length.max())
    t = torch.arange(longest, device=out.device)
    inside = t[None] < spans.length[:, None]
    index = (spans.begin[:, None] + t[None]).clamp(max=out.shape[1] - 1)
    piece = out[spans.row[:, None], index]
    none = (piece[:, :, 0] * inside).sum(1)
    phones = torch.cat([spans.phones[:, None], spans.rivals], 1).long()
    count = torch.cat([spans.count[:, None], spans.rival_count], 1)
    n, k, _ = phones.shape
    times = spans.length[:, None].expand(-1, k)
    # There is time for them, also where a phone comes twice.
    able = (count > 0) & (times >= count + 4)
    said = F.ctc_loss(
        piece.repeat_interleave(k, 0).transpose(0, 1), phones.flatten(0, 1), times.flatten(), count.clamp(min=1).flatten(),
        reduction="none", zero_infinity=True,
    ).view(n, k)  # fmt: skip
    able &= said > 0
    scores = torch.cat([-said, none[:, None]], 1)
    able = torch.cat([able, torch.ones_like(able[:, :1])], 1)
    truth = torch.where(spans.silent, k, 0)
    loss, won = compared(scores, able, truth)
    counts, spoken = spans.silent | able[:, 0], ~spans.silent & able[:, 0]
    return (loss * counts).sum() / counts.sum().clamp(min=1), (won & spoken).sum() / spoken.sum().clamp(min=1)


def row_loss(out, scenes, phones, count, figures):
    """Figures in a row against the same without one of them, and with another in the place of one."""
    m = scenes.m["train"]
    figures = figures[(count[figures] > 0).sum(1) >= 2]
    if not len(figures):
        return out.sum() * 0
    n, k, device = len(figures), 1 + 2 * SLOTS, out.device
    p, c = (x[figures][:, None].repeat(1, k, *(1,) * (x.dim() - 1)) for x in (phones, count))
    slot = torch.arange(SLOTS, device=device)
    there = c[:, 0] > 0
    c[:, 1 + slot, slot] = 0
    other = m.figures[(scenes.rand(n, SLOTS) * len(m.figures)).long()]
    p[:, 1 + SLOTS + slot, slot] = m.phones[other]
    c[:, 1 + SLOTS + slot, slot] = m.count[other]
    differs = (m.phones[other] != phones[figures]).any(2)
    able = torch.cat([torch.ones(n, 1, dtype=torch.bool, device=device), there, there & differs], 1)
    targets, lengths = targets_of(p.flatten(0, 1), c.flatten(0, 1))
    times = torch.full((n * k,), out.shape[1], dtype=torch.long, device=device)
    said = F.ctc_loss(out[figures].repeat_interleave(k, 0).transpose(0, 1), targets, times, lengths, reduction="none", zero_infinity=True)
    truth = torch.zeros(n, dtype=torch.long, device=device)
    return compared(-said.view(n, k), able, truth)[0].mean()
