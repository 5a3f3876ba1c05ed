import { type Finding, findingsAt, type Passing } from '../findings.ts';
import { leaveOpen } from '../open-items.ts';
import { stopFor } from '../progress.ts';
import type { InspectStep } from '../steps.ts';
import { atMs, type Effect, type Look, type Move, note, remark, update } from '../toolkit.ts';
import type { Cause, InspectPoint } from '../vocabulary.ts';
import { setAside, type Trouble } from './question.ts';

/** Seconds for which the engine has run since it fired last; null where it has not. While it stood it did not warm. */
const sinceFireS = ({ context: { runsSinceMs }, event }: Look): number | null =>
  runsSinceMs === null ? null : (atMs(event) - runsSinceMs) / 1000;

const isLate = ({ until }: Passing, look: Look) => {
  const seconds = sinceFireS(look);
  return seconds === null || seconds > until.seconds;
};

const noteFound = (step: InspectStep, point: InspectPoint, { reply, does }: Finding, late = false): Effect =>
  note(look => ({
    kind: 'found',
    data: { step: step.id, point, finding: reply, does: late ? 'stops' : does, afterS: sinceFireS(look) },
  }));

const tell = (line: Finding['means'], hazard = false) =>
  remark(() => ({ line, values: {}, priority: hazard ? 'hazard' : 'notice' }));

/** What stops at once, whoever says it. */
export const troublesAt = (step: InspectStep, point: InspectPoint, cause: Cause | null): Trouble[] =>
  findingsAt[point].flatMap(finding =>
    finding.does === 'stops'
      ? [
          {
            reply: finding.reply,
            cause: finding.cause ?? cause,
            actions: [noteFound(step, point, finding), tell(finding.means, true)],
          },
        ]
      : [],
  );

/**
 * What does not stop the engine: it is looked at again, or left open once it has been read back. Smoke and noise of a
 * cold engine that are still there when they should have gone mean something else, and stop.
 */
export function othersAt(
  step: InspectStep,
  point: InspectPoint,
  readBackState: string,
): { readonly reply: Finding['reply']; readonly move: Move }[] {
  return findingsAt[point].flatMap((finding): { reply: Finding['reply']; move: Move }[] => {
    const { reply, means } = finding;
    if (finding.does !== 'open')
      return finding.does === 'stops'
        ? []
        : [{ reply, move: { actions: [noteFound(step, point, finding), tell(means)] } }];
    const { until } = finding;
    const stop = stopFor(until.cause);
    return [
      {
        reply,
        move: {
          guard: look => isLate(finding, look),
          target: stop.target,
          actions: [noteFound(step, point, finding, true), tell(until.means, true), ...stop.actions],
        },
      },
      { reply, move: { target: readBackState, actions: [tell(means), setAside(reply)] } },
    ];
  });
}

/** What was read back is left open and the list goes on. */
export const leftOpenHere = (step: InspectStep, point: InspectPoint): Effect[] => {
  const found = ({ context: { pending } }: Look) =>
    findingsAt[point].find(({ reply }) => pending?.kind === 'reply' && pending.id === reply);
  return [
    note(look => {
      const finding = found(look);
      return finding
        ? {
            kind: 'found',
            data: {
              step: step.id,
              point,
              finding: finding.reply,
              does: finding.does,
              afterS: sinceFireS(look),
            },
          }
        : null;
    }),
    ...leaveOpen(look => ({
      step: step.id,
      ...(look.context.pending?.kind === 'reply' ? { finding: look.context.pending.id } : {}),
    })),
    update(() => ({ pending: null, misheard: 0 })),
  ];
};
