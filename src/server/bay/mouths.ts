import { offerOf } from '../../../machines/moment.ts';
import type { Crew } from './crew.ts';
import type { CurrentRun } from './current-run.ts';
import type { FrameStream } from './frame-stream.ts';
import type { Mouths } from './remote-voice.ts';

/** The faces of a bay as those who speak for it: each sentence is for whoever is asked at that moment. */
export const mouthsOf = (stream: FrameStream, current: CurrentRun, crew: Crew): Mouths => ({
  say: (text, priority) => {
    const moment = current.run?.session.moment;
    const addressed = moment ? offerOf(moment).by : 'technician';
    const { turn } = current;
    return stream.send({ type: 'say', sessionMs: current.sessionMs ?? 0, text, priority, addressed, turn });
  },
  hush: () => stream.send({ type: 'hush', sessionMs: current.sessionMs ?? 0 }),
  attended: () => crew.attended(),
});
