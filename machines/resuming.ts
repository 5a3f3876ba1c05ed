import type { LineId } from '../prompts/types.ts';
import { bySecondPerson, isSupervisor, readBack } from './kinds/question.ts';
import { NEXT } from './progress.ts';
import { type Look, type Move, type Node, type Nodes, remark, update } from './toolkit.ts';
import type { Emergency, Person } from './vocabulary.ts';

const goOn: Move = {
  target: NEXT,
  actions: update(() => ({ stop: null, reopened: null, misheard: 0, pending: null })),
};

interface Confirmed {
  readonly state: string;
  readonly by: Person;
  readonly isTheirs: (look: Look) => boolean;
  readonly ask: LineId;
  /** Said to whoever else answers. */
  readonly refusal: LineId;
}

/**
 * Who says that an emergency is over, in this order. What burned is looked at by whoever stands by with the extinguisher;
 * that work goes on after an injury is the supervisor's to say, as the second person may be who is hurt. Common practice,
 * no published source.
 */
const confirmed: readonly (readonly [Emergency, Confirmed])[] = [
  [
    'smokeOrFire',
    {
      state: 'fireOut',
      by: 'second',
      isTheirs: bySecondPerson,
      ask: 'askFireOut',
      refusal: 'onlySecond',
    },
  ],
  [
    'someoneHurt',
    {
      state: 'hurtHelped',
      by: 'supervisor',
      isTheirs: isSupervisor,
      ask: 'askHurtHelped',
      refusal: 'onlySupervisor',
    },
  ],
];

/** As the cause or besides it: no other cause that is named undoes it. */
const stands =
  (named: Emergency) =>
  ({ context: { stop } }: Look): boolean =>
    stop !== null && [stop.cause, ...stop.also].includes(named);

/** From here on: each emergency that stands is confirmed to be over, then work goes on. */
const onwardsFrom = (index: number): Move[] => [
  ...confirmed.slice(index).map(([named, { state }]) => ({ guard: stands(named), target: state })),
  goOn,
];

/** Where "ready" leads after a stop. */
export const onwards: readonly Move[] = onwardsFrom(0);

/** What is confirmed before work goes on after an emergency; denied, it leads back to what is to be done. */
export const confirmedOver = (): Nodes =>
  Object.fromEntries(
    confirmed.map(([, { state, by, isTheirs, ask, refusal }], index) => [
      state,
      {
        ...readBack(
          { by, critical: false },
          () => ({ line: ask, values: {} }),
          [
            {
              guard: (look: Look) => !isTheirs(look),
              actions: remark(() => ({ line: refusal, values: {} })),
            },
            ...onwardsFrom(index + 1),
          ],
          { target: 'reopened' },
        ),
        tags: ['madeSafe'],
      } satisfies Node,
    ]),
  );
