import { phaseOf } from '../../machines/build-step.ts';
import type { Context, OpenItem } from '../../machines/context.ts';
import { isByKey, switchedOff } from '../../machines/controls.ts';
import { judgeSessionFault } from '../../machines/faults.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { silenceEndsMs } from '../../machines/kinds/unanswered.ts';
import { controlsOf, isOver, type Moment, offerOf, outcomeOf } from '../../machines/moment.ts';
import { beforeFirstFire } from '../../machines/phases/06-first-fire.ts';
import { gateMet, isDone } from '../../machines/progress.ts';
import type { Step } from '../../machines/steps.ts';
import { leftMs } from '../../machines/timing.ts';
import type { Person, Quantity } from '../../machines/vocabulary.ts';
import type { Language, ReplyId } from '../../prompts/types.ts';
import { isQuantity } from '../engineering/quantities/table.ts';
import type { Data } from '../record/vocabulary/index.ts';
import type { EarLevel } from '../voice/ports.ts';
import { CallOuts } from './call-outs.ts';
import { elapsedText } from './clock-text.ts';
import type { EngineEarLink } from './engine-ear/join-engine-ear.ts';
import { grammarOf, isControl } from './grammar.ts';
import type { Happening } from './happening.ts';
import type { Session } from './session.ts';
import { shownUnit, type UnitSystem } from './units.ts';
import type { BusLink } from './vehicle/join-bus.ts';
import type { BusView, EngineEarView, HearingView, LogLine, ReadingView, View } from './view.ts';
import { showFailureMode, showMeasure, showNumber, showValue, stepTitle, wordSaid } from './wording.ts';

const LOG_LINES = 50;
const PROBLEMS = 5;
const DRILL: ReplyId = 'thatWasTheDrill';

interface SeenVerdict {
  readonly quantity: Quantity;
  readonly value: number;
  readonly met: boolean;
  readonly min?: number;
  readonly max?: number;
}

type Judged = Pick<Data<'verdict'>, 'quantity' | 'value' | 'met' | 'min' | 'max'>;

function seenIn({ quantity, value, met, min, max }: Judged): SeenVerdict | null {
  if (quantity == null || value == null || !isQuantity(quantity)) return null;
  return { quantity, value, met, ...(min == null ? {} : { min }), ...(max == null ? {} : { max }) };
}

/** Follows a session and makes, at any time, the one picture that all faces show. */
export class Viewer {
  readonly #session: Session;
  readonly #silent: boolean;
  readonly #steps: readonly Step[];
  #log: LogLine[] = [];
  #problems: string[] = [];
  #notKept: string | null = null;
  #verdicts = new Map<Quantity, SeenVerdict>();
  #hearing: HearingView;
  #bus: BusLink | null = null;
  #engineEar: EngineEarLink | null = null;
  #sights: readonly string[] | null = null;
  #remark = '';
  readonly #callOuts = new CallOuts();
  readonly #watchers = new Set<() => void>();

  /** @param silent nobody hears what the tool says: it is not shown as speaking */
  constructor(session: Session, source: string, silent = false) {
    this.#session = session;
    this.#silent = silent;
    this.#steps = procedureFor(session.parts.profile);
    this.#hearing = { source, levelDbfs: null, clipping: false, speech: false, speaking: false, last: null };
    session.watch(happening => {
      if (happening) this.#take(happening);
      this.#changed();
    });
  }

  watch(watcher: () => void): () => void {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  }

  /** What the ear reports, for the level meter. */
  level({ levelDbfs, clipping, speech }: EarLevel): void {
    this.#hearing = { ...this.#hearing, levelDbfs, clipping, speech };
    this.#changed();
  }

  /** Readings that were judged before the session broke off: they are shown again when it is gone on with. */
  recall(verdicts: readonly Data<'verdict'>[]): void {
    for (const verdict of verdicts) this.#judged(verdict);
    this.#changed();
  }

