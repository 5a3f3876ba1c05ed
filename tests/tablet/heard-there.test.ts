import { beforeEach, describe, expect, it } from 'vitest';
import type { EngineHeard } from '../../src/engineering/engine-sound/ear.ts';
import { type ClientMessage, type Deed, parseClientMessage } from '../../src/server/protocol/index.ts';
import { HeardThere } from '../../src/tablet/remote/heard-there.ts';
import type { Heard, VoiceHeard } from '../../src/voice/ports.ts';
import { voiceLength } from '../../src/voice/who-speaks/voice-network.ts';

const voice = Float32Array.from({ length: voiceLength }, (_, i) => Math.sin(i) / 7);
const yes: Heard = { kind: 'reply', id: 'yes', text: 'yes', confidence: 0.9 };
const look: EngineHeard = {
  toldS: 2,
  atS: 1.68,
  claim: { rpm: 750.25, confidence: 0.97 },
  happened: 'running',
  hunting: null,
  levelsDb: [-40, -41, -42, -43, -44],
};

let nowMs: number;
let deeds: Deed[];
let told: ClientMessage[];
let state: { turn: string; session: string | null; firing: { cylinders: number; strokes: 4 } | null };
let hear: (heard: Heard) => void;
let hearVoice: (heard: VoiceHeard) => void;
let there: HeardThere;

beforeEach(() => {
  [nowMs, deeds, told] = [0, [], []];
  state = { turn: 's/1', session: 's', firing: { cylinders: 4, strokes: 4 } };
  there = new HeardThere(
    () => ({ state, command: deed => deeds.push(deed), tell: message => told.push(message) }),
    () => nowMs,
  );
  there.attach({
    listen() {},
    onlyStop() {},
    onHeard: handler => {
      hear = handler;
    },
    onVoice: handler => {
      hearVoice = handler;
    },
    onLevel() {},
    close() {},
  });
});

const parses = (message: unknown) => parseClientMessage(JSON.stringify(message)).ok;

describe('What a joined device hears', () => {
  it('is told as a stop, and what it calls for', () => {
    hear({ kind: 'stop', text: 'stop' });
    hear({ kind: 'stop', text: 'fire', calls: 'smokeOrFire' });
    expect(deeds).toEqual([
      { do: 'stop', via: 'voice' },
      { do: 'stop', via: 'voice', cause: 'smokeOrFire' },
    ]);
  });

  it('goes with the voice that it was said in, once, and only where it came right before', () => {
    hearVoice({ voice, stopped: false });
    hear(yes);
    hear(yes);
    hearVoice({ voice, stopped: false });
    nowMs = 301;
    hear(yes);
    expect(deeds.map(deed => deed.do === 'heard' && deed.voice?.length)).toEqual([
      voiceLength,
      undefined,
      undefined,
    ]);
    const id = '6f0e4d4c-54ab-4c61-8f5a-1d2a0f3c9b11';
    for (const deed of deeds) expect(parses({ type: 'command', id, deed })).toBe(true);
  });

  it('is a stop at once, and its voice behind it', () => {
    hear({ kind: 'stop', text: 'stop' });
    expect(deeds).toEqual([{ do: 'stop', via: 'voice' }]);
    hearVoice({ voice, stopped: true });
    expect(told).toHaveLength(1);
    expect(parses(told[0])).toBe(true);
    hear(yes);
    expect(deeds.at(-1)).not.toHaveProperty('voice');
  });

  it('is nothing while nothing is asked, but a stop', () => {
    state = { ...state, turn: '' };
    hear(yes);
    expect(deeds).toEqual([]);
    hear({ kind: 'stop', text: 'stop' });
    expect(deeds).toHaveLength(1);
  });
});

describe('The engine that a joined device listens for', () => {
  let searches: number[];
  let take: (heard: EngineHeard) => void;
  beforeEach(() => {
    searches = [];
    there.hearsEngines((firing, handler) => {
      searches.push(firing.cylinders);
      take = handler;
    });
  });

  it('is that of the session, and is told to the bay as it is heard', () => {
    there.look();
    expect(searches).toEqual([4]);
    take(look);
    expect(told).toEqual([{ type: 'engine', session: 's', heard: look }]);
    expect(parses(told[0])).toBe(true);
  });

  it('is another one with the next session; what was heard of the one before goes nowhere', () => {
    const before = take;
    state = { ...state, session: 't', firing: { cylinders: 6, strokes: 4 } };
    there.look();
    expect(searches).toEqual([4, 6]);
    before(look);
    expect(told).toEqual([]);
    take(look);
    expect(told).toHaveLength(1);
  });

  it('is told to nobody once its session is over', () => {
    state = { ...state, firing: null };
    take(look);
    expect(told).toEqual([]);
  });
});
