import { once } from 'node:events';
import { PassThrough } from 'node:stream';
import { text } from 'node:stream/consumers';
import { describe, expect, it, vi } from 'vitest';
import type { View } from '../../../src/session/view.ts';
import { showPlain } from '../../../src/terminal/face/plain.ts';
import { type Asked, askedLines, plainLines as linesIn } from '../../../src/terminal/face/plain-lines.ts';
import { faceWords } from '../../../src/terminal/face/words/index.ts';
import { ShownViews } from './shown.ts';
import { cranking, everyView, filling, held, reading, resting, stopped } from './views.ts';

const plainLines = (before: View | null, view: View) => linesIn(before, view, faceWords.en);

describe('the lines of the plain face', () => {
  it('begin with the engine, that it is invented, and the log so far', () => {
    expect(plainLines(null, filling)).toEqual([
      expect.stringMatching(/^first-fire {2}Demo four .*INVENTED ENGINE, PRACTICE ONLY\* {2}2\/12 Fill$/),
      '04:10 says  Coolant: 5.5 L of ethylene glycol concentrate and 5.5 L of water.',
      '04:21 heard mix is ready',
      '04:22 says  Fill the coolant slowly, up to the cold mark. Say coolant full.',
      '== Engine off ==',
    ]);
  });

  it('tell only what is new', () => {
    expect(plainLines(filling, { ...filling, hearing: { ...filling.hearing, levelDbfs: -3 } })).toEqual([]);
    const log = [...filling.log, { time: '04:30', who: 'heard', text: 'coolant full' }];
    expect(plainLines(filling, { ...filling, log })).toEqual(['04:30 heard coolant full']);
    expect(plainLines(filling, { ...filling, problems: ['No microphone.'] })).toEqual([
      'PROBLEM: No microphone.',
    ]);
  });

  it('tell the moments of a hold, not its passing seconds', () => {
    expect(plainLines(filling, resting)).toContain('Crank until pressure: 01:23 left');
    const { timer } = resting;
    expect(timer && plainLines(resting, { ...resting, timer: { ...timer, leftMs: 5000 } })).toEqual([]);
    expect(plainLines(resting, held)).toEqual(['== ON HOLD ==', 'ON HOLD: Crank until pressure: 01:23 left']);
  });

  it('tell what the engine does and that everything is stopped', () => {
    expect(plainLines(resting, cranking)).toContain('== CRANKING ==');
    expect(plainLines(cranking, reading)).toContain('== ENGINE RUNNING ==');
    expect(plainLines(reading, stopped)).toContain('== STOPPED - KEY OFF - ENGINE MAY STILL TURN ==');
  });

  it('print the whole log when none of it was seen before', () => {
    const log = Array.from({ length: 50 }, (_, index) => ({
      time: '09:00',
      who: 'says',
      text: `line ${index}`,
    }));
    expect(plainLines(filling, { ...filling, log })).toHaveLength(50);
  });

  it('hold no control codes, whatever the names are', () => {
    for (const view of Object.values(everyView))
      for (const line of plainLines(null, view)) expect(line).not.toMatch(/\p{Cc}/u);
  });
});

/** The face on streams that the test holds, and what it asked for, in order. */
function plainFace(view: View, isTTY = false, isAsked = () => true) {
  const stdin = Object.assign(new PassThrough(), { isTTY });
  const stdout = new PassThrough();
  const viewer = Object.assign(new ShownViews(view), { isAsked });
  const asked: string[] = [];
  const actions = {
    onType: (line: string) => asked.push(line),
    onStop: () => asked.push('STOP'),
    onLeave: () => asked.push('LEAVE'),
    onKeysEnded: () => asked.push('KEYS ENDED'),
  };
  const face = showPlain(viewer, faceWords.en, actions, { stdin, stdout });
  /** Closes it, and gives all that it printed. */
  const printed = async () => {
    face.close();
    await face.done;
    stdout.end();
    return text(stdout);
  };
  return { face, stdin, stdout, viewer, asked, printed };
}

