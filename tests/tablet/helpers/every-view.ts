import { type Moment, offerOf, stateName } from '../../../machines/moment.ts';
import { languages } from '../../../prompts/index.ts';
import type { LanguageCode } from '../../../prompts/types.ts';
import { Session } from '../../../src/session/session.ts';
import type { View } from '../../../src/session/view.ts';
import { Viewer } from '../../../src/session/viewer.ts';
import { VirtualClock } from '../../../src/session/virtual-clock.ts';
import { wordSaid } from '../../../src/session/wording.ts';
import { SilentSink } from '../../../src/voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../../src/voice/speech-queue.ts';
import { speakingTime } from '../../helpers/session-rig.ts';
import { job } from '../../machines/helpers/driver.ts';
import { explore, type Place } from '../../machines/helpers/explore.ts';
import { shortest } from '../../machines/helpers/profiles.ts';

/** Names as long as people's names are. */
const people = {
  ...job,
  technician: 'Jacqueline Meunier',
  second: 'Bartholomew Ng',
  supervisor: 'A. Okonkwo',
};

/** What a face is shown of a session at this moment. */
function viewOf({ moment, nowMs }: Place, language: LanguageCode): View {
  const clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'));
  clock.advance(nowMs);
  const speech = new SpeechQueue(speakingTime, new SilentSink((ms, signal) => clock.sleep(ms, signal)), () =>
    clock.nowMs(),
  );
  const named = { ...moment, context: { ...moment.context, job: people } };
  const session = new Session(
    {
      profile: moment.context.profile,
      job: people,
      language: languages[language],
      units: 'metric',
      clock,
      record: { append: async () => {}, failure: null, watch: () => {} } as never,
      speech,
    },
    Object.setPrototypeOf(named, Object.getPrototypeOf(moment)) as Moment,
  );
  return new Viewer(session, 'keys').view();
}

/** How much there is to read and to choose from at a moment. */
function room({ moment }: Place, language: LanguageCode): number {
  const { lastSaid } = moment.context;
  const prompt = lastSaid ? wordSaid(lastSaid, languages[language], 'metric').shown : '';
  return prompt.length + 20 * offerOf(moment).replies.length;
}

/** All that the procedure can come to, by the paths of the statechart library; lists are as short as they can be. */
const graph = () =>
  explore(shortest, {
    returns: 0,
    stopAt: ({ moment }) => stateName(moment) === 'checks.leaks.asking',
    causes: id => id === 'causeOther',
    codes: [],
    everything: () => true,
  });

/** What is shown in every state that the procedure has: one view of each, the one that takes the most room. */
export function everyView(codes: readonly LanguageCode[]): Map<LanguageCode, readonly View[]> {
  const places = [...graph().places.values()];
  return new Map(
    codes.map(code => {
      const largest = new Map<string, { readonly place: Place; readonly size: number }>();
      for (const place of places) {
        // A stop may come before anything has turned and while it runs.
        const name = `${stateName(place.moment)} ${place.moment.context.stop?.step ?? ''}`;
        const size = room(place, code);
        if (size > (largest.get(name)?.size ?? -1)) largest.set(name, { place, size });
      }
      return [code, [...largest.values()].map(({ place }) => viewOf(place, code))];
    }),
  );
}
