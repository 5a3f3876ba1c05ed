import { expect, it } from 'vitest';
import { emergencyReplies } from '../../machines/emergency.ts';
import { languages } from '../../prompts/index.ts';
import { saysStop, saysUrgent } from '../../src/tablet/face/says-stop.ts';

it('stops, fire, injury and an engine that runs on wait for no question, in every language and however they are typed', () => {
  for (const { replies, stopWordings } of Object.values(languages)) {
    for (const wording of [
      ...stopWordings,
      ...Object.values(emergencyReplies).flatMap(id => replies[id]),
      ...replies.stillRunning,
    ])
      for (const typed of [wording, ` ${wording.toUpperCase()}! `])
        expect(saysUrgent(typed), typed).toBe(true);
  }
  expect(saysStop('fire')).toBe(false);
});

it('an answer does', () => {
  for (const { replies } of Object.values(languages))
    for (const text of [...replies.yes, ...replies.fired, ...replies.pressureGood, '12.6', ''])
      expect(saysUrgent(text), text).toBe(false);
});
