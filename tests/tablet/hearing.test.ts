import { expect, it } from 'vitest';
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

it("acts on a stop in the browser service's unfinished sentence, and on nothing else in it", () => {
  const recognizer = new TranscriptRecognizer();
  const heard: Heard[] = [];
  recognizer.onHeard(each => heard.push(each));
  recognizer.listen(grammar('first'));
  recognizer.take('correct', 0.99, false);
  expect(heard).toEqual([]);
  recognizer.take('Stop', 0.1, false);
  recognizer.take('correct', 0.99, true);
  recognizer.take('correct', 0.2, true);
  recognizer.take('correct', Number.NaN, true);
  recognizer.take('lunch', 0.99, true);
  expect(heard.map(each => (each.kind === 'unclear' ? each.reason : each.kind))).toEqual([
    'stop',
    'reply',
    'lowConfidence',
    'lowConfidence',
    'outOfGrammar',
  ]);
});
