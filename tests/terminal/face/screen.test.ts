import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { languages } from '../../../prompts/index.ts';
import type { View } from '../../../src/session/view.ts';
import type { Size } from '../../../src/terminal/face/screen.ts';
import { screenRows } from '../../../src/terminal/face/screen.ts';
import { widthOf } from '../../../src/terminal/face/text.ts';
import { nothingTyped } from '../../../src/terminal/face/typing.ts';
import { faceWords } from '../../../src/terminal/face/words/index.ts';
import {
  cranking,
  everyView,
  filling,
  gatesMet,
  held,
  overlong,
  reading,
  resting,
  signedOff,
  stopped,
} from './views.ts';

const small: Size = { columns: 80, rows: 24 };
const large: Size = { columns: 120, rows: 40 };
const tiny: Size = { columns: 60, rows: 20 };

const linesOf = (view: View, size: Size, typed = '') =>
  screenRows(view, size, { ...nothingTyped, typed }, faceWords.en).map(row =>
    row.map(({ text }) => text).join(''),
  );
const textOf = (view: View, size: Size) => linesOf(view, size).join('\n');

const views = Object.entries(everyView);

describe.each(views)('the screen of the view "%s"', (_name, view) => {
  it.each([small, large, tiny])('fills $columns by $rows exactly, with no line wider', size => {
    const lines = linesOf(view, size);
    expect(lines).toHaveLength(size.rows);
    for (const line of lines) expect(widthOf(line), line).toBeLessThanOrEqual(size.columns);
  });

  it.each([small, large, tiny])(
    'says at $columns by $rows how to stop, and that the engine is invented',
    size => {
      expect(textOf(view, size)).toContain('Esc = STOP');
      expect(textOf(view, size)).toContain('INVENTED ENGINE');
    },
  );

  it('fits whatever size the terminal has', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 250 }), fc.integer({ min: 1, max: 90 }), (columns, rows) => {
        const lines = linesOf(view, { columns, rows }, 'typed '.repeat(9));
        expect(lines).toHaveLength(rows);
        for (const line of lines) expect(widthOf(line), line).toBeLessThanOrEqual(columns);
      }),
      { numRuns: 40 },
    );
  });
});

describe('what happens, in words', () => {
  it.each([small, large, tiny])('is unmistakable at $columns by $rows without colour', size => {
    expect(textOf(filling, size)).toContain('Engine off');
    expect(textOf(reading, size)).toContain('*** ENGINE RUNNING ***');
    expect(textOf(cranking, size)).toContain('### CRANKING ###');
    expect(textOf(held, size)).toContain('=== ON HOLD ===');
    expect(textOf({ ...held, engine: 'running' }, size)).toContain('=== ON HOLD - ENGINE RUNNING ===');
    expect(textOf({ ...stopped, engine: 'off' }, size)).toContain('!!! STOPPED - KEY OFF !!!');
    expect(textOf(stopped, size)).toContain('!!! STOPPED - KEY OFF - ENGINE MAY STILL TURN !!!');
    expect(textOf(signedOff, size)).toContain('--- SIGNED OFF ---');
    expect(textOf({ ...signedOff, outcome: 'ended' }, size)).toContain('--- ENDED WITHOUT SIGN-OFF ---');
  });

  it('marks a rehearsal on any engine, also on one of somebody’s own', () => {
    for (const invented of [true, false])
      expect(textOf({ ...filling, invented, rehearsal: true }, small)).toContain('*REHEARSAL*');
  });

  it('does not mark an engine that is not invented', () => {
    expect(textOf({ ...filling, invented: false }, small)).not.toContain('INVENTED');
  });
});

describe('80 by 24', () => {
  it('shows everything that matters', () => {
    const text = textOf(resting, small);
    for (const part of [
      '5/12 Crank without fuel',
      'Let the starter cool: 2 minutes.',
      'Also: hold | say again | go back | skip | status | time left | help',
      '01:23 left of 02:00',
      'BEFORE FIRST FIRE: 9 of 16 met',
      'NOT MET: oil primed,',
      'met     freeze point    -37 °C ≤ -30',
      'Heard: "mix is ready" (technician)',
      '-23 dBFS',
      '> █',
    ])
      expect(text).toContain(part);
  });

  it('shows what was called out whole, above what is asked, until it is done', () => {
    const callOuts = (['fireCall', 'surgery', 'stillRunning'] as const).map(line => languages.en.lines[line]);
    const view = { ...stopped, engine: 'unsure' as const, callOuts, prompt: languages.en.lines.areAllOff };
    const shown = linesOf(view, small).filter(text => text.startsWith('!! '));
    expect(shown.map(text => text.slice(3).trim()).join(' ')).toBe(callOuts.join(' '));
    const text = textOf(view, small);
    expect(text.indexOf(view.prompt)).toBeGreaterThan(text.lastIndexOf('!! '));
  });

  it('draws the title and the time left in large letters', () => {
    const blocks = linesOf(resting, small).filter(line => /[█▀▄]{2}/.test(line) && !line.includes('['));
    expect(blocks.length).toBeGreaterThanOrEqual(8);
  });

  it('keeps every choice on the screen, however many there are', () => {
    const text = textOf(stopped, small);
    for (const choice of stopped.choices) expect(text).toContain(`"${choice}"`);
  });

  it('shows whole what there is to do where the disk is full, beside an engine of a rehearsal and much else', () => {
    const problem =
      'The record /home/ada/first-fire-records/first-fire-2026-01-02T03-04-05.jsonl can no longer be written: the disk is full; it goes on in memory. Make room, or type: save to /another/folder';
    const sights = ['ENGINE: Lamps lit: none', 'ENGINE: oil 0 psi', 'ENGINE: coolant 68 °F', 'ENGINE: seen'];
    for (const view of [resting, reading, stopped]) {
      const text = textOf({ ...view, sights, problems: ['No microphone.', problem] }, small);
      expect(text.replace(/\s+/g, ' ')).toContain(problem);
    }
  });

  it('shows problems, fault codes and what was not understood', () => {
    const text = textOf(
      { ...stopped, hearing: { ...stopped.hearing, last: { text: 'stob', counted: false, by: 'second' } } },
      small,
    );
    expect(text).toContain('PROBLEM: The record cannot be written: the disk is full');
    expect(text).toContain('FAULT CODES: 1');
    expect(text).toContain('Heard: NOT UNDERSTOOD "stob" (second person)');
    expect(text).toContain('TOO LOUD');
  });
});

describe('120 by 40', () => {
  it('names every gate with its word and has room for more of the log', () => {
    const text = textOf({ ...filling, gates: gatesMet(2) }, large);
    expect(text).toContain('met      people safe');
    expect(text).toContain('NOT MET  second person clear');
    expect(text).toContain('04:10 says');
  });

  it('lists open items and faults', () => {
    const text = textOf(stopped, large);
    expect(text).toContain('- Steering fluid');
    expect(text).toContain('- SPN 157 FMI 18');
  });
});

describe('a terminal too small for everything', () => {
  it('keeps what happens, what is asked and how to stop longest', () => {
    const lines = linesOf(cranking, { columns: 40, rows: 6 });
    expect(lines.join('\n')).toMatch(/CRANKING.*Crank now\..*pressure shows.*Esc = STOP/s);
    expect(linesOf(overlong, { columns: 40, rows: 2 }).join('\n')).toMatch(/STOPPED.*Esc = STOP/s);
  });
});
