import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choices } from '../../../src/terminal/face/parts/choices.ts';
import { hearing, meter } from '../../../src/terminal/face/parts/hearing.ts';
import { bar, holdBar } from '../../../src/terminal/face/parts/hold-bar.ts';
import { hintLine, inputLine } from '../../../src/terminal/face/parts/input-line.ts';
import { logTail } from '../../../src/terminal/face/parts/log-tail.ts';
import { readings } from '../../../src/terminal/face/parts/readings.ts';
import { faceWords } from '../../../src/terminal/face/words/index.ts';
import { filling, held, reading } from './views.ts';

const texts = (lines: readonly { readonly text: string }[]) => lines.map(({ text }) => text);

describe('the hold bar', () => {
  it('is empty for a time that is not known', () => {
    expect(bar({ totalMs: Number.NaN, leftMs: 10 }, 6)).toBe('[░░░░]');
    expect(bar({ totalMs: 0, leftMs: 0 }, 6)).toBe('[░░░░]');
  });

  it('is full only when the time is up', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e7 }), fc.integer({ min: 1, max: 1e7 }), (totalMs, leftMs) => {
        expect(bar({ totalMs, leftMs }, 40)).toContain('░');
        expect(bar({ totalMs, leftMs: 0 }, 40)).not.toContain('░');
      }),
    );
    expect(bar({ totalMs: 100, leftMs: 50 }, 10)).toBe('[████░░░░]');
  });

  it('says in words that it is on hold, with large letters and without', () => {
    expect(held.timer && texts(holdBar(held.timer, 60, 1, faceWords.en))[0]).toMatch(
      /^ON HOLD 01:23 left \[/,
    );
    expect(held.timer && texts(holdBar(held.timer, 60, 3, faceWords.en)).join('\n')).toContain(
      'ON HOLD 01:23 left of 02:00',
    );
  });
});

describe('the readings', () => {
  it('are judged by a word, the newest first', () => {
    expect(texts(readings(reading.readings, 60, faceWords.en))).toEqual([
      'READINGS',
      'NOT MET  idle speed       930 rpm  700–800',
      'met      battery          12.7 V   ≥ 12.4',
      'met      freeze point     -37 °C   ≤ -30',
      'met      air temperature  -5 °C',
    ]);
  });

  it('cut a name before they cut a value, a limit or a judgement', () => {
    expect(texts(readings(reading.readings, 32, faceWords.en))[1]).toBe('NOT MET idle sp… 930 rpm 700–800');
  });

  it('leave the order of the view alone', () => {
    const before = [...reading.readings];
    readings(reading.readings, 60, faceWords.en);
    expect(reading.readings).toEqual(before);
  });
});

describe('what may be said', () => {
  it('is broken between wordings only', () => {
    expect(
      texts(choices({ choices: ['coolant full', 'not yet', 'no more air'], number: null }, 30, faceWords.en)),
    ).toEqual(['Say: "coolant full" |', '     "not yet" | "no more air"']);
  });

  it('names a number with its unit and range', () => {
    expect(texts(choices(reading, 80, faceWords.en))).toEqual(['Say a number: oil pressure, 0 to 150 psi']);
  });

  it('is said to be nothing when nothing is awaited', () => {
    const drill = { choices: ['not yet'], number: null, emergencyWord: 'stop' };
    expect(texts(choices(drill, 80, faceWords.en))).toEqual(['Say: "stop" | "not yet"']);
    expect(texts(choices({ choices: [], number: null }, 80, faceWords.en))).toEqual([
      'No reply is awaited now.',
    ]);
  });
});

describe('the ear', () => {
  it('has a meter over sixty decibels that is empty for what it cannot know', () => {
    expect([0, -30, -60, -200, 12].map(meter).map(text => text.split('█').length - 1)).toEqual([
      12, 6, 0, 0, 12,
    ]);
    expect(meter(null)).toBe('[············]');
    expect(meter(Number.NaN)).toBe('[············]');
  });

  it('says which ear, how loud, and who was heard', () => {
    expect(texts(hearing(filling.hearing, 120, faceWords.en))).toEqual([
      'Ear: microphone [███████·····] -23 dBFS speech   Heard: "mix is ready" (technician)',
    ]);
    expect(
      texts(
        hearing(
          { ...filling.hearing, source: 'keys only', levelDbfs: null, speech: false, last: null },
          80,
          faceWords.en,
        ),
      ),
    ).toEqual(['Ear: keys only no level   Heard: nothing yet']);
  });
});

describe('the lowest lines', () => {
  it('show the end of a long line that is being typed, with the cursor', () => {
    expect(inputLine(`${'a'.repeat(50)}z`, 20, faceWords.en).text).toBe(`> …${'a'.repeat(15)}z█`);
  });

  it('say after one Ctrl-C what a second does, and that the engine goes on', () => {
    expect(hintLine(true, 'running', 100, faceWords.en).text).toBe(
      'Esc = STOP   Ctrl-C again leaves, any other key stays.   Leaving does not stop the engine.',
    );
    expect(hintLine(true, 'off', 100, faceWords.en).text).not.toContain('engine');
  });

  it('leave whole hints away where there is no room, never the stop', () => {
    expect(hintLine(false, 'off', 30, faceWords.en).text).toBe('Esc = STOP   Enter = send');
    expect(hintLine(false, 'off', 10, faceWords.en).text).toBe('Esc = STOP');
  });

  it('shows what is called out whole where there is room for it, else from its beginning', () => {
    const danger = {
      time: '00:11',
      who: '!',
      text: 'Danger. Still running: cut its fuel, now. Block its air.',
    };
    const asked = { time: '00:12', who: 'says', text: 'All is off?' };
    const shown = (rows: number) => texts(logTail([asked, danger, asked], 40, rows, faceWords.en));
    expect(shown(4).slice(0, -1).join(' ').replace(/ +/g, ' ')).toContain(danger.text);
    expect(shown(2)[0]).toMatch(/Danger\. Still running.*…$/);
    expect(shown(2)).toHaveLength(2);
    expect(shown(0)).toEqual([]);
  });

  it('show the newest lines of the log last', () => {
    expect(texts(logTail(filling.log, 40, 2, faceWords.en))).toEqual([
      '04:21 heard mix is ready',
      '04:22 says  Fill the coolant slowly, up…',
    ]);
  });
});
