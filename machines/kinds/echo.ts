import { isByHand, valueNeedsReadBack, weightOf } from '../assurance.ts';
import { keepReading, noteVerdict } from '../judging.ts';
import { freshQuestion, NEXT, pass } from '../progress.ts';
import type { ReadingStep, Step } from '../steps.ts';
import { type Effect, type Look, type Move, note, remark, update } from '../toolkit.ts';
import { isContradicted, setValueAside } from './bus.ts';

/** Says the number again in passing, shows it only where it was typed, and remembers that it may be taken back. */
export const echo = (step: Step): Effect[] => [
  remark(({ event }) => ({
    line: isByHand(event.via) ? 'echoShown' : 'echo',
    values: event.type === 'value' ? { spoken: { brief: event.quantity, si: event.si, asSaid: true } } : {},
  })),
  update(({ context, event }) =>
    event.type === 'value'
      ? {
          echoed: [
            ...context.echoed,
            { step: step.id, quantity: event.quantity, si: event.si, engine: step.engine },
          ],
        }
      : {},
  ),
];

/** A number that needs no read-back passes its step, with its verdict on the record and said again in passing. */
export function passEchoed(step: ReadingStep): Move[] {
  const { judge } = step;
  const needsReadBack = valueNeedsReadBack(weightOf(step), judge);
  const done = pass(step);
  return [
    {
      guard: (look: Look) => !needsReadBack(look) && !isContradicted(look),
      target: done.target,
      actions: [setValueAside, noteVerdict(judge), ...echo(step), keepReading, ...done.actions],
    },
  ];
}

/** "Wrong": the number that was repeated last is asked for again; what has been read back since is not taken back. */
export function takeBack(all: readonly Step[]): Move {
  const last = ({ context }: Look) => context.echoed.at(-1);
  return {
    guard: look => last(look)?.engine === all.find(({ id }) => id === look.context.step)?.engine,
    target: NEXT,
    actions: [
      note(look => {
        const taken = last(look);
        return taken
          ? {
              kind: 'takenBack',
              data: { step: taken.step, quantity: taken.quantity, value: taken.si },
            }
          : null;
      }),
      remark(() => ({ line: 'takenBack', values: {} })),
      update(look => {
        const taken = last(look)?.step;
        const { context } = look;
        const read = context.readings.findLastIndex(({ step }) => step === taken);
        // A gauge that is read again and again keeps what it showed before.
        const watches = all.some(({ id, kind }) => id === taken && kind === 'watch');
        return {
          ...freshQuestion,
          echoed: context.echoed.slice(0, -1),
          done: context.done.filter(id => id !== taken),
          readings: context.readings.filter(
            ({ step }, index) => step !== taken || (watches && index !== read),
          ),
        };
      }),
    ],
  };
}
