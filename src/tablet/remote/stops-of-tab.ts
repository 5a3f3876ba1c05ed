import { z } from 'zod';
import { deedSchema } from '../../server/protocol/index.ts';
import { keptInTab } from '../kept.ts';
import type { StopStore } from './kept-stops.ts';

const stopsSchema = z.array(
  z.object({ id: z.string(), deed: deedSchema, session: z.string().nullable().optional() }),
);

const KEY = 'first-fire-open-stops';

/** The stops of this tab that have no answer. What cannot be read is no stop. */
export const stopsOfTab: StopStore = {
  read() {
    try {
      return stopsSchema
        .parse(JSON.parse(keptInTab.read(KEY) ?? '[]'))
        .flatMap(({ id, deed, session }) => (deed.do === 'stop' ? [{ id, deed, session }] : []));
    } catch {
      return [];
    }
  },
  write(stops) {
    if (stops.length === 0) keptInTab.remove(KEY);
    else keptInTab.write(KEY, JSON.stringify(stops));
  },
};
