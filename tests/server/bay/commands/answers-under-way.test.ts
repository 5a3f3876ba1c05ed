import { expect, test } from 'vitest';
import { AnswersUnderWay } from '../../../../src/server/bay/commands/answers-under-way.ts';
import { latch } from '../parts-of-a-bay.ts';

test('a question may be answered until an answer to it is being carried out, and again when that has had its effect', async () => {
  const answers = new AnswersUnderWay();
  const disk = latch();
  expect(answers.open('s/1')).toBe('s/1');
  const carriedOut = answers.until('s/1', () => disk.opened);
  expect(answers.open('s/1')).toBeNull();
  disk.open();
  await carriedOut;
  expect(answers.open('s/1')).toBe('s/1');
});

test('the question is closed before the answer has any effect, and any other one stays open', () => {
  const answers = new AnswersUnderWay();
  let within: (string | null)[] = [];
  void answers.until('s/1', async () => {
    within = [answers.open('s/1'), answers.open('s/2')];
  });
  expect(within).toEqual([null, 's/2']);
});

test('an answer that could not be carried out leaves its question to be answered', async () => {
  const answers = new AnswersUnderWay();
  const failed = answers.until('s/1', () => Promise.reject(new Error('lost')));
  await expect(failed).rejects.toThrow('lost');
  expect(answers.open('s/1')).toBe('s/1');
});

test('what counts at any turn overlaps: the question stays closed until the last of it has had its effect', async () => {
  const answers = new AnswersUnderWay();
  const [first, last] = [latch(), latch()];
  const all = [first, last].map(disk => answers.until('s/1', () => disk.opened));
  first.open();
  await all[0];
  expect(answers.open('s/1')).toBeNull();
  last.open();
  await all[1];
  expect(answers.open('s/1')).toBe('s/1');
});
