import { type Look, type Move, note, remark } from '../toolkit.ts';

/** In the second person's name, in a voice that is surely the technician's. */
export const inOtherVoice = ({ event }: Look): boolean =>
  (event.type === 'reply' || event.type === 'value') &&
  event.by === 'second' &&
  event.voice?.of === 'technician';

/**
 * What only the second person can vouch for is asked of them again, by name. A voice can only refuse: that it is theirs
 * grants nothing, and everything that is asked otherwise is asked as well.
 */
export const refuseOtherVoice: Move = {
  guard: inOtherVoice,
  actions: [
    note(({ context, event }) =>
      event.type === 'reply' || event.type === 'value'
        ? { kind: 'otherVoice', data: { step: context.step, certainty: event.voice?.certainty } }
        : null,
    ),
    remark(() => ({ line: 'otherVoice', values: {} })),
  ],
};
