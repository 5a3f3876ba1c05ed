import type { ReplyId, StepId } from '../prompts/types.ts';
import type {
  ConfirmStep,
  CrankStep,
  FaultsStep,
  HoldStep,
  InspectStep,
  Judge,
  LampsStep,
  ReadingStep,
  SensorsStep,
  WatchStep,
} from './steps.ts';
import type { Quantity } from './vocabulary.ts';

/** Makers for each kind of step: what most steps share is filled in, so that a phase reads like a list. */

const usual = { by: 'technician', engine: 'off' } as const;

type Rest<S, Given extends keyof S> = Partial<Omit<S, 'kind' | 'id' | Given>>;

export const confirm = (id: StepId, ok: ReplyId, rest: Rest<ConfirmStep, 'ok'> = {}): ConfirmStep => ({
  kind: 'confirm',
  id,
  ok,
  ...usual,
  ...rest,
});

export const reading = (
  id: StepId,
  quantity: Quantity,
  judge: Judge,
  rest: Rest<ReadingStep, 'quantity' | 'judge'> = {},
): ReadingStep => ({
  kind: 'reading',
  id,
  quantity,
  judge,
  outside: 'again',
  ...usual,
  values: () => ({ unit: { unitOf: quantity } }),
  ...rest,
});

export const hold = (
  id: StepId,
  seconds: HoldStep['seconds'],
  rest: Rest<HoldStep, 'seconds'> = {},
): HoldStep => ({ kind: 'hold', id, seconds, ...usual, ...rest });

type Needed<S, Keys extends keyof S> = Pick<S, Keys> & Rest<S, Keys>;

/** Replies for groups of a list, a phrase for each that no other state takes; lists longer than that go on one by one. */
const lampGroups: readonly ReplyId[] = ['firstLamps', 'secondLamps', 'thirdLamps'];
const runningLampGroups: readonly ReplyId[] = [
  'firstLampsRunning',
  'secondLampsRunning',
  'thirdLampsRunning',
];

export const lamps = (id: StepId, rest: Needed<LampsStep, 'lamps' | 'expected' | 'wrong'>): LampsStep => ({
  kind: 'lamps',
  id,
  groups: rest.expected === 'keyOn' ? lampGroups : runningLampGroups,
  ...usual,
  ...rest,
});

export const sensors = (id: StepId, rest: Needed<SensorsStep, 'items' | 'ok' | 'groups'>): SensorsStep => ({
  kind: 'sensors',
  id,
  ...usual,
  ...rest,
});

export const crank = (
  id: StepId,
  rest: Needed<CrankStep, 'needs' | 'until' | 'readBack' | 'burst' | 'giveUp'>,
): CrankStep => ({ kind: 'crank', id, ...usual, engine: 'cranking', ...rest });

export const watch = (
  id: StepId,
  rest: Needed<WatchStep, 'ok' | 'everyS' | 'atLeastS' | 'timeUp'>,
): WatchStep => ({ kind: 'watch', id, ...usual, ...rest });

export const inspect = (id: StepId, rest: Needed<InspectStep, 'points'>): InspectStep => ({
  kind: 'inspect',
  id,
  ...usual,
  by: 'second',
  ...rest,
});

export const faults = (id: StepId, rest: Rest<FaultsStep, never> = {}): FaultsStep => ({
  kind: 'faults',
  id,
  ...usual,
  ...rest,
});
