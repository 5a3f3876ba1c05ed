import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { concatenate } from '../../src/voice/concatenate.ts';
import { Endpointer, type SpeechEvent } from '../../src/voice/endpointing.ts';
import { noise } from '../helpers/noise.ts';

const frameMs = 20;
const samplesOf = (ms: number) => ms * 16;

/** Noise of one level, or of one that changes evenly from the first to the second. */
function hiss(ms: number, fromDbfs: number, toDbfs = fromDbfs): Float32Array {
  const next = noise(ms);
  const length = samplesOf(ms);
  return Float32Array.from({ length }, (_, i) => {
    const levelDbfs = fromDbfs + ((toDbfs - fromDbfs) * i) / length;
    return next() * 10 ** (levelDbfs / 20);
  });
}

const quiet = (ms: number) => hiss(ms, -60);
/** As loud as talk, and back at nothing with its last sample: a step down would be a click of its own. */
const voice = (ms: number) => hiss(ms, -20).fill(0, -1);

/** Talk with the short gaps that all talk has: a fifth of each half second. */
function talk(ms: number): Float32Array {
  const pieces: Float32Array[] = [];
  let left = ms;
  for (; left > 500; left -= 500) pieces.push(voice(400), quiet(100));
  return concatenate([...pieces, voice(left)]);
}

/** What an endpointer makes of a stream, each event with the end of the frame that brought it. */
function heardIn(...pieces: readonly Float32Array[]) {
  const endpointer = new Endpointer();
  const stream = concatenate(pieces);
  const events: { atMs: number; event: SpeechEvent }[] = [];
  for (let at = 0; at < stream.length; at += samplesOf(frameMs)) {
    const atMs = at / 16 + frameMs;
    for (const event of endpointer.next(stream.slice(at, at + samplesOf(frameMs)))) {
      events.push({ atMs, event });
    }
  }
  const beginningsMs = events.filter(({ event }) => event.kind === 'begin').map(({ atMs }) => atMs);
  const ends = events.flatMap(({ atMs, event }) =>
    event.kind === 'end' ? [{ atMs, cause: event.cause }] : [],
  );
  return { stream, events: events.map(({ event }) => event), beginningsMs, ends };
}

const soundOf = (events: readonly SpeechEvent[]) =>
  concatenate(events.flatMap(event => ('samples' in event ? [event.samples] : [])));

