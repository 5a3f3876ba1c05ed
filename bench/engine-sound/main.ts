import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { speakerSets } from '../hearing/material.ts';
import { addTo, heardIn, type Measured, measure, type Tally, tally } from './measure.ts';
import { type Beside, besides, noiseBeside } from './noise.ts';
import { notReached } from './not-reached.ts';
import { heardInRecording, type RecordedSecond } from './recorded.ts';

const { values: options } = parseArgs({
  options: {
    development: { type: 'boolean', default: false },
    seeds: { type: 'string', default: '1' },
    levels: { type: 'string', default: '10,0,-6' },
    beside: { type: 'string', default: besides.join(',') },
    write: { type: 'boolean', default: false },
    recorded: { type: 'string' },
    'full-scale-rpm': { type: 'string', default: '1' },
    cylinders: { type: 'string', default: '4' },
  },
});

const set = options.development ? speakerSets.development : speakerSets.test;
const PAGE = new URL('../../docs/engine-sound.md', import.meta.url);
const SEEDS = Number(options.seeds);
const kinds = besides.filter(kind => options.beside.split(',').includes(kind));

interface Sum {
  readonly cranking: Tally;
  readonly running: Tally;
  readonly standing: Tally;
  wrong: number;
  seconds: number;
  fired: (number | null)[];
  stalled: (number | null)[];
  falsely: number;
  huntingRight: number;
}

const empty = (): Sum => ({
  cranking: tally(),
  running: tally(),
  standing: tally(),
  wrong: 0,
  seconds: 0,
  fired: [],
  stalled: [],
  falsely: 0,
  huntingRight: 0,
});

function add(sum: Sum, measured: Measured): void {
  addTo(sum.cranking, measured.cranking);
  addTo(sum.running, measured.running);
  addTo(sum.standing, measured.standing);
  for (const each of [measured.cranking, measured.running, measured.standing, measured.changing]) {
    sum.wrong += each.wrong;
    sum.seconds += each.seconds;
  }
  sum.fired.push(measured.firedAfterS);
  sum.stalled.push(measured.stalledAfterS);
  sum.falsely += measured.falselyFired + measured.falselyStalled;
  sum.huntingRight += measured.huntingRight ? 1 : 0;
}

const percent = (part: number, of: number) => (of === 0 ? '-' : `${((100 * part) / of).toFixed(0)}`);
const within = (times: readonly (number | null)[], limitS: number) =>
  `${times.filter(time => time !== null && time <= limitS).length} of ${times.length}`;

const row = (name: readonly string[], sum: Sum) =>
  [
    ...name,
    percent(sum.running.right, sum.running.seconds),
    percent(sum.cranking.right, sum.cranking.seconds),
    percent(sum.standing.silent, sum.standing.seconds),
    `${sum.wrong} in ${sum.seconds}`,
    within(sum.fired, 1),
    within(sum.stalled, 1.5),
    `${sum.falsely}`,
    `${sum.huntingRight} of ${sum.fired.length}`,
  ].join(' | ');

const head = (names: readonly string[]) => {
  const all = [
    ...names,
    'running within 2 %',
    'cranking within 2 %',
    'standing: silent',
    'wrong seconds',
    'fired within 1 s',
    'stalled within 1.5 s',
    'falsely fired or stalled',
    'hunting right',
  ];
  return `| ${all.join(' | ')} |\n|${all.map(() => '---').join('|')}|`;
};

/** Evenly fired ones, and one whose firings lie 150 and 90 degrees apart in turn. */
const engines = [
  ...[4, 6, 8].map(cylinders => ({ cylinders, strokes: 4 as const })),
  { cylinders: 6, strokes: 4 as const, unevenDeg: [0, 150, 240, 390, 480, 630] },
];

let cpuS = 0;
let soundS = 0;

/** Every condition once for each seed; summed by what is asked for. */
function measureAll(): { byNoise: string[]; byEngine: string[] } {
  const byNoise = new Map<string, Sum>();
  const byEngine = new Map<string, Sum>();
  const into = (map: Map<string, Sum>, key: string) => {
    const sum = map.get(key) ?? empty();
    map.set(key, sum);
    return sum;
  };
  const asked = options.levels.split(',').map(Number);
  const levels = (kind: Beside) => (kind === 'talk' || kind === 'tools' ? asked : [0]);
  for (const kind of kinds)
    for (const snrDb of levels(kind))
      for (const firing of engines)
        for (const headset of [false, true])
          for (let seed = 1; seed <= SEEDS; seed++) {
            const { cylinders } = firing;
            const odd = 'unevenDeg' in firing;
            const sceneSeed = set.seed + 31 * seed + cylinders + (headset ? 7 : 0) + (odd ? 3 : 0);
            const measured = measure({ firing, beside: kind, snrDb, headset, seed: sceneSeed }, set);
            cpuS += measured.cpuShare * measured.soundS;
            soundS += measured.soundS;
            add(into(byNoise, `${kind} | ${kind === 'quiet' ? '' : snrDb}`), measured);
            if ((kind === 'talk' || kind === 'tools') && snrDb === 0)
              add(
                into(byEngine, `${cylinders}${odd ? ' odd' : ''} | ${headset ? '100 Hz' : 'none'}`),
                measured,
              );
            console.log(
              `| ${row([`${kind} ${snrDb} dB, ${cylinders}${odd ? ' odd' : ''} cyl${headset ? ', headset' : ''}`], sumOf(measured))} |`,
            );
          }
  const lines = (map: Map<string, Sum>) => [...map].map(([name, sum]) => `| ${row([name], sum)} |`);
  return { byNoise: lines(byNoise), byEngine: lines(byEngine) };
}

