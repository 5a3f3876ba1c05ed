import { describe, expect, it } from 'vitest';
import type { FromEar, ToEar } from '../../src/tablet/hearing/messages.ts';
import { TranscriptRecognizer } from '../../src/tablet/hearing/web-speech.ts';
import { WorkerRecognizer } from '../../src/tablet/hearing/worker-recognizer.ts';
import type { Grammar, Heard } from '../../src/voice/ports.ts';

const grammar = (key: string): Grammar => ({
  key,
  stop: ['stop'],
  replies: [{ id: 'yes', wordings: ['correct'] }],
});

function workerRecognizer() {
  const sent: ToEar[] = [];
  let tell: (message: FromEar) => void = () => {};
  const recognizer = new WorkerRecognizer({
    post: message => sent.push(message),
    onMessage(handler) {
      tell = handler;
    },
    end() {},
  });
  const heard: Heard[] = [];
  recognizer.onHeard(each => heard.push(each));
  const turns = () => sent.flatMap(message => (message.kind === 'listen' ? [message.turn] : []));
  return { recognizer, sent, heard, turns, tell: (message: FromEar) => tell(message) };
}

const yes: Heard = { kind: 'reply', id: 'yes', text: 'correct', confidence: 1 };

it('tells the ear, once it is loaded, what it was to listen for before', () => {
  const { recognizer, sent, tell } = workerRecognizer();
  recognizer.listen(grammar('first'));
  expect(sent).toEqual([]);
  tell({ kind: 'ready' });
  expect(sent).toMatchObject([
    { kind: 'listen', grammar: { key: 'first' } },
    { kind: 'onlyStop', active: false },
  ]);
});

it('takes an answer to the question before for unclear, but never a stop', () => {
  const { recognizer, heard, turns, tell } = workerRecognizer();
  tell({ kind: 'ready' });
  recognizer.listen(grammar('first'));
  recognizer.listen(grammar('second'));
  const [old = 0, now = 0] = turns();
  tell({ kind: 'heard', turn: old, heard: yes });
  expect(heard.at(-1)).toMatchObject({ kind: 'unclear' });
  tell({ kind: 'heard', turn: old, heard: { kind: 'stop', text: 'stop' } });
  expect(heard.at(-1)).toMatchObject({ kind: 'stop' });
  tell({ kind: 'heard', turn: now, heard: yes });
  expect(heard.at(-1)).toEqual(yes);
});

it('hears nothing but a stop while the tool speaks', () => {
  const { recognizer, heard, turns, tell } = workerRecognizer();
  tell({ kind: 'ready' });
  recognizer.listen(grammar('first'));
  recognizer.onlyStop(true);
  tell({ kind: 'heard', turn: turns().at(-1) ?? 0, heard: yes });
  expect(heard).toEqual([]);
  tell({ kind: 'heard', turn: 0, heard: { kind: 'stop', text: 'stop' } });
  expect(heard).toHaveLength(1);
});

describe("The browser's service", () => {
  /** It has listened for one question for long, and time passes as the test says. */
  function service() {
    let nowMs = 0;
    const recognizer = new TranscriptRecognizer(() => nowMs);
    const heard: Heard[] = [];
    recognizer.onHeard(each => heard.push(each));
    recognizer.listen(grammar('first'));
    const kinds = () => heard.map(each => (each.kind === 'unclear' ? each.reason : each.kind));
    const passes = (ms: number) => {
      nowMs += ms;
    };
    return { recognizer, heard, kinds, passes };
  }
  const sure = 0.99;

  it('has a stop count in an unfinished sentence, and nothing else in it', () => {
    const { recognizer, heard, kinds } = service();
    recognizer.take(0, 'correct', sure, false);
    expect(heard).toEqual([]);
    recognizer.take(0, 'Stop', 0.1, false);
    recognizer.take(1, 'correct', sure, true);
    recognizer.take(2, 'correct', 0.2, true);
    recognizer.take(3, 'correct', Number.NaN, true);
    recognizer.take(4, 'lunch', sure, true);
    expect(kinds()).toEqual(['stop', 'reply', 'lowConfidence', 'lowConfidence', 'outOfGrammar']);
  });

  it('has an answer count for the question that was asked as it began, and for no other', () => {
    const { recognizer, kinds, passes } = service();
    recognizer.take(0, 'correct', sure, false);
    recognizer.listen(grammar('second'));
    passes(20_000);
    recognizer.take(0, 'correct', sure, true);
    expect(kinds()).toEqual(['outOfGrammar']);
    recognizer.take(1, 'correct', sure, false);
    recognizer.take(1, 'correct', sure, true);
    expect(kinds()).toEqual(['outOfGrammar', 'reply']);
  });

  it('tells two that are said at once apart', () => {
    const { recognizer, kinds, passes } = service();
    recognizer.take(0, 'lunch', sure, false);
    recognizer.take(1, 'correct', sure, false);
    recognizer.take(0, 'lunch', sure, true);
    recognizer.listen(grammar('second'));
    passes(20_000);
    recognizer.take(1, 'correct', sure, false);
    recognizer.take(1, 'correct', sure, true);
    expect(kinds()).toEqual(['outOfGrammar', 'outOfGrammar']);
  });

  it('takes the first words so soon after another question for the end of what was said before', () => {
    const { recognizer, kinds, passes } = service();
    recognizer.listen(grammar('second'));
    passes(400);
    recognizer.take(0, 'correct', sure, false);
    passes(5_000);
    recognizer.take(0, 'correct', sure, true);
    expect(kinds()).toEqual(['outOfGrammar']);
  });

  it('takes what comes whole, with no words before, for an answer only when the question is older than its delay', () => {
    const { recognizer, kinds, passes } = service();
    recognizer.listen(grammar('second'));
    passes(1_400);
    recognizer.take(0, 'correct', sure, true);
    passes(200);
    recognizer.take(1, 'correct', sure, true);
    expect(kinds()).toEqual(['outOfGrammar', 'reply']);
  });

  it('has nothing but a stop count of what was begun, or gone on with, while the tool spoke', () => {
    const { recognizer, kinds, passes } = service();
    recognizer.onlyStop(true);
    recognizer.take(0, 'correct', sure, false);
    recognizer.onlyStop(false);
    passes(5_000);
    recognizer.take(0, 'correct', sure, true);

    recognizer.take(1, 'correct', sure, false);
    recognizer.onlyStop(true);
    recognizer.onlyStop(false);
    passes(5_000);
    recognizer.take(1, 'correct', sure, true);
    expect(kinds()).toEqual([]);

    recognizer.take(2, 'correct', sure, false);
    recognizer.onlyStop(true);
    recognizer.listen(grammar('second'));
    recognizer.take(2, 'correct stop', sure, true);
    expect(kinds()).toEqual(['stop']);
  });

  it('counts its utterances anew when it begins anew', () => {
    const { recognizer, kinds, passes } = service();
    recognizer.take(0, 'correct', sure, false);
    recognizer.listen(grammar('second'));
    passes(5_000);
    recognizer.beginAnew();
    recognizer.take(0, 'correct', sure, false);
    recognizer.take(0, 'correct', sure, true);
    expect(kinds()).toEqual(['reply']);
  });
});