  /** The ear is another one now: a microphone that vanished leaves the keys. */
  listensWith(source: string): void {
    this.#hearing = { ...this.#hearing, source, levelDbfs: null, clipping: false, speech: false };
    this.#changed();
  }

  /** A vehicle bus is joined: what it shows is shown from now on; to be called again when that may have changed. */
  showsBus(bus: BusLink): void {
    this.#bus = bus;
    this.#changed();
  }

  /** The engine is listened for: what is heard of it is shown from now on; to be called again when that has changed. */
  showsEngineEar(ear: EngineEarLink): void {
    this.#engineEar = ear;
    this.#changed();
  }

  /** In a rehearsal: what there is to see at the engine now. */
  sees(sights: readonly string[]): void {
    if (sights.join('\n') === this.#sights?.join('\n')) return;
    this.#sights = sights;
    this.#changed();
  }

  view(): View {
    const { moment, parts, speaking } = this.#session;
    const { units, profile, clock } = parts;
    const { language } = this.#session;
    const { context } = moment;
    const offer = offerOf(moment);
    const grammar = grammarOf(moment, language, units, 'keys');
    const callOuts = this.#callOuts.shown(moment);
    const phases = [...new Set(this.#steps.map(step => phaseOf(step.id)))];
    const phase = phaseOf(context.step);
    const step = this.#steps.find(each => each.id === context.step);
    const coming = isOver(moment) ? [] : comingToSecond(this.#steps, context, language);
    return {
      profileName: profile.name,
      invented: profile.invented,
      ...(parts.rehearsal ? { rehearsal: true } : {}),
      ...(isByKey(profile) ? {} : { switchedOff: showValue(switchedOff(profile), language, units) }),
      state: stateOf(moment),
      drill: isDrill(moment),
      ...(offer.awaits === 'drill' ? { emergencyWord: shortest(language.stopWordings) } : {}),
      key: grammar.key,
      phase: (language.phases as Readonly<Record<string, string>>)[phase] ?? phase,
      phaseNumber: phases.indexOf(phase) + 1,
      phaseCount: phases.length,
      title: offer.group ? language.groups[offer.group].title : stepTitle(language, context.step),
      prompt: context.lastSaid ? wordSaid(context.lastSaid, language, units).shown : '',
      ...(this.#remark === '' ? {} : { remark: this.#remark }),
      ...(callOuts.length === 0 ? {} : { callOuts }),
      ...(coming.length === 0 ? {} : { coming }),
      addressed: offer.by,
      addressedName: nameOf(offer.by, context),
      engine: engineOf(moment, step),
      choices: grammar.replies
        .filter(({ id }) => !isControl(language, id))
        .map(({ wordings }) => wordings[0] ?? ''),
      controls: controlsOf(moment).map(id => language.controls[id][0] ?? id),
      number: grammar.number
        ? {
            name: isQuantity(grammar.number.id)
              ? language.quantities[grammar.number.id].name
              : grammar.number.id,
            unit: grammar.number.units[0] ?? '',
            // What is shown is what is to be expected here; a gauge may show more, and that is taken.
            min: (grammar.number.inWords ?? grammar.number).min,
            max: (grammar.number.inWords ?? grammar.number).max,
          }
        : null,
      timer: timerOf(context, clock.nowMs(), language),
      readings: [...this.#verdicts.values()].map(verdict => this.#readingView(verdict)),
      ...(this.#bus ? { bus: busView(this.#bus, language, units) } : {}),
      ...(this.#engineEar ? { engineEar: engineEarView(this.#engineEar, language, units) } : {}),
      gates: beforeFirstFire(profile).map(gate => ({
        gate,
        name: language.gates[gate],
        met: gateMet(this.#steps, context, gate),
      })),
      faults: context.faults.map(fault => {
        const { code } = judgeSessionFault(context, fault, clock.nowMs());
        const meaning = code ? showFailureMode(code.fmi.number, language) : '?';
        return `SPN ${fault.spn} FMI ${fault.fmi}: ${meaning}`;
      }),
      openItems: [
        ...context.skips.map(skip => stepTitle(language, skip.step)),
        ...context.openItems.map(item => openItemText(item, language, units)),
      ],
      hearing: { ...this.#hearing, speaking: speaking && !this.#silent },
      log: this.#log,
      problems: [
        ...this.#problems,
        ...(this.#session.inNoise ? [language.lines.bayLoud] : []),
        ...(this.#notKept === null ? [] : [this.#notKept]),
      ],
      ...(this.#sights ? { sights: this.#sights } : {}),
      outcome: isOver(moment) ? outcomeOf(moment) : null,
    };
  }

  #readingView({ quantity, value, met, min, max }: SeenVerdict): ReadingView {
    const { language, units } = this.#session.parts;
    const unit = shownUnit(quantity);
    const show = (si: number) => showNumber(si, unit, language, units);
    const limits =
      min !== undefined && max !== undefined
        ? `${show(min)}–${show(max)}`
        : min !== undefined
          ? `≥ ${show(min)}`
          : max !== undefined
            ? `≤ ${show(max)}`
            : '';
    return {
      name: language.quantities[quantity].name,
      value: showMeasure(value, unit, language, units),
      limits,
      met,
    };
  }

  #take(happening: Happening): void {
    switch (happening.kind) {
      case 'said':
        this.#show(happening);
        this.#write(happening.atMs, happening.hazard ? '!' : 'says', happening.shown);
        break;
      case 'heard':
        if (happening.counted) this.#callOuts.answered(this.#session.moment);
        this.#hearing = {
          ...this.#hearing,
          last: { text: happening.text, counted: happening.counted, by: happening.by },
        };
        this.#write(happening.atMs, 'heard', happening.counted ? happening.text : `? ${happening.text}`);
        break;
      case 'noted': {
        if (happening.note.kind === 'verdict') this.#judged(happening.note.data);
        break;
      }
      case 'problem':
        if (!this.#problems.includes(happening.sentence))
          this.#problems = [...this.#problems, happening.sentence].slice(-PROBLEMS);
        break;
      case 'notKept':
        this.#notKept = happening.sentence;
        break;
    }
  }

  #judged(data: Judged): void {
    const verdict = seenIn(data);
    if (!verdict) return;
    this.#verdicts.delete(verdict.quantity);
    this.#verdicts.set(verdict.quantity, verdict);
  }

  #show({ hazard, asks, line, shown, inPassing }: Extract<Happening, { readonly kind: 'said' }>): void {
    const { moment } = this.#session;
    if (hazard) {
      this.#callOuts.called(line, shown, moment);
      return;
    }
    if (asks || inPassing !== '') this.#remark = inPassing;
    if (asks) this.#callOuts.asked(moment);
  }

  /** Shows a sentence that the record has no place for: it is closed. */
  showProblem(sentence: string): void {
    this.#take({ kind: 'problem', sentence });
    this.#changed();
  }

  #write(atMs: number, who: string, text: string): void {
    this.#log = [...this.#log, { time: elapsedText(atMs), who, text }].slice(-LOG_LINES);
  }

  #changed(): void {
    for (const watcher of this.#watchers) watcher();
  }
}

const busView = (
  { source, state, quantities, look }: BusLink,
  language: Language,
  units: UnitSystem,
): BusView => ({
  source,
  state: state(),
  values: quantities.map(quantity => {
    const si = look.value(quantity);
    return {
      name: language.quantities[quantity].name,
      value: si === null ? null : showMeasure(si, shownUnit(quantity), language, units),
    };
  }),
});

function engineEarView(ear: EngineEarLink, language: Language, units: UnitSystem): EngineEarView {
  const { rpm, trace, hunting, change, microphone } = ear.state();
  const show = (value: number) => showMeasure(Math.round(value), 'rpm', language, units);
  return {
    speed: rpm === null ? null : show(rpm),
    trace: [...trace],
    ...(microphone === '' ? {} : { microphone }),
    ...(hunting ? { hunting: `${show(hunting.amplitudeRpm)}, ${hunting.periodS.toFixed(1)} s` } : {}),
    ...(change
      ? {
          change: `${change.db > 0 ? '+' : ''}${Math.round(change.db)} dB, ${change.fromHz}-${change.toHz} Hz`,
        }
      : {}),
  };
}

function stateOf(moment: Moment): View['state'] {
  if (isOver(moment)) return 'over';
  if (moment.matches('held')) return 'held';
  return moment.matches('stopped') ? 'stopped' : 'working';
}

const shortest = (wordings: readonly string[]): string =>
  wordings.reduce((one, other) => (other.length < one.length ? other : one));

/** A stop word was tried out: the next is awaited, or somebody may say that this was it. */
const isDrill = (moment: Moment) => {
  const { replies, awaits } = offerOf(moment);
  return moment.matches('stopped') && (awaits === 'drill' || replies.includes(DRILL));
};

function engineOf(moment: Moment, step: Step | undefined): View['engine'] {
  if (moment.hasTag('cranking')) return 'cranking';
  if (moment.matches('stopped'))
    return step === undefined || step.engine === 'off' || moment.hasTag('madeSafe') ? 'off' : 'unsure';
  return step?.engine === 'running' ? 'running' : 'off';
}

/** What counts down: a hold or a burst, or else the time within which an answer is awaited. */
function timerOf(context: Context, nowMs: number, language: Language): View['timer'] {
  const { timer, deadline, heldSinceMs, unanswered, step } = context;
  const title = stepTitle(language, step);
  const holdEndsMs = heldSinceMs === null ? null : silenceEndsMs(context);
  // Beside a running engine what counts is how long it may still be held.
  if (holdEndsMs !== null && unanswered)
    return {
      title,
      totalMs: holdEndsMs - unanswered.sinceMs,
      leftMs: Math.max(0, holdEndsMs - nowMs),
      held: false,
    };
  const left = leftMs(context, nowMs);
  if (timer && left !== null)
    return { title, totalMs: timer.totalMs, leftMs: left, held: heldSinceMs !== null };
  if (!deadline) return null;
  const totalMs = deadline.atMs - deadline.sinceMs;
  return { title, totalMs, leftMs: Math.max(0, deadline.atMs - nowMs), held: false };
}

/** Where it is, and the value or what was found there. */
const openItemText = ({ step, quantity, si, finding }: OpenItem, language: Language, units: UnitSystem) =>
  [
    stepTitle(language, step),
    ...(quantity === undefined || si === undefined
      ? []
      : [showMeasure(si, shownUnit(quantity), language, units)]),
    ...(finding === undefined ? [] : [language.replies[finding][0]]),
  ].join(' ');

const COMING = 2;

/** What is asked together is one question. */
const groupOf = (step: Step | undefined) => (step?.kind === 'confirm' ? step.together?.group : undefined);

/** Steps after this one in which the second person is asked: theirs, and those before which they say clear. */
function comingToSecond(steps: readonly Step[], context: Context, language: Language) {
  // Their word has been heard, and waits only for somebody to say that it was the drill.
  const isHeard = (id: Step['id']) => context.stop?.drilled.includes(id) === true;
  const left = steps.filter(
    ({ id, when }) => (when?.(context) ?? true) && !isDone(context, id) && !isHeard(id),
  );
  let away = -1;
  return left
    .map((step, index) => {
      const [group, groupBefore] = [groupOf(step), groupOf(left[index - 1])];
      if (group === undefined || group !== groupBefore) away += 1;
      return { step, away };
    })
    .filter(each => each.away > 0 && (each.step.by === 'second' || each.step.kind === 'crank'))
    .slice(0, COMING)
    .map(each => ({ title: stepTitle(language, each.step.id), away: each.away }));
}

const nameOf = (person: Person, { job }: Context) => job[person];