function sumOf(measured: Measured): Sum {
  const sum = empty();
  add(sum, measured);
  return sum;
}

/** Talk, tools and radio with no engine at all: nothing may be claimed. */
function withoutEngine(): string[] {
  return (['talk', 'tools', 'babble', 'radio', 'fan'] as const)
    .filter(kind => kinds.includes(kind))
    .map(kind => {
      let [seconds, claimed] = [0, 0];
      for (let seed = 0; seed < 4; seed++) {
        const noise = noiseBeside(kind, { ...set, seed: set.seed + seed });
        const { heard } = heardIn(noise, { cylinders: [4, 6, 8][seed % 3] ?? 4, strokes: 4 });
        seconds += Math.floor(noise.length / 16_000);
        claimed += new Set(heard.filter(({ claim }) => claim).map(({ toldS }) => Math.floor(toldS))).size;
      }
      const line = `| ${kind} | ${seconds} | ${claimed} |`;
      console.log(line);
      return line;
    });
}

function recordedLines(seconds: readonly RecordedSecond[]): string[] {
  const range = seconds.filter(({ statedRpm }) => statedRpm <= 3_000);
  const off = ({ heardRpm, statedRpm }: RecordedSecond) =>
    heardRpm === null ? null : Math.abs(heardRpm / statedRpm - 1);
  const right = range.filter(each => (off(each) ?? 1) <= 0.02).length;
  const wrong = range.filter(each => (off(each) ?? 0) > 0.05).length;
  const likely = range.filter(
    ({ likeliestRpm, statedRpm }) => Math.abs(likeliestRpm / statedRpm - 1) <= 0.02,
  ).length;
  return [
    `Of ${range.length} seconds up to 3,000 rpm, ${right} within 2 % of what is stated, ${wrong} more than 5 % off; of what was`,
    `likeliest, as of an engine that was followed up to there, ${likely} within 2 %, sure enough to be told or not.`,
    '',
    '| at, s | stated, rpm | heard, rpm | likeliest, rpm | how sure |',
    '|---|---|---|---|---|',
    ...range.map(
      ({ atS, statedRpm, heardRpm, likeliestRpm, certainty }) =>
        `| ${atS.toFixed(1)} | ${statedRpm.toFixed(0)} | ${heardRpm === null ? 'not told' : heardRpm.toFixed(0)} | ${likeliestRpm.toFixed(0)} | ${certainty.toFixed(2)} |`,
    ),
  ];
}

const recorded = options.recorded
  ? recordedLines(
      await heardInRecording({
        file: options.recorded,
        firing: { cylinders: Number(options.cylinders), strokes: 4 },
        fullScaleRpm: Number(options['full-scale-rpm']),
      }),
    )
  : [];
for (const line of recorded) console.log(line);
if (!options.recorded || options.write) {
  const { byNoise, byEngine } = measureAll();
  const alone = withoutEngine();
  const page = `# Engine speed by ear

Written by \`npm run engine-sound -- --write\`; what is measured stands in \`bench/engine-sound\`. The engines are made
(\`src/rehearsal/sound\`), each from a seed: uneven cylinders, spread from cycle to cycle, jitter, gears, fan, starter; their
speed is known at every moment. Each scene is a start of a minute: standing, five seconds of cranking (110 to 250 rpm,
sagging), idle (hunting in every other one), sweeps to 3,000 rpm and back, stall. The noise follows the engine, so that it
stands at the named level beside every speed; where the engine stands it is as loud as beside an idle. "Headset" is a
high-pass of 24 dB an octave at 100 Hz. Voices are those of the test set of the hearing bench. A second counts as within
2 % by the last speed that was told for a moment in it; a second is wrong in which a speed was told that is more than 5 %
from every speed that the engine had in the last second. Hunting is right where it is told with its amplitude and period
within 20 %, or not told of an idle that does not hunt. "Odd" are firings 150 and 90 degrees apart in turn. Set: ${set.name}, ${SEEDS} scene${SEEDS === 1 ? '' : 's'} of each kind.

${notReached}

## By what sounds beside it, all engines

${head(['beside', 'dB above it'])}
${byNoise.join('\n')}

## By cylinders and microphone, talk and tools at 0 dB

${head(['cylinders', 'high-pass'])}
${byEngine.join('\n')}

## With no engine at all

| sound | seconds | seconds in which a speed was told |
|---|---|---|
${alone.join('\n')}

## Cost

${((100 * cpuS) / soundS).toFixed(1)} % of a core (processor time of the whole path; shared machine).
${
  recorded.length === 0
    ? ''
    : `
## A recorded engine

A four-cylinder petrol car accelerating in gear, recorded inside it with its tachometer as the second channel:
\`pyansys-sound/accel_with_rpm.wav\` of github.com/ansys/example-data (MIT), commit 246c578baab2, not in this repository. Full
scale of the second channel is 4,821.43 rpm, by the file's own label. Given by \`--recorded FILE --full-scale-rpm 4821.43
--cylinders 4\`. In gear and with road noise hardly more than one line of it is there, which for an engine that is new is not
taken for one. Other recordings that are free and come with a speed were looked for and not found: what there is states none,
or has no licence.

${recorded.join('\n')}
`
}`;
  if (options.write) writeFileSync(PAGE, page);
}
