import { initialTransition } from 'xstate';
import { procedureFor } from '../../../machines/first-start.ts';
import { isOver, type Moment, offerOf, stateName } from '../../../machines/moment.ts';
import { nextAlarmMs } from '../../../machines/timing.ts';
import { languages } from '../../../prompts/index.ts';
import type { LanguageCode } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { Session } from '../../../src/session/session.ts';
import type { View } from '../../../src/session/view.ts';
import { Viewer } from '../../../src/session/viewer.ts';
import { VirtualClock } from '../../../src/session/virtual-clock.ts';
import { wordSaid } from '../../../src/session/wording.ts';
import { SilentSink } from '../../../src/voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../../src/voice/speech-queue.ts';
import { speakingTime } from '../../helpers/session-rig.ts';
import { job, machineFor, PAUSE_MS, takeStep } from '../../machines/helpers/driver.ts';
import { type Act, actsAt, type Place } from '../../machines/helpers/explore.ts';
import { goodBody, goodPauseMs } from '../../machines/helpers/good.ts';

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

const nextOf = ({ moment, nowMs }: Place, { body, afterMs = PAUSE_MS }: Act): Place => {
  const alarm = body.type === 'clock' ? nextAlarmMs(moment.context) : null;
  const atMs = alarm === null ? nowMs + afterMs : Math.max(nowMs, alarm);
  const event = { ...body, by: offerOf(moment).by, via: 'voice' as const, atMs };
  const last = takeStep(machineFor(moment.context.profile), moment, event);
  return { moment: last.after, nowMs: atMs, returns: 0, last };
};

/** A good start from its beginning to its end, moment by moment. */
function goodStart(profile: Profile): Place[] {
  const [moment] = initialTransition(machineFor(profile), { profile, job });
  const places: Place[] = [{ moment, nowMs: 0, returns: 0, last: null }];
  for (let place = places[0]; place && !isOver(place.moment); place = places.at(-1)) {
    const body = goodBody(place.moment) ?? { type: 'clock' };
    places.push(nextOf(place, { type: body.type, body, afterMs: goodPauseMs(place.moment) ?? PAUSE_MS }));
  }
  return places;
}

const reach = {
  returns: 0,
  stopAt: () => true,
  causes: (id: string) => id === 'causeOther',
  codes: [[157, 18]] as const,
  everything: () => true,
};

/** A stop that came while nothing turned is another one than one beside a turning engine. */
const nameOf = (moment: Moment) => {
  const step = procedureFor(moment.context.profile).find(({ id }) => id === moment.context.step);
  return moment.matches('stopped') ? `${stateName(moment)} ${step?.engine}` : stateName(moment);
};

/**
 * The procedure's states, each with the moments in which it was come to: along a good start, and from each state of it
 * by everything that can happen there, as often as that leads to a state that is new.
 */
function everyState(profile: Profile): Map<string, Place[]> {
  const found = new Map<string, Place[]>();
  const waiting = goodStart(profile);
  for (const place of waiting) found.set(nameOf(place.moment), []);
  for (let place = waiting.shift(); place; place = waiting.shift()) {
    const here = found.get(nameOf(place.moment)) ?? [];
    found.set(nameOf(place.moment), [...here, place]);
    if (here.length > 0 || isOver(place.moment)) continue;
    for (const act of actsAt(place, reach)) {
      const next = nextOf(place, act);
      const known = found.get(nameOf(next.moment));
      if (known) known.push(next);
      else {
        found.set(nameOf(next.moment), []);
        waiting.push(next);
      }
    }
  }
  return found;
}

/** What is shown in every state that the procedure has: one view of each, the one that takes the most room. */
export function everyView(profile: Profile, code: LanguageCode): readonly View[] {
  return [...everyState(profile).values()].map(places => {
    const [largest] = places.sort((a, b) => room(b, code) - room(a, code));
    if (!largest) throw new Error('a state that nothing leads to');
    return viewOf(largest, code);
  });
}