describe('what is asked', () => {
  const seen = { ...filling, sights: ['coolant 68 °F', 'lit: none'] };
  const lines = (last: Asked | null, view: View) => askedLines(last, view, faceWords.en)[0];
  const printed = (view: View, last: Asked | null = null) => askedLines(last, view, faceWords.en)[1];

  it('is told with what there is to see, and what may be said', () => {
    expect(lines(null, seen)).toEqual([
      'ENGINE: coolant 68 °F',
      'ENGINE: lit: none',
      'Say: "coolant full" | "not yet"',
    ]);
  });

  it('is told once, however the gauges move meanwhile', () => {
    expect(lines(printed(seen), { ...seen, sights: ['coolant 70 °F', 'lit: none'] })).toEqual([]);
    expect(lines(printed(seen), { ...seen, choices: ['correct'] })).toEqual(['Say: "correct"']);
  });

  it('is told without what was to be seen before as well', () => {
    const last = printed({ ...seen, sights: ['coolant 70 °F', 'lit: none'] }, printed(seen));
    const next = { ...seen, key: 'fill.bleed.asking', sights: ['coolant 70 °F', 'lit: none'] };
    expect(lines(last, next)).toEqual(['ENGINE: coolant 70 °F', 'Say: "coolant full" | "not yet"']);
  });
});

describe('the plain face', () => {
  it('says what may be said only when it may be: behind the question', async () => {
    let isAsked = false;
    const { viewer, printed } = plainFace(filling, false, () => isAsked);
    const question = { time: '04:31', who: 'says', text: 'Oil pressure good?' };
    viewer.show({ ...reading, log: filling.log });
    viewer.show({ ...reading, log: [...filling.log, question] });
    isAsked = true;
    viewer.show({ ...reading, log: [...filling.log, question] });
    const told = (await printed()).trim().split('\n');
    expect(told.filter(line => line.startsWith('Say:'))).toHaveLength(1);
    expect(told.at(-1)).toMatch(/^Say: /);
    expect(told.indexOf('04:31 says  Oil pressure good?')).toBeLessThan(told.length - 1);
  });

  it('prints what happens and hands on typed lines, until it is closed', async () => {
    const { face, stdin, viewer, asked, printed } = plainFace(filling);
    stdin.end('  coolant full \n\nnot yet');
    await once(stdin, 'end');
    viewer.show(stopped);
    face.close();
    await face.done;
    expect(viewer.watched).toBe(false);
    viewer.show(filling);
    expect(asked).toEqual(['coolant full', 'not yet', 'KEYS ENDED']);
    const told = await printed();
    expect(told).toContain('31:07 !     Stop! Key off. Stop!\n');
    expect(told.split('STOPPED').length - 1).toBe(1);
  });

  it.each(['\x1b', 'coolant \x1bfull', '\x1b\x1b'])('takes %j for a stop', async line => {
    const { stdin, asked } = plainFace(filling);
    stdin.end(`${line}\n`);
    await once(stdin, 'end');
    expect(asked).toEqual(['STOP', 'KEYS ENDED']);
  });

  it('tells that the keys have ended, but not when it is closed by the session', async () => {
    const { stdin, asked, printed } = plainFace(filling);
    await printed();
    stdin.end();
    expect(asked).toEqual([]);
  });

  it('takes a terminal that is gone, or a reader that has gone, for the end of the keys', () => {
    for (const gone of ['stdin', 'stdout'] as const) {
      const parts = plainFace(filling);
      parts[gone].emit('error', new Error('EIO'));
      expect(parts.asked, gone).toContain('KEYS ENDED');
    }
  });

  it('leaves at the second Ctrl-C, and says so at the first; a line in between stays', async () => {
    const { face, stdin, asked, printed } = plainFace(filling, true);
    face.interrupt();
    expect(asked).toEqual([]);
    stdin.write('not yet\n');
    await vi.waitFor(() => expect(asked).toEqual(['not yet']));
    face.interrupt();
    expect(asked).toEqual(['not yet']);
    face.interrupt();
    expect(asked).toEqual(['not yet', 'LEAVE']);
    const told = await printed();
    expect(told.split('Ctrl-C again leaves; type anything to stay.\n')).toHaveLength(3);
    expect(told).not.toContain('does not stop the engine');
  });

  it('warns that leaving does not stop an engine that runs', async () => {
    const { face, printed } = plainFace(reading, true);
    face.interrupt();
    expect(await printed()).toContain(
      'Ctrl-C again leaves; type anything to stay. Leaving does not stop the engine.\n',
    );
  });

  it('leaves at once where nobody is at the keys', () => {
    const { face, asked } = plainFace(filling);
    face.interrupt();
    expect(asked).toEqual(['LEAVE']);
  });
});
