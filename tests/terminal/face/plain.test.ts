import { once } from 'node:events';
import { PassThrough } from 'node:stream';
import { text } from 'node:stream/consumers';
import { describe, expect, it } from 'vitest';
import type { View } from '../../../src/session/view.ts';
import { showPlain } from '../../../src/terminal/face/plain.ts';
import { plainLines as linesIn } from '../../../src/terminal/face/plain-lines.ts';
import { faceWords } from '../../../src/terminal/face/words/index.ts';
import { ShownViews } from './shown.ts';
import { cranking, everyView, filling, held, reading, resting, stopped } from './views.ts';

const plainLines = (before: View | null, view: View) => linesIn(before, view, faceWords.en);

describe('the lines of the plain face', () => {
  it('begin with the engine, that it is invented, the log so far and what may be said', () => {
    expect(plainLines(null, filling)).toEqual([
      expect.stringMatching(/^first-fire {2}Demo four .*INVENTED ENGINE, PRACTICE ONLY\* {2}2\/12 Fill$/),
      '04:10 says  Coolant: 5.5 L of ethylene glycol concentrate and 5.5 L of water.',
      '04:21 heard mix is ready',
      '04:22 says  Fill the coolant slowly, up to the cold mark. Say coolant full.',
      '== Engine off ==',
      'Say: "coolant full" | "not yet"',
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

describe('the plain face', () => {
  it('prints what happens and hands on typed lines, until it is closed', async () => {
    const stdin = new PassThrough();
    const stdout = new PassThrough();
    const viewer = new ShownViews(filling);
    const typed: string[] = [];
    const face = showPlain(viewer, faceWords.en, { onType: line => typed.push(line) }, { stdin, stdout });
    stdin.end('  coolant full \n\nnot yet');
    await once(stdin, 'end');
    viewer.show(stopped);
    face.close();
    await face.done;
    expect(viewer.watched).toBe(false);
    viewer.show(filling);
    stdout.end();
    const printed = await text(stdout);
    expect(typed).toEqual(['coolant full', 'not yet']);
    expect(printed).toContain('31:07 !     Stop! Key off. Stop!\n');
    expect(printed.split('STOPPED').length - 1).toBe(1);
  });
});
