"""Kokoro-82M for many utterances at once, in plain PyTorch.

Written after the model of the package `kokoro` 0.9.4 (Apache-2.0; itself after StyleTTS 2, MIT), for speaking only:
weight norm folded in, nothing masked. A batch holds utterances of equally many symbols (first stage) or equally many
frames (second stage), so each comes out as it would alone."""

import math

import numpy as np
import torch
import torch.nn.functional as F

RATE = 24000
# Samples of 24 kHz that one frame of the durations stands for.
FRAME = 600


def load_weights(path, device):
    """The tensors that extract.py wrote: name -> float32 on the device."""
    stored = np.load(path)
    tensors = {}
    for name in stored.files:
        if name.endswith(("/step", "/zero")):
            continue
        values = torch.from_numpy(stored[name]).to(device).float()
        if name + "/step" in stored:
            step, zero = (
                torch.from_numpy(stored[name + part]).to(device).reshape([-1] + [1] * (values.dim() - 1)) for part in ("/step", "/zero")
            )
            values = (values - zero) * step
        tensors[name] = values
    return tensors


class Kokoro:
    def __init__(self, weights, device="cpu", half=None, noise=True):
        self.w, self.device, self.half, self.noise = weights, torch.device(device), half, noise
        self.lstms = {
            k: self._lstm(k)
            for k in ["text_encoder.lstm", "predictor.lstm", "predictor.shared"] + [f"predictor.text_encoder.lstms.{i}" for i in (0, 2, 4)]
        }
        n = torch.arange(20, dtype=torch.float64)
        self.hann = (0.5 - 0.5 * torch.cos(2 * math.pi * n / 20)).float().to(self.device)

    def _lstm(self, k):
        l = torch.nn.LSTM(self.w[k + ".weight_ih_l0"].shape[1], 256, batch_first=True, bidirectional=True)
        l.load_state_dict({n: self.w[f"{k}.{n}"] for n, _ in l.named_parameters()})
        l = l.to(self.device).eval().requires_grad_(False)
        l.flatten_parameters()
        return l

    def _lin(self, k, x):
        return F.linear(x, self.w[k + ".weight"], self.w.get(k + ".bias"))

    # ---- tokens -> durations, features of tokens
    def _bert(self, ids):
        w, B, T = self.w, *ids.shape
        e = "bert.embeddings."
        x = w[e + "word_embeddings.weight"][ids] + w[e + "token_type_embeddings.weight"][0] + w[e + "position_embeddings.weight"][:T]
        x = F.layer_norm(x, (128,), w[e + "LayerNorm.weight"], w[e + "LayerNorm.bias"], 1e-12)
        x = self._lin("bert.encoder.embedding_hidden_mapping_in", x)
        p = "bert.encoder.albert_layer_groups.0.albert_layers.0."
        head = lambda k: self._lin(p + "attention." + k, x).view(B, T, 12, 64).transpose(1, 2)
        for _ in range(12):
            a = F.scaled_dot_product_attention(head("query"), head("key"), head("value")).transpose(1, 2).reshape(B, T, 768)
            y = F.layer_norm(
                x + self._lin(p + "attention.dense", a),
                (768,),
                w[p + "attention.LayerNorm.weight"],
                w[p + "attention.LayerNorm.bias"],
                1e-12,
            )
            h = self._lin(p + "ffn_output", F.gelu(self._lin(p + "ffn", y), approximate="tanh"))
            x = F.layer_norm(h + y, (768,), w[p + "full_layer_layer_norm.weight"], w[p + "full_layer_layer_norm.bias"], 1e-12)
        return x

    def tokens(self, ids, style, speed):
        """ids (B, T) with a 0 at both ends, style (B, 256), speed (B): frames of each token, and features d, t of them."""
        w, s = self.w, style[:, 128:]
        d = self._lin("bert_encoder", self._bert(ids))
        side = s[:, None].expand(-1, ids.shape[1], -1)
        x = torch.cat([d, side], 2)
        for i in (0, 2, 4):
            k = "predictor.text_encoder.lstms."
            y, _ = self.lstms[f"{k}{i}"](x)
            gamma, beta = self._lin(f"{k}{i + 1}.fc", s)[:, None].chunk(2, 2)
            x = torch.cat([(1 + gamma) * F.layer_norm(y, (512,), eps=1e-5) + beta, side], 2)
        y, _ = self.lstms["predictor.lstm"](x)
        long = torch.sigmoid(self._lin("predictor.duration_proj.linear_layer", y)).sum(2) / speed[:, None]
        t = w["text_encoder.embedding.weight"][ids].transpose(1, 2)
        for i in range(3):
            k = f"text_encoder.cnn.{i}."
            t = F.conv1d(t, w[k + "0.weight"], w[k + "0.bias"], padding=2).transpose(1, 2)
            t = F.leaky_relu(F.layer_norm(t, (512,), w[k + "1.gamma"], w[k + "1.beta"], 1e-5), 0.2).transpose(1, 2)
        t, _ = self.lstms["text_encoder.lstm"](t.transpose(1, 2))
        return long.round().clamp(min=1).long(), x, t

    # ---- frames -> sound
    def _norm(self, k, x, s):
        h = F.linear(s, self.w[k + ".fc.weight"], self.w[k + ".fc.bias"])[:, :, None]
        gamma, beta = h.chunk(2, 1)
        var, mean = torch.var_mean(x.float(), 2, correction=0, keepdim=True)
        a = (1 + gamma) * torch.rsqrt(var + 1e-5)
        return torch.addcmul((beta - mean * a).to(x.dtype), x, a.to(x.dtype))

    def _conv(self, k, x, dilation=1):
        w = self.w[k + ".weight"]
        return F.conv1d(
            x,
            w.to(x.dtype),
            None if (b := self.w.get(k + ".bias")) is None else b.to(x.dtype),
            padding=(w.shape[2] - 1) // 2 * dilation,
            dilation=dilation,
        )

    def _block(self, k, x, s, up=False):
        w = self.w
        y = F.leaky_relu(self._norm(k + ".norm1", x, s), 0.2)
        if up:
            y = F.conv_transpose1d(y, w[k + ".pool.weight"], w[k + ".pool.bias"], stride=2, padding=1, output_padding=1, groups=y.shape[1])
            x = x.repeat_interleave(2, 2)
        y = self._conv(k + ".conv1", y)
        y = self._conv(k + ".conv2", F.leaky_relu(self._norm(k + ".norm2", y, s), 0.2))
        if k + ".conv1x1.weight" in w:
            x = self._conv(k + ".conv1x1", x)
        return (y + x) * (1 / math.sqrt(2))

    def melody(self, en, style):
        """Pitch in Hz and energy, two a frame. en (B, frames, 640)."""
        s = style[:, 128:]
        x, _ = self.lstms["predictor.shared"](en)
        out = []
        for k in ("F0", "N"):
            y = x.transpose(1, 2)
            for i in range(3):
                y = self._block(f"predictor.{k}.{i}", y, s, up=i == 1)
            out.append(self._conv(f"predictor.{k}_proj", y)[:, 0])
        return out

    def _source(self, f0, gen):
        h = torch.arange(1, 10, device=f0.device, dtype=torch.float64)
        rad = (f0.double()[:, None] * h[:, None] / RATE) % 1
        phase = torch.cumsum(rad, 2) * 300
        up = F.interpolate(phase, scale_factor=300, mode="linear")  # in turns
        sine = torch.sin((up % 1).float() * (2 * math.pi)) * 0.1
        voiced = (f0 > 10).float().repeat_interleave(300, 1)[:, None]
        x = sine * voiced
        if self.noise:
            x = x + torch.randn(x.shape, device=x.device, generator=gen) * (voiced * 0.003 + (1 - voiced) * (0.1 / 3))
        k = "decoder.generator.m_source.l_linear"
        x = torch.tanh((x * self.w[k + ".weight"].reshape(1, 9, 1)).sum(1) + self.w[k + ".bias"])
        spec = torch.stft(x, 20, 5, 20, self.hann, return_complex=True)
        return torch.cat([spec.abs(), spec.angle()], 1)

    def _res(self, k, x, s):
        w = self.w
        for i, d in enumerate((1, 3, 5)):
            y = x
            for j, dd in ((1, d), (2, 1)):
                y = self._norm(f"{k}.adain{j}.{i}", y, s)
                a = w[f"{k}.alpha{j}.{i}"].to(y.dtype)
                y = torch.addcmul(y, (1 / a).expand_as(y), torch.sin(a * y).square_())
                y = self._conv(f"{k}.convs{j}.{i}", y, dd)
            x = x + y
        return x

    def sound(self, asr, f0, energy, style, gen=None):
        """Waveforms (B, samples) at 24 kHz. asr (B, frames, 512)."""
        w, s = self.w, style[:, :128]
        asr = asr.transpose(1, 2)
        F0 = F.conv1d(f0[:, None], w["decoder.F0_conv.weight"], w["decoder.F0_conv.bias"], stride=2, padding=1)
        N = F.conv1d(energy[:, None], w["decoder.N_conv.weight"], w["decoder.N_conv.bias"], stride=2, padding=1)
        x = self._block("decoder.encode", torch.cat([asr, F0, N], 1), s)
        r = self._conv("decoder.asr_res.0", asr)
        for i in range(4):
            x = self._block(f"decoder.decode.{i}", torch.cat([x, r, F0, N], 1), s, up=i == 3)
        har = self._source(f0, gen)
        g = "decoder.generator."
        if self.half:
            x, har = x.to(self.half), har.to(self.half)
        for i, (stride, pad) in enumerate(((10, 5), (6, 3))):
            x = F.leaky_relu(x, 0.1)
            n = g + f"noise_convs.{i}"
            src = F.conv1d(
                har, w[n + ".weight"].to(har.dtype), w[n + ".bias"].to(har.dtype), stride=6 if i == 0 else 1, padding=3 if i == 0 else 0
            )
            src = self._res(g + f"noise_res.{i}", src, s)
            u = g + f"ups.{i}"
            x = F.conv_transpose1d(x, w[u + ".weight"].to(x.dtype), w[u + ".bias"].to(x.dtype), stride=stride, padding=pad)
            if i == 1:
                x = F.pad(x, (1, 0), mode="reflect")
            x = x + src
            x = sum(self._res(g + f"resblocks.{i * 3 + j}", x, s) for j in range(3)) / 3
        x = self._conv(g + "conv_post", F.leaky_relu(x, 0.01)).float()
        mag, phase = torch.exp(x[:, :11]), torch.sin(x[:, 11:])
        return torch.istft(torch.polar(mag, phase), 20, 5, 20, self.hann)