describe('speech in a stream', () => {
  it('begins once it has lasted three frames', () => {
    expect(heardIn(quiet(1000), voice(500)).beginningsMs).toEqual([1060]);
  });

  it('does not begin at a click or a dropped spanner of two frames', () => {
    expect(heardIn(quiet(1000), voice(40), quiet(1000)).events).toEqual([]);
    expect(heardIn(quiet(1000), voice(60), quiet(1000)).beginningsMs).toEqual([1060]);
  });

  it('is handed on from 300 ms before its first frame, without a gap or a repetition', () => {
    const { stream, events } = heardIn(quiet(1000), voice(500), quiet(1000));
    const [begin] = events;
    expect(begin?.kind === 'begin' && begin.samples.length).toBe(samplesOf(300 + 60));
    expect(soundOf(events)).toEqual(stream.slice(samplesOf(700), samplesOf(1500 + 260)));
  });

  it('is handed on from the very start where less than that came before', () => {
    const { stream, events } = heardIn(quiet(100), voice(500), quiet(1000));
    expect(soundOf(events)).toEqual(stream.slice(0, samplesOf(600 + 260)));
  });

  it('goes on over a pause of just under 260 ms, and ends with one of 260 ms', () => {
    const over = heardIn(quiet(1000), voice(500), quiet(240), voice(500), quiet(1000));
    expect(over.ends).toEqual([{ atMs: 2240 + 260, cause: 'silence' }]);
    const apart = heardIn(quiet(1000), voice(500), quiet(260), voice(500), quiet(1000));
    expect(apart.ends.map(({ atMs }) => atMs)).toEqual([1760, 2260 + 260]);
    expect(apart.beginningsMs).toHaveLength(2);
  });

  it('pauses once 120 ms are silent, each time, and always before it ends by silence', () => {
    const { events, ends } = heardIn(quiet(1000), voice(500), quiet(160), voice(500), quiet(1000));
    const kinds = events.map(({ kind }) => kind);
    expect(kinds.filter(kind => kind === 'pause')).toHaveLength(2);
    expect(kinds.slice(kinds.lastIndexOf('pause'))).toEqual(['pause', ...Array(7).fill('more'), 'end']);
    expect(ends).toHaveLength(1);
    expect(heardIn(quiet(1000), voice(500), quiet(100), voice(500)).events).not.toContainEqual({
      kind: 'pause',
    });
  });

  it('ends as too long at 8 seconds, and what follows begins anew', () => {
    const { ends, beginningsMs } = heardIn(quiet(1000), talk(9000), quiet(1000));
    expect(ends[0]).toEqual({ atMs: 1000 + 8000, cause: 'tooLong' });
    expect(ends[1]?.cause).toBe('silence');
    expect(beginningsMs).toHaveLength(2);
  });

  it('may last until its silence is complete at 8 seconds, and not a frame longer', () => {
    expect(heardIn(quiet(1000), talk(7740), quiet(1000)).ends[0]?.cause).toBe('silence');
    expect(heardIn(quiet(1000), talk(7760), quiet(1000)).ends[0]?.cause).toBe('tooLong');
  });

  it('is told from a noise that it is 12 dB above, and not from one that it is 9 dB above', () => {
    expect(heardIn(hiss(1000, -40), hiss(500, -26)).beginningsMs).toHaveLength(1);
    expect(heardIn(hiss(1000, -40), hiss(500, -31)).beginningsMs).toEqual([]);
  });

  it('never begins on a line so quiet that nothing on it can be a voice', () => {
    expect(heardIn(hiss(1000, -95), hiss(500, -70)).events).toEqual([]);
    expect(heardIn(new Float32Array(16_000), hiss(500, -70)).events).toEqual([]);
  });

  it('never begins in steady noise, however loud', () => {
    fc.assert(
      fc.property(fc.integer({ min: -95, max: -6 }), levelDbfs => {
        expect(heardIn(hiss(5000, levelDbfs)).events).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  it('never begins while noise swells slowly, as a warming fan does', () => {
    expect(heardIn(hiss(15_000, -60, -30)).events).toEqual([]);
  });

  it('seems to begin when an engine starts, but ends by itself and is heard above it afterwards', () => {
    const { beginningsMs, ends } = heardIn(quiet(1000), hiss(6000, -35), voice(500), hiss(1000, -35));
    expect(beginningsMs).toEqual([1060, 7060]);
    expect(ends.map(({ cause }) => cause)).toEqual(['silence', 'silence']);
    expect(ends[0]?.atMs).toBeLessThan(1000 + 3000 + 500);
  });

  it('gives the same events for the same stream in blocks of any size', () => {
    const { stream, events } = heardIn(quiet(600), voice(300), quiet(400), voice(500), quiet(400));
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 4000 }), { minLength: 1, maxLength: 20 }), lengths => {
        const endpointer = new Endpointer();
        const cut: SpeechEvent[] = [];
        let at = 0;
        for (const length of [...lengths, stream.length]) {
          cut.push(...endpointer.next(stream.slice(at, at + length)));
          at += length;
        }
        expect(cut).toEqual(events);
      }),
      { numRuns: 12 },
    );
  });

  it('says whether somebody is speaking', () => {
    const endpointer = new Endpointer();
    endpointer.next(quiet(1000));
    expect(endpointer.speaking).toBe(false);
    endpointer.next(voice(100));
    expect(endpointer.speaking).toBe(true);
    endpointer.next(quiet(300));
    expect(endpointer.speaking).toBe(false);
  });
});
