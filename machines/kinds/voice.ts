import { type Look, type Move, note, remark } from '../toolkit.ts';

/** In the second person's name, in a voice that is surely the technician's. */
export const inOtherVoice = (look: Look): boolean =>
  look.event.by === 'second' && voiceOf(look)?.of === 'technician';

const voiceOf = ({ event }: Look) => ('voice' in event ? event.voice : undefined);

/**
 * What only the second person can vouch for is asked of them again, by name. A voice can only refuse: that it is theirs
 * grants nothing, and everything that is asked otherwise is asked as well.
 */
export const refuseOtherVoice: Move = {
  guard: inOtherVoice,
  actions: [
    note(look => ({
      kind: 'otherVoice',
      data: { step: look.context.step, certainty: voiceOf(look)?.certainty },
    })),
    remark(() => ({ line: 'otherVoice', values: {} })),
  ],
};
