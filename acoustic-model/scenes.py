"""Scenes: somebody near says something now and then, in a room, through a microphone, beside noise and other people's talk.

Everything is drawn and mixed on the device, a batch at a time."""

import math

import torch

from network import HOP, RATE, STRIDE
from sounds import beeps, music

SLOTS = 6


class Said:
    """What of a scene is near: clips [rows, slots], whether each is in it, from and to which sample, and in which rows figures follow."""

    def __init__(self, pick, fits, begin, end, figures):
        self.pick, self.fits, self.begin, self.end, self.figures = pick, fits, begin, end, figures


class Scenes:
    def __init__(self, audio, material, device, seed):
        self.audio, self.m, self.device = audio, material, device
        self.rng = torch.Generator(device=device)
        self.rng.manual_seed(seed)

    def rand(self, *shape, lo=0.0, hi=1.0):
        return lo + (hi - lo) * torch.rand(*shape, device=self.device, generator=self.rng)

    def chance(self, n, p):
        return (self.rand(n) < p).float()

    def normal(self, *shape):
        return torch.randn(*shape, device=self.device, generator=self.rng)

    def draw(self, material, n):
        # torch.multinomial takes no more than 2^24 of them
        return torch.multinomial(material.draw, n, True, generator=self.rng)

    def sequence(self, material, pick, gaps, begin, factor, gain, samples, cut=None, fade=None):
        """Clips one after the other, [rows, slots]; those that do not fit whole are left out. Sound, and where each lies.

        cut: samples left out at the beginning and at the end of each; fade: over how many samples each dies away, and by how many dB."""
        first, lengths = material.at[pick], material.length[pick]
        if cut is not None:
            first, lengths = first + cut[0], lengths - cut[0] - cut[1]
        lasts = (lengths / factor).long()
        ends = begin[:, None] + (lasts + gaps).cumsum(1)
        starts = ends - lasts
        fits = ends < samples - RATE // 5
        place = torch.where(fits, starts, torch.full_like(starts, samples))
        t = torch.arange(samples, device=self.device)
        slot = torch.searchsorted(place, t.expand(len(pick), -1).contiguous(), right=True) - 1
        inside = slot >= 0
        slot = slot.clamp(min=0)
        at = lambda x: torch.gather(x, 1, slot)
        source = (t[None] - at(place)) * at(factor)
        length = at(lengths)
        inside &= (source >= 0) & (source < length - 1) & (at(place) < samples)
        whole = source.clamp(min=0).floor()
        index = torch.minimum(whole.long(), (length - 2).clamp(min=0)) + at(first)
        part = source.clamp(min=0) - whole
        x = self.audio[index].float() * (1 - part) + self.audio[index + 1].float() * part
        x = x / 32768 * at(gain / material.rms[pick].clamp(min=1e-4))
        if fade is not None:
            x = x * 10 ** (-at(fade[1]) / 20 * (1 - (length - source) / at(fade[0])).clamp(min=0, max=1))
        return torch.where(inside, x, torch.zeros_like(x)), fits, place, lasts

    def near(self, rows, samples):
        """Somebody near, or one after the other several; now and then "stop" right behind what is said, or figures in a row.

        Sound, phones and their count, what was said, and where each lies."""
        m = self.m["train"]
        first = self.draw(m, rows)
        pick = self.draw(m, rows * SLOTS).view(rows, SLOTS)
        # In half of the scenes one person says everything.
        same = m.first[first][:, None] + (self.rand(rows, SLOTS) * m.size[first][:, None]).long()
        pick = torch.where(self.chance(rows, 0.5)[:, None] > 0, same, pick)
        pick[:, 0] = first
        # In some somebody says "stop" into talk, without a pause. In others a row of figures, which were recorded one at a time.
        order = torch.randperm(rows, device=self.device, generator=self.rng)
        into, figures = order[: int(rows * 0.12) if len(m.stops) else 0], order[int(rows * 0.12) :][: int(rows * 0.08)]
        figures = figures if len(m.figures) else figures[:0]
        pick[into, 1] = m.stops[(self.rand(len(into)) * max(1, len(m.stops))).long()] if len(into) else pick[into, 1]
        if len(figures):
            whose = torch.multinomial(m.figure_draw, len(figures), True, generator=self.rng)
            first, size = m.figure_first[whose][:, None], m.figure_size[whose][:, None]
            pick[figures] = m.figures[first + (self.rand(len(figures), SLOTS) * size).long()]
        factor = self.rand(rows, 1, lo=0.9, hi=1.12) * self.rand(rows, SLOTS, lo=0.95, hi=1.05)
        short = self.chance(rows, 0.35)[:, None]
        gaps = (self.rand(rows, SLOTS) ** 2 * torch.where(short > 0, 0.5, 2.5) + 0.05) * RATE
        gaps[into, 1:3] = self.rand(len(into), 2, hi=0.06) * RATE
        gaps[figures] = self.rand(len(figures), SLOTS) ** 2 * self.rand(len(figures), 1, lo=0.02, hi=0.7) * RATE
        begin = torch.where(self.chance(rows, 0.25) > 0, self.rand(rows, lo=0.5, hi=5.0), self.rand(rows, lo=0.1, hi=0.8)) * RATE
        gain = 10 ** (self.rand(rows, SLOTS, lo=-3, hi=3) / 20)
        # Mixed voices have quiet around them: some are cut hard. Who runs out of breath is fainter at the end.
        hard = m.quiet_around[pick] * (self.rand(rows, SLOTS) < 0.4)
        cut = tuple((hard * self.rand(rows, SLOTS, hi=seconds) * RATE).long() for seconds in (0.05, 0.11))
        cut[1][into, 0], cut[0][into, 2] = m.tail[pick[into, 0]], m.lead[pick[into, 2]]
        cut[0][into, 1], cut[1][into, 1] = m.lead[pick[into, 1]], m.tail[pick[into, 1]]
        fade = self.rand(rows, SLOTS, lo=0.08, hi=0.25) * RATE, self.rand(rows, SLOTS, lo=3, hi=18) * (self.rand(rows, SLOTS) < 0.3)
        for edge, quiet in enumerate((m.lead, m.tail)):
            cut[edge][figures] = (quiet[pick[figures]] * self.rand(len(figures), SLOTS, lo=0.4)).long()
        x, fits, place, lasts = self.sequence(m, pick, gaps.long(), begin.long(), factor, gain, samples, cut, fade)
        silent = self.chance(rows, 0.06)
        x = x * (1 - silent)[:, None]
        fits = fits & (silent[:, None] == 0)
        count = m.count[pick] * fits
        return x, m.phones[pick], count, Said(pick, fits, place, place + lasts, figures)

    def far(self, rows, samples):
        """Talk of others, always some sound: one to eight voices, from another place or out of a radio."""
        m = self.m["talk"]
        voices = 4
        pick = self.draw(m, rows * SLOTS).view(rows, SLOTS)
        factor = self.rand(rows, SLOTS, lo=0.85, hi=1.15)
        gaps = self.rand(rows, SLOTS) ** 2 * 0.8 * RATE
        gain = 10 ** (self.rand(rows, SLOTS, lo=-4, hi=4) / 20)
        # Long clips are cut by the end of the scene: what is far need not be whole.
        x, *_ = self.sequence(
            m, pick, gaps.long(), torch.zeros(rows, device=self.device, dtype=torch.long), factor, gain, samples + 4 * RATE
        )
        x = x[:, :samples]
        more = torch.zeros_like(x)
        for _ in range(voices - 1):
            other = x[torch.randperm(rows, device=self.device, generator=self.rng)]
            more = more + other.roll(int(self.rand(1).item() * samples), 1) * self.rand(rows, 1, lo=0.3, hi=1.0)
        x = x + more * self.chance(rows, 0.5)[:, None]
        room = self.room(x, self.rand(rows, lo=0.15, hi=0.8), self.rand(rows, lo=0.05, hi=0.35))
        radio = self.band(
            torch.tanh(x * self.rand(rows, 1, lo=0.5, hi=12.0)), self.rand(rows, lo=200, hi=500), self.rand(rows, lo=2500, hi=5000)
        )
        radio = self.room(radio, self.rand(rows, lo=0.08, hi=0.4), self.rand(rows, lo=0, hi=0.15))
        return self.levelled(torch.where(self.chance(rows, 0.4)[:, None] > 0, radio, room))

    def babble(self, rows, samples):
        """Four to eight talk at once, about as loud as each other, all over the place: none of them is near."""
        m = self.m["talk"]
        sum_ = torch.zeros(rows, samples, device=self.device)
        begin = torch.zeros(rows, device=self.device, dtype=torch.long)
        for voice in range(8):
            pick = self.draw(m, rows * SLOTS).view(rows, SLOTS)
            factor = self.rand(rows, SLOTS, lo=0.85, hi=1.15)
            gaps = self.rand(rows, SLOTS) ** 2 * 0.5 * RATE
            gain = 10 ** (self.rand(rows, 1, lo=-3, hi=3) / 20).expand(-1, SLOTS)
            x, *_ = self.sequence(m, pick, gaps.long(), begin, factor, gain, samples + 4 * RATE)
            # From anywhere within it: not all begin with the scene.
            x = x.roll(int(self.rand(1).item() * samples), 1)[:, :samples]
            sum_ += x if voice < 4 else x * self.chance(rows, 0.5)[:, None]
        return self.levelled(self.room(sum_, self.rand(rows, lo=0.1, hi=0.8), self.rand(rows, lo=0.0, hi=0.3)))

    def levelled(self, x):
        return x / x.square().mean(1, keepdim=True).add(1e-9).sqrt()

    def convolved(self, x, h):
        n = 1 << (x.shape[1] + h.shape[1] - 1).bit_length()
        return torch.fft.irfft(torch.fft.rfft(x, n) * torch.fft.rfft(h, n), n)[:, : x.shape[1]]

    def room(self, x, seconds, amount):
        n = int(0.5 * RATE)
        t = torch.arange(n, device=self.device)[None] / RATE
        h = self.normal(len(x), n) * torch.exp(-6.9 * t / seconds[:, None]) * amount[:, None]
        h[:, 0] = 1.0
        return self.convolved(x, h)

    def band(self, x, low, high):
        spectrum = torch.fft.rfft(x)
        hz = torch.linspace(0, RATE / 2, spectrum.shape[1], device=self.device)[None]
        keep = 1 / (1 + (low[:, None] / hz.clamp(min=1)) ** 6) / (1 + (hz / high[:, None]) ** 8)
        return torch.fft.irfft(spectrum * keep, x.shape[1])

    def machine(self, rows, samples):
        """Noise of any colour, beating, pulsing or in bursts."""
        spectrum = torch.fft.rfft(self.normal(rows, samples))
        octaves = torch.log2(torch.linspace(20, RATE / 2, spectrum.shape[1], device=self.device) / 20)
        points = self.rand(rows, 10, lo=-36, hi=6)
        at = (octaves / octaves[-1] * 8.999).clamp(max=8.99)
        low = at.long()
        colour = points[:, low] * (1 - (at - low)) + points[:, low + 1] * (at - low)
        colour = colour - self.rand(rows, 1, lo=0, hi=6) * octaves[None]
        x = self.levelled(torch.fft.irfft(spectrum * 10 ** (colour / 20), samples))
        t = torch.arange(samples, device=self.device)[None] / RATE
        wander = 1 + 0.1 * torch.sin(2 * math.pi * self.rand(rows, 1, lo=0.03, hi=0.4) * t)
        hz = 10 ** self.rand(rows, 1, lo=0.7, hi=2.2)
        beat = (0.5 + 0.5 * torch.cos(2 * math.pi * hz * t * wander)) ** (10 ** self.rand(rows, 1, lo=0, hi=1.2))
        depth = self.rand(rows, 1) * self.chance(rows, 0.6)[:, None]
        x = x * (1 - depth + depth * 2 * beat)
        f0 = self.rand(rows, 1, lo=15, hi=120) * wander
        for k in (1, 2, 3, 4, 6, 8, 12):
            x = x + torch.sin(2 * math.pi * f0 * k * t + self.rand(rows, 1, hi=6.28)) * self.rand(rows, 1, hi=0.6) * (
                self.rand(rows, 1) < 0.3
            )
        steps = int(samples / RATE * 3)
        gate = (self.rand(rows, steps) < 0.6).float().repeat_interleave(-(-samples // steps), 1)[:, :samples]
        burst = self.chance(rows, 0.2)[:, None]
        return self.levelled(x * (1 - burst * (1 - gate) * 0.95))

    def recorded(self, rows, samples):
        m = self.m["noise"]
        pick = self.draw(m, rows)
        factor = self.rand(rows, lo=0.75, hi=1.3)
        offset = self.rand(rows) * m.length[pick]
        t = (torch.arange(samples, device=self.device)[None] * factor[:, None] + offset[:, None]).long() % m.length[pick][:, None]
        x = self.audio[t + m.at[pick][:, None]].float() / 32768
        return self.levelled(x)

    def some(self, rows, share):
        """Some of the rows, by chance."""
        return torch.randperm(rows, device=self.device, generator=self.rng)[: int(rows * share)]

    def batch(self, rows, seconds, snr=(-6.0, 30.0), clean=0.15):
        """Sound, phones padded, their count, and for each moment whether somebody near speaks (1) or does not (0): loudly, and at all."""
        samples = int(seconds * RATE)
        x, phones, count, said = self.near(rows, samples)
        # In every tenth scene many talk at once; of these in every other nobody near says anything.
        babbled = self.some(rows, 0.1)
        alone = babbled[: len(babbled) // 2]
        x[alone], count[alone] = 0, 0
        # Or there is a radio, music, or something that beeps, and nobody near.
        played, signalled = self.some(rows, 0.08), self.some(rows, 0.14)
        x[played], count[played] = 0, 0
        only = signalled[: len(signalled) // 3]
        x[only], count[only] = 0, 0
        said.fits &= count > 0
        active = self.active(x, 1e-3), self.active(x, 1.5e-4)
        x = self.room(x, self.rand(rows, lo=0.06, hi=0.5), self.rand(rows, lo=0, hi=0.12) * self.chance(rows, 0.6))
        half = rows // 2
        noise = torch.cat([self.recorded(half, samples), self.machine(rows - half, samples)])
        some = self.some(rows, 0.3)
        noise[some] = self.levelled(noise[some] + self.recorded(len(some), samples) * self.rand(len(some), 1, lo=0.1, hi=1))
        snr_db = self.rand(rows, lo=snr[0], hi=snr[1])
        none = self.chance(rows, clean)
        none[only], none[played] = self.chance(len(only), 0.6), self.chance(len(played), 0.6)
        x = x + noise * (10 ** (-snr_db / 20) * (1 - none))[:, None]
        # The mean level of near speech is 1: talk further away lies under it.
        some = self.some(rows, 0.35)
        talk_db = self.rand(len(some), 1, lo=-3.0, hi=26.0)
        x[some] = x[some] + self.far(len(some), samples) * 10 ** (-talk_db / 20)
        if len(babbled):
            talk_db = self.rand(len(babbled), 1, lo=-3.0, hi=22.0)
            x[babbled] = x[babbled] + self.babble(len(babbled), samples) * 10 ** (-talk_db / 20)
        if len(played):
            talk = self.far(len(played), samples)
            tune = self.levelled(music(self.rand, self.normal, len(played), samples))
            share = self.rand(len(played), 1) * (self.rand(len(played), 1) < 0.6)
            x[played] = x[played] + (talk * (1 - share) + tune * share) * 10 ** (self.rand(len(played), 1, lo=-20, hi=3) / 20)
        if len(signalled):
            # As loud as somebody near, and into what is said.
            level = 10 ** (self.rand(len(signalled), 1, lo=-22, hi=5) / 20)
            x[signalled] = x[signalled] + beeps(self.rand, len(signalled), samples) * level
        x = self.microphone(x)
        return x, phones, count, active, said

    def active(self, x, least):
        """Whether somebody speaks, by the least power, in each moment of 30 ms; pauses up to 0.15 s belong to speech."""
        size = HOP * STRIDE
        power = x[:, : x.shape[1] // size * size].view(len(x), -1, size).square().mean(2)
        on = (power > least).float()
        closed = 1 - torch.nn.functional.max_pool1d(1 - torch.nn.functional.max_pool1d(on[:, None], 5, 1, 2), 5, 1, 2)
        return closed[:, 0]

    def microphone(self, x):
        rows = len(x)
        tilt = self.rand(rows, 1, lo=-0.4, hi=0.9) * self.chance(rows, 0.5)[:, None]
        x = torch.cat([x[:, :1], x[:, 1:] - tilt * x[:, :-1]], 1)
        narrow = self.chance(rows, 0.2)
        x = torch.where(narrow[:, None] > 0, self.band(x, self.rand(rows, lo=20, hi=350), self.rand(rows, lo=3000, hi=7600)), x)
        limit = torch.where(self.rand(rows) < 0.1, self.rand(rows, lo=0.2, hi=0.8), torch.full((rows,), 10.0, device=self.device))
        limit = limit[:, None] * x.abs().amax(1, keepdim=True)
        x = torch.maximum(torch.minimum(x, limit), -limit)
        # The level is that of the near speech, or of what there is instead.
        x = x * 10 ** (self.rand(rows, 1, lo=-50, hi=-14) / 20)
        # Some have no hiss at all: digital silence.
        x = x + self.normal(*x.shape) * 10 ** (self.rand(rows, 1, lo=-100, hi=-66) / 20) * (self.rand(rows, 1) > 0.15)
        return x.clamp(-1, 1)

    def held(self, pick, seconds, snr):
        """Clips of the dev split, each alone in a scene."""
        m = self.m["dev"]
        samples, rows = int(seconds * RATE), len(pick)
        one = torch.ones(rows, 1, device=self.device)
        begin = torch.full((rows,), int(0.6 * RATE), device=self.device)
        x, fits, *_ = self.sequence(m, pick[:, None], torch.zeros(rows, 1, device=self.device, dtype=torch.long), begin, one, one, samples)
        noise = self.machine(rows, samples)
        if snr is not None:
            x = x + noise * 10 ** (-snr / 20)
        x = x * 10 ** (-26 / 20) + self.normal(*x.shape) * 10 ** (-85 / 20)
        return x, m.phones[pick][:, None], (m.count[pick] * fits[:, 0])[:, None], None
