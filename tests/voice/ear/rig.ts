import { concatenate } from '../../../src/voice/concatenate.ts';
import type { Decoder, Outlook, Verdict } from '../../../src/voice/ear/decoder.ts';
import { createEar } from '../../../src/voice/ear/ear.ts';
import type { HearingNetwork } from '../../../src/voice/ear/moment.ts';
import { createNearSpeech } from '../../../src/voice/ear/near-speech.ts';
import type { SpeechDetector } from '../../../src/voice/ear/speech-detector.ts';
import type { StopSpotter } from '../../../src/voice/ear/stop-spotter.ts';
import { createPlainFrontEnd } from '../../../src/voice/front-end.ts';
import { outputOf } from '../../../src/voice/phone-network/phones.ts';
import type { Grammar, Heard } from '../../../src/voice/ports.ts';
import { certain } from '../phone-network/sounds.ts';

export const grammar: Grammar = {
  key: 'first',
  stop: ['stop'],
  replies: [{ id: 'yes', wordings: ['correct'] }],
};

export const yes: Verdict = { kind: 'taken', text: 'correct', certainty: 0.9 };

/** What a decoder was given in an utterance. */
export interface Given {
  readonly key: string;
  readonly sound: Float32Array[];
  readonly silentMs: number[];
}

/** A decoder that notes what it is given and answers as it is told. */
export function scriptedDecoder(
  script: {
    readonly verdict?: (nth: number) => Verdict;
    readonly outlook?: () => Outlook;
    readonly settled?: () => boolean;
    readonly over?: (nth: number) => boolean;
    readonly stop?: () => string | undefined;
    /** How long each of its answers takes. */
    readonly wait?: () => Promise<unknown>;
  } = {},
) {
  const given: Given[] = [];
  const decoder: Decoder<Grammar> = {
    prepare: next => next,
    begin: ({ key }) => given.push({ key, sound: [], silentMs: [] }),
    async hear({ heard }, silentMs) {
      await script.wait?.();
      given.at(-1)?.sound.push(heard);
      given.at(-1)?.silentMs.push(silentMs);
      const settled = script.settled?.();
      const over = script.over?.(given.length);
      return {
        outlook: script.outlook?.() ?? 'extensible',
        stop: script.stop?.(),
        ...(settled === undefined ? {} : { settled }),
        ...(over === undefined ? {} : { over }),
      };
    },
    async end() {
      await script.wait?.();
      return script.verdict?.(given.length) ?? yes;
    },
    close: () => {},
  };
  return { decoder, given };
}

/** What a stream is made of, 30 ms at a time: the sample value tells the network beside it what it hears there. */
const codes = { quiet: 0, near: 0.3, doubt: 0.4, stop: 0.5, hum: 0.6, call: 0.7, hurt: 0.8 } as const;
export type Part = keyof typeof codes;

const momentSamples = 480;

/** A stretch of the stream, of whole moments. */
export const part = (kind: Part, ms: number): Float32Array => new Float32Array(ms * 16).fill(codes[kind]);

const nearness: Readonly<Record<Part, number>> = {
  quiet: 0.05,
  near: 0.95,
  doubt: 0.42,
  stop: 0.05,
  hum: 0.6,
  call: 0.05,
  hurt: 0.05,
};

/** What is heard in them; in a hum, a noise as of somebody near, there are no phones. */
const phoneIn: Readonly<Partial<Record<Part, string>>> = {
  near: 'N',
  doubt: 'N',
  stop: 'AA',
  call: 'F',
  hurt: 'HH',
};

function partOf(samples: Float32Array): Part {
  const value = samples[0] ?? 0;
  const found = (Object.keys(codes) as Part[]).find(kind => Math.abs(codes[kind] - value) < 0.01);
  return found ?? 'quiet';
}

/** A network that says of each 30 ms what was put into them: how near, and which phone; a stop is an AA. */
function scriptedNetwork(): HearingNetwork {
  let pending: Float32Array = new Float32Array();
  return {
    momentMs: 30,
    phonesLateMoments: 4,
    next(samples) {
      pending = concatenate([pending, samples]);
      const moments = [];
      while (pending.length >= momentSamples) {
        const kind = partOf(pending);
        pending = pending.slice(momentSamples);
        const phones = certain(phoneIn[kind]);
        moments.push({ phones, early: phones, near: nearness[kind] });
      }
      return moments;
    },
  };
}

/** Hears a stop in each moment that has an AA, whatever else there is. */
const scriptedSpotter = (): StopSpotter => ({
  listen: () => {},
  next: ({ early }) => (early[1] === 0 ? 'stop' : undefined),
});

const callIn = { F: 'fire', HH: 'someone is hurt' } as const;

/** The same of calls for help: fire is an F, and somebody who is hurt an HH. */
const scriptedCalls = (): StopSpotter => ({
  listen: () => {},
  next: ({ early }) => Object.entries(callIn).find(([phone]) => early[outputOf(phone) ?? 0] === 0)?.[1],
});

/** An ear of real parts but for network and decoder, which answer by script. */
export function rig(
  decoder: Decoder<Grammar>,
  {
    speech = createNearSpeech(),
    trailingSilenceMs,
  }: { speech?: SpeechDetector; trailingSilenceMs?: number } = {},
) {
  const ear = createEar({
    frontEnd: createPlainFrontEnd(),
    decoder,
    speech,
    stops: { network: scriptedNetwork(), spotter: scriptedSpotter(), calls: scriptedCalls() },
    trailingSilenceMs,
  });
  const reports: { readonly heard: Heard; readonly atMs: number }[] = [];
  let heardMs = 0;
  ear.onHeard(heard => reports.push({ heard, atMs: heardMs }));
  ear.listen(grammar);
  return {
    ear,
    reports,
    heard: () => reports.map(({ heard }) => heard),
    /** Plays the sound to it in blocks of 20 ms, as a microphone would. */
    async play(...pieces: readonly Float32Array[]) {
      const stream = concatenate(pieces);
      for (let at = 0; at < stream.length; at += 320) {
        heardMs += 20;
        await ear.hear({ samples: stream.slice(at, at + 320), sampleRateHz: 16_000 });
      }
    },
  };
}
