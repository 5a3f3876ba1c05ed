import type { ReplyId } from '../prompts/types.ts';
import type { Context } from './context.ts';
import { switchedOff } from './controls.ts';
import { cutOffOf } from './cut-off.ts';
import { emergencyIn, helpLines, isEmergency } from './emergency.ts';
import { isReply } from './kinds/question.ts';
import type { Step } from './steps.ts';
import { lookDue } from './timing.ts';
import {
  atMs,
  type Effect,
  type Line,
  type Look,
  type Node,
  remark,
  speak,
  update,
  withMeta,
} from './toolkit.ts';
import type { Cause, Emergency } from './vocabulary.ts';

/** What is called out at once for a cause, if anything is. */
export function callForHelp(cause: Cause): Effect[] {
  return isEmergency(cause)
    ? [remark(() => ({ line: helpLines[cause], values: {}, priority: 'hazard' }))]
    : [];
}

/** The one question while everything is made safe. */
export const allOff = () => ({ line: 'areAllOff', values: {} }) as const;

/** "Not yet" is nothing to wait for: what to do is said once more, and the question put again. */
export const notOffYet = (node: Node): Node => ({
  ...node,
  on: {
    ...node.on,
    reply: [
      {
        guard: isReply('notYet'),
        actions: [
          remark(({ context }) => ({
            line: 'notOffYet',
            values: { off: switchedOff(context.profile) },
            priority: 'hazard',
          })),
          ...speak(allOff),
        ],
      },
      ...[node.on?.reply ?? []].flat(),
    ],
  },
});

/** From the second call on. */
const CUT_FROM_MS = 30_000;

const calledForMs = ({ context: { stop }, event }: Look) => atMs(event) - (stop?.atMs ?? atMs(event));

/**
 * After fifteen seconds, then each half minute, after ten minutes each minute. The longest of the sentences takes some
 * fifteen seconds, and while the tool speaks nothing but a stop is heard: as much time is left for "all off". Our own
 * choice, no published source.
 */
function callAgainLater(look: Look): Pick<Context, 'nextLookMs'> {
  const forMs = calledForMs(look);
  return {
    nextLookMs: atMs(look.event) + (forMs < CUT_FROM_MS ? 15_000 : forMs < 600_000 ? 30_000 : 60_000),
  };
}

/** What is called out as everything stops, and what is taken before all is off: an engine that runs on, fire, injury. */
export function urgentWords(steps: readonly Step[]) {
  const engineOf = ({ context }: Look) =>
    steps.find(({ id }) => id === (context.stop?.step ?? context.step))?.engine ?? 'off';
  /** A false alarm is no danger to call out. */
  const causeOf = ({ context: { stop } }: Look) =>
    stop?.cause === 'falseAlarm' ? null : (stop?.cause ?? null);
  /** The key alone may not stop it: it ran away, fired without fuel, runs unasked, or somebody has to call once more beside one that ran. */
  const keyMayNotDo = (look: Look) =>
    [causeOf(look), ...(look.context.stop?.also ?? [])].some(
      known => known === 'overspeed' || known === 'firedUnfuelled' || known === 'runsUnasked',
    ) ||
    (look.context.stop?.insisted === true && engineOf(look) !== 'off');
  const callOut = remark(look => {
    const known = causeOf(look);
    const off = switchedOff(look.context.profile);
    if (keyMayNotDo(look)) {
      const cut = cutOffOf(look.context);
      return known
        ? { line: 'stopCauseCut', values: { cause: { cause: known }, off, cut }, priority: 'hazard' }
        : { line: 'stopHeardCut', values: { off, cut }, priority: 'hazard' };
    }
    return known
      ? { line: 'stopCause', values: { cause: { cause: known }, off }, priority: 'hazard' }
      : { line: 'stopHeard', values: { off }, priority: 'hazard' };
  });

  /** The starter turns it, as far as anybody knows: it has not fired. */
  const onStarter = (look: Look) => engineOf(look) === 'cranking' && causeOf(look) !== 'firedUnfuelled';
  /** The key did not stop it: that is found, whatever cause is named afterwards. */
  const ranOn: Effect[] = [
    update(look => {
      const { stop } = look.context;
      const found = onStarter(look) ? 'other' : 'overspeed';
      return { stop: stop && { ...stop, also: [...new Set([...stop.also, found] as const)] } };
    }),
    remark(look => ({
      line: onStarter(look) ? 'starterHangs' : 'stillRunning',
      values: { cut: cutOffOf(look.context) },
      priority: 'hazard',
    })),
  ];
  /** Help first. */
  const emergency = (named: Emergency): Effect[] => [
    update(({ context: { stop } }) => ({ stop: stop && { ...stop, ...emergencyIn(stop, named) } })),
    ...callForHelp(named),
  ];
  const urgent: readonly { readonly reply: ReplyId; readonly actions: Effect[] }[] = [
    { reply: 'stillRunning', actions: ranOn },
    { reply: 'causeSmokeOrFire', actions: emergency('smokeOrFire') },
    { reply: 'causeSomeoneHurt', actions: emergency('someoneHurt') },
  ];

  const mayTurn = (look: Look) => engineOf(look) !== 'off' || keyMayNotDo(look);
  /** Nobody may be there, or nobody hears: what to do is called out again and again, from the second time with what cuts it off. */
  const untilAllOff = (node: Node, ask: Line): Node => ({
    ...node,
    entry: [...[node.entry ?? []].flat(), update(look => (mayTurn(look) ? callAgainLater(look) : {}))],
    exit: [...[node.exit ?? []].flat(), update(() => ({ nextLookMs: null }))],
    on: {
      ...node.on,
      clock: {
        guard: lookDue,
        actions: [
          remark(look => {
            const off = switchedOff(look.context.profile);
            return calledForMs(look) < CUT_FROM_MS
              ? { line: 'notOffYet', values: { off }, priority: 'hazard', once: true }
              : {
                  line: 'stopHeardCut',
                  values: { off, cut: cutOffOf(look.context) },
                  priority: 'hazard',
                  once: true,
                };
          }),
          ...speak(ask),
          update(callAgainLater),
        ],
      },
    },
  });

  /** Whoever says it and however often something was misheard, it counts; then all off is asked for again. */
  const whileMakingSafe = (node: Node, ask: Line): Node => {
    const calling = untilAllOff(node, ask);
    const urgentReplies = urgent.map(({ reply }) => reply);
    return {
      ...withMeta(calling, {
        replies: [...new Set([...(node.meta?.replies ?? []), ...urgentReplies])],
        anybodys: urgentReplies,
      }),
      on: {
        ...calling.on,
        reply: [
          ...urgent.map(({ reply, actions }) => ({
            guard: isReply(reply),
            target: 'makingSafe',
            reenter: true,
            actions,
          })),
          ...[node.on?.reply ?? []].flat(),
        ],
      },
    };
  };
  return { callOut, whileMakingSafe };
}
