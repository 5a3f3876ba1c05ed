import { emergencyReplies } from '../../../machines/emergency.ts';
import { languages } from '../../../prompts/index.ts';
import { meansStop } from '../../session/stop-words.ts';
import { normalizeWording } from '../../voice/wording.ts';

/** Whether a text that was typed means stop in any language: such a text waits for nothing. */
export const saysStop = (text: string): boolean =>
  Object.values(languages).some(language => meansStop(text, language));

/** What is told of an engine or of people, whatever is asked: fire, injury, and that it runs on. */
const atAnyTime = [...Object.values(emergencyReplies), 'stillRunning'] as const;

const calls = new Set(
  Object.values(languages).flatMap(({ replies }) =>
    atAnyTime.flatMap(id => replies[id]).map(normalizeWording),
  ),
);

/** Whether a text that was typed means the same whatever is asked: it is an answer to no question, and waits for none. */
export const saysUrgent = (text: string): boolean => saysStop(text) || calls.has(normalizeWording(text));
