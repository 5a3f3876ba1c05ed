/**
 * Writes docs/rehearsal-faults.md: each fault that can be rehearsed, run through a real session with the virtual
 * technician, with and without the vehicle bus. Run: node --import tsx docs/rehearsal-faults.ts
 */
import { writeFileSync } from 'node:fs';
import type { FaultDebrief } from '../src/rehearsal/debrief.ts';
import { faultKinds, faultNames } from '../src/rehearsal/faults.ts';
import { faceWords } from '../src/terminal/face/words/index.ts';
import { rehearseFast } from '../tests/rehearsal/run.ts';

/** Each fault where it comes by itself, and the dangerous ones again while the engine runs. */
const runs = [
  ...faultNames,
  'slowOilPressure@firstFire',
  'noOilPressure@warmUp',
  'airInFuel@prime',
  'sensorUnplugged@checks',
];

const ways: Record<NonNullable<FaultDebrief['noticed']>['by'], string> = {
  stop: 'stop:',
  line: 'says',
  reading: 'refuses the reading at',
  code: 'judges SPN',
};

const seen = ({ noticed }: FaultDebrief): string =>
  noticed
    ? `${ways[noticed.by]} ${noticed.what}, in ${noticed.step}, after ${Math.round(noticed.afterS)} s`
    : '**not caught**';

function expected(fault: FaultDebrief['fault']): string {
  const { stops = [], lines = [], unmet = [], codes = [] } = faultKinds[fault].caughtBy;
  return [
    ...stops.map(cause => `stop: ${cause}`),
    ...lines.map(line => `says ${line}`),
    ...unmet.map(step => `refuses the reading at ${step}`),
    ...codes.map(spn => `judges SPN ${spn}`),
  ].join(', or ');
}

const rows: string[] = [];
let missed = 0;
for (const run of runs) {
  const cells: string[] = [];
  for (const withBus of [false, true]) {
    const { debrief } = await rehearseFast([run], { withBus });
    const [fault] = debrief.faults;
    if (!fault) throw new Error(`${run} never came.`);
    if (!fault.noticed) missed += 1;
    if (cells.length === 0)
      cells.push(
        `${fault.fault}@${fault.phase}`,
        faceWords.en.debrief.wrong[fault.fault],
        expected(fault.fault),
      );
    cells.push(seen(fault));
  }
  rows.push(`| ${cells.join(' | ')} |`);
  console.log(rows.at(-1));
}

const text = `# Faults in rehearsal

Every fault that can be rehearsed, run through a real session on demo-six (seed 1, 5 degC) with the virtual
technician, once answered from gauges alone and once with the vehicle bus. Written by
\`node --import tsx docs/rehearsal-faults.ts\`; the causes, lines and steps are named as in the record. The time
is session time from the moment at which the fault comes to the moment at which the session stops or warns: it
holds everything that the procedure asks in between. A stop counts whoever calls it: the tool, the bus, or the
technician who sees a gauge and shouts.

| fault | what is wrong | expected | seen, gauges alone | seen, with the bus |
|---|---|---|---|---|
${rows.join('\n')}

Not caught: ${missed} of ${2 * runs.length} runs.
`;

writeFileSync(new URL('rehearsal-faults.md', import.meta.url), text);
console.log(`${runs.length} faults written to docs/rehearsal-faults.md, ${missed} runs not caught`);
process.exitCode = missed === 0 ? 0 : 1;
