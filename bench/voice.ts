import { synthesize } from '../audio-fixtures/synthesize.ts';
import { VOICES } from '../audio-fixtures/voices.ts';
import { createMatcher, type Meaning } from '../src/voice/meaning.ts';
import type { Grammar, Heard, SoundRecognizer } from '../src/voice/ports.ts';
import { createEmbeddedRecognizer } from '../src/voice/recognizers/embedded.ts';
import {
  alwaysSaid,
  representativeGrammars,
  sayingsOf,
  stopSayings,
  stopsInTheMiddle,
  talk,
} from './voice-grammars.ts';
import {
  emptyTally,
  type Listening,
  listenTo,
  quantile,
  speechEndMs,
  type Tally,
  totalOf,
} from './voice-measure.ts';

const recorded = VOICES.filter(voice => voice.made === 'fromRecordings').map(voice => voice.name);
const byRule = VOICES.filter(voice => voice.made === 'byRule').map(voice => voice.name);

/** What the recognizer made of one utterance: the last thing it reported, unless it reported a stop. */
export function outcomeOf({ reports }: Listening): Heard | undefined {
  return (reports.find(({ heard }) => heard.kind === 'stop') ?? reports.at(-1))?.heard;
}

function same(meaning: Meaning | undefined, heard: Heard): boolean {
  if (meaning === undefined || meaning.kind !== heard.kind) return false;
  if (meaning.kind === 'reply') return heard.kind === 'reply' && heard.id === meaning.id;
  return meaning.kind === 'stop' || (heard.kind === 'number' && heard.value === meaning.value);
}

/** Counts an outcome against what was meant; nothing meant (other talk) is right when it is unclear. */
export function count(tally: Tally, meant: Meaning | undefined, heard: Heard | undefined): void {
  const unclear = heard === undefined || heard.kind === 'unclear';
  if (unclear && meant === undefined) tally.right++;
  else if (unclear) tally.unclear++;
  else if (same(meant, heard)) tally.right++;
  else if (heard.kind === 'stop') tally.falseStop++;
  else tally.wrong++;
}

export interface VoiceReport {
  readonly readyMs: number;
  readonly grammarMs: Readonly<Record<string, number>>;
  readonly accuracy: Readonly<Record<string, Tally>>;
  readonly otherTalk: Tally;
  readonly stops: Tally;
  readonly realTimeFactor: number;
  readonly replyLatencyMs: readonly number[];
  readonly stopLatencyMs: readonly number[];
}

/** How long a grammar takes to come into force, a block of silence included. */
async function switchMs(ear: SoundRecognizer, grammar: Grammar): Promise<number> {
  const startMs = performance.now();
  ear.listen(grammar);
  await ear.hear({ samples: new Float32Array(320), sampleRateHz: 16_000 });
  return performance.now() - startMs;
}

/**
 * Measures the embedded recognizer on clean speech of Debian's voices.
 * @param grammars the moments to measure; each hears all its own wordings, numbers of its slot, and
 * talk that it must not take for an answer
 */
export async function measureVoice(
  grammars: readonly Grammar[] = representativeGrammars,
  voices: readonly string[] = recorded,
  complain: (line: string) => void = () => {},
): Promise<VoiceReport> {
  const startMs = performance.now();
  const ear = await createEmbeddedRecognizer();
  const readyMs = performance.now() - startMs;
  const accuracy: Record<string, Tally> = Object.fromEntries(voices.map(voice => [voice, emptyTally()]));
  const grammarMs: Record<string, number> = {};
  const [otherTalk, stops] = [emptyTally(), emptyTally()];
  const replyLatencyMs: number[] = [];
  const stopLatencyMs: number[] = [];
  const spent = { cpuMs: 0, soundMs: 0 };

  async function hear(grammar: Grammar, voice: string, text: string, tally: Tally) {
    const sound = synthesize(voice, text);
    const listening = await listenTo(ear, sound);
    spent.cpuMs += listening.cpuMs;
    spent.soundMs += listening.soundMs;
    const heard = outcomeOf(listening);
    const before = tally.right;
    count(tally, createMatcher(grammar).meaningOf(text), heard);
    if (tally.right === before) complain(`${grammar.key} ${voice} "${text}": ${JSON.stringify(heard)}`);
    const report = listening.reports[0];
    return report === undefined ? undefined : { ...report, lateMs: report.atMs - speechEndMs(sound) };
  }

  for (const [turn, grammar] of grammars.entries()) {
    grammarMs[grammar.key] = await switchMs(ear, grammar);
    const sayings = turn === 0 ? [...sayingsOf(grammar), ...alwaysSaid] : sayingsOf(grammar);
    for (const voice of voices) {
      for (const text of sayings) {
        const report = await hear(grammar, voice, text, accuracy[voice] ?? emptyTally());
        if (report && report.heard.kind !== 'stop') replyLatencyMs.push(report.lateMs);
      }
    }
    for (const [i, text] of [...talk, ...stopSayings, ...stopsInTheMiddle].entries()) {
      const voice = voices[(turn + i) % voices.length] ?? '';
      const isTalk = talk.includes(text);
      const report = await hear(grammar, voice, text, isTalk ? otherTalk : stops);
      if (report?.heard.kind === 'stop' && stopSayings.includes(text)) stopLatencyMs.push(report.lateMs);
    }
  }
  ear.close();
  return {
    readyMs,
    grammarMs,
    accuracy,
    otherTalk,
    stops,
    realTimeFactor: spent.cpuMs / spent.soundMs,
    replyLatencyMs,
    stopLatencyMs,
  };
}

const percent = (part: number, whole: number) => `${((100 * part) / Math.max(whole, 1)).toFixed(1)} %`;

function show(report: VoiceReport): void {
  const line = (name: string, value: string) => console.log(`  ${name.padEnd(44)} ${value}`);
  const lateness = (ms: readonly number[]) =>
    `median ${quantile(ms, 0.5).toFixed(0)}, p95 ${quantile(ms, 0.95).toFixed(0)} ms (${ms.length})`;
  line('ready after', `${report.readyMs.toFixed(0)} ms`);
  line('largest grammar in force after', `${Math.max(...Object.values(report.grammarMs)).toFixed(0)} ms`);
  line('processor time per second of sound', `${report.realTimeFactor.toFixed(3)} s`);
  line('end of speech to reply', lateness(report.replyLatencyMs));
  line('end of stop wording to report', lateness(report.stopLatencyMs));
  for (const [voice, tally] of Object.entries(report.accuracy)) {
    const { right, unclear, wrong, falseStop } = tally;
    const all = totalOf(tally);
    line(
      voice,
      `${percent(right, all)} of ${all} right, ${unclear} unclear, ${wrong} wrong, ${falseStop} stops`,
    );
  }
  const { otherTalk, stops } = report;
  line('other talk rejected', `${percent(otherTalk.right, totalOf(otherTalk))} of ${totalOf(otherTalk)}`);
  line('  taken for a stop', `${otherTalk.falseStop}`);
  line('stop wordings heard', `${percent(stops.right, totalOf(stops))} of ${totalOf(stops)}`);
}

/** Clean speech of all voices, and what is heard wrong. Voices made by rule are shown apart. */
export async function benchVoice(grammars: readonly Grammar[] = representativeGrammars): Promise<void> {
  console.log('Voices built from recorded speech, clean');
  show(await measureVoice(grammars, recorded, line => console.log(`    ${line}`)));
  console.log('Voices made by rule, clean');
  show(await measureVoice(grammars, byRule));
}
