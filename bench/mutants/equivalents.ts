import type { Survivor } from './figures.ts';

/** A mutant that changes nothing anybody could observe, by the text of its line, which moves with the code. */
interface Equivalent {
  readonly file: string;
  readonly text: string;
  /** Only the mutants of that line with one of these; all of its survivors where it is left out. */
  readonly replacements?: readonly string[];
  readonly why: string;
}

/** A second net under the arithmetic: the inputs were checked, and no allowed one gets this far. */
const NO_INPUT_TRIPS_IT = 'a guard on the result that no allowed input trips, by the ranges of the inputs';

const FOR_THE_COMPILER = 'is always there; this tells the compiler so';

const STOP_IS_KNOWN = `in a stop its own place on the record ${FOR_THE_COMPILER}`;
const CAUSE_IS_KNOWN = `where this is asked or said the cause ${FOR_THE_COMPILER}`;
const NO_HOLD_ANYHOW = 'in a stop nobody may hold or go back, critical or not';

/** Every survivor that is no hole in the tests. */
export const EQUIVALENTS: readonly Equivalent[] = [
  {
    file: 'machines/assurance.ts',
    text: "if (event.type !== 'value') return true;",
    replacements: ['false'],
    why: 'what is no number meets no limit, and is near it by the rule as well',
  },
  {
    file: 'machines/limits/agreement.ts',
    text: 'if (busSi === undefined || bus === undefined) return null;',
    replacements: ['false'],
    why: 'a reading that is missing is refused by the rule as well, and told in the same way',
  },
  {
    file: 'machines/limits/agreement.ts',
    text: "if (quantity !== 'engineSpeed' || heardRpm === undefined) return null;",
    replacements: ['false'],
    why: 'a speed that is missing is refused by the rule as well, and told in the same way',
  },
  {
    file: 'machines/limits/electrics.ts',
    text: 'const judged = lowest === undefined ? null : crankingVoltage(context, lowest);',
    replacements: ['false'],
    why: 'a voltage that is missing meets no limit, and is near it by the rule as well',
  },
  {
    file: 'machines/limits/coolant.ts',
    text: 'while (!freezes.ok && share > SHARE_STEP) {',
    replacements: ['true', 'share >= SHARE_STEP'],
    why: 'the tables of mixes begin at no glycol at all: the search ends in them',
  },
  {
    file: 'machines/limits/coolant.ts',
    text: 'if (!freezes.ok || !weaker.ok) return Number.NEGATIVE_INFINITY;',
    replacements: ['false', '!freezes.ok && !weaker.ok'],
    why: 'the tables of mixes begin at no glycol at all: the search ends in them',
  },
  {
    file: 'machines/limits/engine.ts',
    text: "if (!verdict) return { ok: false, issue: { code: 'tooLittleData', input: 'engineSpeed' } };",
    why: `a first verdict ${FOR_THE_COMPILER}`,
  },
  {
    file: 'machines/limits/oil.ts',
    text: 'const first = judgeFirstPressure([{ timeS: seconds, value: showsKpa }], seconds, {',
    replacements: ['[]'],
    why: 'the seconds until the reading are those that have gone by without one, and judged alike',
  },
  {
    file: 'machines/stopped.ts',
    text: "const technician: Waiting = { by: 'technician', critical: false };",
    replacements: ['true'],
    why: NO_HOLD_ANYHOW,
  },
  {
    file: 'machines/stopped.ts',
    text: "const caller: Waiting = { by: 'second', critical: false };",
    replacements: ['true'],
    why: NO_HOLD_ANYHOW,
  },
  {
    file: 'machines/stopped.ts',
    text: "{ by: 'second', critical: false },",
    replacements: ['true'],
    why: NO_HOLD_ANYHOW,
  },
  {
    file: 'machines/stopped.ts',
    text: 'const cause = ({ context }: Look) => context.stop?.cause ?? null;',
    replacements: ['context.stop.cause'],
    why: STOP_IS_KNOWN,
  },
  {
    file: 'machines/stopped.ts',
    text: 'const drillAt = ({ context }: Look) => drills.find(({ id }) => id === (context.stop?.step ?? context.step));',
    replacements: ['context.stop.step', 'context.stop?.step && context.step'],
    why: `${STOP_IS_KNOWN}, and its step is where the procedure stands`,
  },
  {
    file: 'machines/stopped.ts',
    text: '[stop?.cause ?? null, ...(stop?.also ?? [])].some(known => known !== null && endsTheStart(known));',
    replacements: ['true'],
    why: 'a cause that is none ends no start',
  },
  {
    file: 'machines/stopped.ts',
    text: 'const heard = [...(look.context.stop?.drilled ?? []), drillAt(look)?.id];',
    replacements: ['look.context.stop.drilled', 'drillAt(look).id', '["Stryker was here"]'],
    why: `${STOP_IS_KNOWN}, and it is at a drill`,
  },
  {
    file: 'machines/stopped.ts',
    text: 'stop !== null &&',
    replacements: ['true'],
    why: STOP_IS_KNOWN,
  },
  {
    file: 'machines/stopped.ts',
    text: "const after = (look: Look) => doneAfterStop(steps, look.context, cause(look) ?? 'other');",
    replacements: ['""'],
    why: CAUSE_IS_KNOWN,
  },
  {
    file: 'machines/stopped.ts',
    text: "const known = cause(look) ?? 'other';",
    replacements: ['""'],
    why: CAUSE_IS_KNOWN,
  },
  {
    file: 'machines/stopped.ts',
    text: "look => ({ line: 'causeReadBack', values: { cause: { cause: cause(look) ?? 'other' } } }),",
    replacements: ['""'],
    why: CAUSE_IS_KNOWN,
  },
  {
    file: 'machines/stopped.ts',
    text: "values: { title: { step: stop?.step ?? step }, time: { unit: 's', si: stop?.lateAfterS ?? 0 } },",
    replacements: ['stop.step', 'stop.lateAfterS', 'stop?.step && step'],
    why: `${STOP_IS_KNOWN}, and its step is where the procedure stands`,
  },
  {
    file: 'machines/stopped.ts',
    text: 'step: context.stop?.step ?? context.step,',
    replacements: ['context.stop.step', 'context.stop?.step && context.step'],
    why: `${STOP_IS_KNOWN}, and its step is where the procedure stands`,
  },
  {
    file: 'machines/stopped.ts',
    text: 'cause: context.stop?.cause ?? null,',
    replacements: ['context.stop.cause'],
    why: STOP_IS_KNOWN,
  },
  {
    file: 'machines/stopped.ts',
    text: 'by: context.stop?.by ?? null,',
    replacements: ['context.stop.by'],
    why: STOP_IS_KNOWN,
  },
  {
    file: 'machines/stopped.ts',
    text: 'step: nextDrill(look)?.id ?? look.context.step,',
    replacements: ['nextDrill(look).id'],
    why: `where this is carried out the next drill ${FOR_THE_COMPILER}`,
  },
  {
    file: 'machines/stopped.ts',
    text: 'stop?.firstMs === stop?.atMs && (stop?.lateAfterS ?? null) !== null,',
    replacements: ['stop.firstMs', 'stop.atMs', 'stop.lateAfterS'],
    why: STOP_IS_KNOWN,
  },
  {
    file: 'machines/stopped.ts',
    text: 'guard: look => look.context.stop?.secondCalled === true && !bySecondPerson(look),',
    replacements: ['look.context.stop.secondCalled'],
    why: STOP_IS_KNOWN,
  },
  {
    file: 'machines/stopped.ts',
    text: 'values: { todo: toDo(context.reopened ?? []) },',
    replacements: ['["Stryker was here"]'],
    why: `where this is asked the list ${FOR_THE_COMPILER}`,
  },
  {
    file: 'machines/stopped.ts',
    text: "data: { step: context.stop?.step ?? context.step, why: 'knockingEnds' },",
    replacements: ['context.stop.step', 'context.stop?.step && context.step'],
    why: `${STOP_IS_KNOWN}, and its step is where the procedure stands`,
  },
  {
    file: 'machines/limits/warmth.ts',
    text: 'if (sinceMs === null || read.atMs >= sinceMs) return { coldestC: read.si, warmestC: read.si };',
    replacements: ['false', 'read.atMs > sinceMs'],
    why: 'read in the moment in which it was fired it has cooled for no time; that it was ever fired tells the compiler only',
  },
  {
    file: 'machines/limits/warmth.ts',
    text: '? Math.min(read.si, airC ?? read.si)',
    replacements: ['Math.max(read.si, airC ?? read.si)'],
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'machines/timing.ts',
    text: 'announced === null ? undefined : momentsOf(totalMs)[announced];',
    replacements: ['false'],
    why: 'a list has nothing at no place; this tells the compiler so',
  },
  {
    file: 'machines/timing.ts',
    text: "line: momentNow(look)?.line ?? 'timeLeft',",
    replacements: ['momentNow(look).line', '""'],
    why: `where it is spoken its moment ${FOR_THE_COMPILER}`,
  },
  {
    file: 'machines/judging.ts',
    text: '...(of !== undefined && unit === quantityUnits[of] ? { of } : {}),',
    replacements: ['true'],
    why: 'no unit is that of no quantity',
  },
  {
    file: 'machines/judging.ts',
    text: 'return value && judgement',
    replacements: ['value || judgement'],
    why: 'there is a judgement where there is a value, and only there',
  },
  {
    file: 'machines/faults.ts',
    text: "? { kind: judgement === 'goOn' ? 'goOn' : 'blocks' }",
    replacements: ['""'],
    why: 'what neither blocks nor is watched may go on by the rule as well',
  },
  {
    file: 'machines/faults.ts',
    text: ': [];',
    replacements: ['["Stryker was here"]'],
    why: 'an acceptance that is a bare text names no fault and accepts none',
  },
  {
    file: 'machines/phases/03b-bar-over.ts',
    text: "confirm('barOver.isolated', 'starterIsolated', { ...free, words: { off: keptOff(profile, 'bar') } }),",
    replacements: ['""'],
    why: 'where no hands are named it is the bar',
  },
  {
    file: 'machines/phases/09-sweeps.ts',
    text: 'const speed = (index: number) => sweeps[index]?.rpm ?? 0;',
    replacements: ['sweeps[index].rpm'],
    why: `the speed of a step of the sweep ${FOR_THE_COMPILER}`,
  },
  {
    file: 'machines/stopped.ts',
    text: "stopNow(look, look.event.type === 'stop' ? (look.event.cause ?? null) : null),",
    replacements: ['true'],
    why: 'is carried out for a stop alone; this tells the compiler so',
  },
  {
    file: 'machines/stopped.ts',
    text: "const drills = steps.filter(step => step.kind === 'confirm' && step.drill);",
    replacements: ['true'],
    why: 'no other kind of step has the member at all; this tells the compiler so',
  },
  {
    file: 'machines/progress.ts',
    text: "event.type !== 'stop' || event.awayS === undefined || event.awayS >= LONG_AWAY_S;",
    replacements: ['false'],
    why: 'no other event tells how long the tool was away; this tells the compiler so',
  },
  {
    file: 'machines/assurance.ts',
    text: "assuranceOf('number', { weight, via: look.event.via, near: isNear(judge, look) }) === 'readBack';",
    replacements: ['""'],
    why: 'what is no reply is read back where a number is',
  },
  {
    file: 'machines/urgent.ts',
    text: "steps.find(({ id }) => id === (context.stop?.step ?? context.step))?.engine ?? 'off';",
    replacements: ['context.stop.step', 'context.stop?.step && context.step'],
    why: `${STOP_IS_KNOWN}, and its step is where the procedure stands`,
  },
  {
    file: 'machines/urgent.ts',
    text: "stop?.cause === 'falseAlarm' ? null : (stop?.cause ?? null);",
    replacements: ['stop.cause'],
    why: STOP_IS_KNOWN,
  },
  {
    file: 'machines/urgent.ts',
    text: "(look.context.stop?.insisted === true && engineOf(look) !== 'off');",
    replacements: ['look.context.stop.insisted'],
    why: STOP_IS_KNOWN,
  },
  {
    file: 'machines/urgent.ts',
    text: '...[node.on?.reply ?? []].flat(),',
    replacements: ['node.on.reply', '["Stryker was here"]'],
    why: `a question that waits for a reply ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/session/past-starts/beside-others.ts',
    text: 'const standing = standingAmong(value, past[figure] ?? [], resolution);',
    replacements: ['["Stryker was here"]'],
    why: 'one earlier start is too few to say anything, as none is',
  },
  {
    file: 'src/session/past-starts/beside-others.ts',
    text: "const side: Side = value > median ? 'more' : 'less';",
    replacements: ['value >= median'],
    why: 'the median itself is within what is usual, of which nothing is told',
  },
  {
    file: 'src/engineering/spikes.ts',
    text: 'if (!at || !one || !other) return 0;',
    why: `among five readings each and two beside it ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/engineering/slope-break.ts',
    text: 'steepPerS > 0 && flatPerS <= MOST_SLOPE_LEFT * steepPerS;',
    replacements: ['steepPerS >= 0', 'flatPerS < MOST_SLOPE_LEFT * steepPerS'],
    why: 'differs where two fitted slopes are as one to two, or one is none, to the last bit',
  },
  {
    file: 'src/engineering/slope-break.ts',
    text: 'if (!split || valueAt(split, spanS) - split.line.lastValue < shortfall) return undefined;',
    replacements: ['valueAt(split, spanS) - split.line.lastValue <= shortfall'],
    why: 'differs where a fitted curve falls short by the amount to the last bit',
  },
  {
    file: 'src/session/vehicle/stops.ts',
    text: "const mayStand = step?.kind === 'confirm' && step.standing === true;",
    replacements: ['true', 'step.kind', "step?.kind === 'confirm' || step.standing === true"],
    why: 'no other kind of step has the member at all; this tells the compiler so',
  },
  {
    file: 'src/session/vehicle/stops.ts',
    text: 'const speeds = rows.flatMap(row => [row.points[0]?.rpm ?? 0, row.points.at(-1)?.rpm ?? 0]);',
    replacements: ['row.points[0].rpm', 'row.points.at(-1).rpm'],
    why: `a point of the floor ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/session/vehicle/stops.ts',
    text: 'rows.at(-1)?.oilC ?? 0,',
    replacements: ['rows.at(-1).oilC'],
    why: `a row of the floor ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/session/viewer.ts',
    text: "const grammar = grammarOf(moment, language, units, 'keys');",
    replacements: ['""'],
    why: 'what is asked of it is only whether it is by voice',
  },
  {
    file: 'src/session/viewer.ts',
    text: ".map(({ wordings }) => wordings[0] ?? ''),",
    replacements: ['"Stryker was here!"'],
    why: `a first wording ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/session/viewer.ts',
    text: "unit: grammar.number.units[0] ?? '',",
    replacements: ['"Stryker was here!"'],
    why: `the first name of a unit ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/record/bytes-node.ts',
    text: 'if (scratch.length < length) scratch = Buffer.alloc(2 * length);',
    replacements: ['true', 'scratch.length <= length'],
    why: 'how much room is kept for the next bytes changes none of them',
  },
  {
    file: 'src/record/entry.ts',
    text: "return at.slice(8, 10) > '28' && new Date(ms).toISOString() !== at ? Number.NaN : ms;",
    replacements: ['true', "at.slice(8, 10) >= '28'", '""'],
    why: 'spares the longer look for days that each month has, and comes to the same',
  },
  {
    file: 'src/record/explain.ts',
    text: 'beforeMs: scan.last?.monoMs ?? 0,',
    replacements: ['scan.last.monoMs'],
    why: `where a clock runs backwards an entry before it ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/record/findings.ts',
    text: "`At line ${line} the wall clock was set ${jumpS > 0 ? 'forward' : 'back'} by ${Math.abs(jumpS).toFixed(1)} s.`,",
    replacements: ['jumpS >= 0'],
    why: 'a jump of nothing is none, and is not told',
  },
  {
    file: 'src/record/lines.ts',
    text: 'while (cutter.position < sizeBytes && cutter.goesOn) {',
    replacements: ['true', 'cutter.position <= sizeBytes'],
    why: 'at the end of what is read nothing more is read, which ends it as well',
  },
  {
    file: 'src/record/lines.ts',
    text: 'const bytes = this.#carriedBytes === 0 ? piece : Buffer.concat([...this.#carried, piece]);',
    replacements: ['false'],
    why: 'spares a copy, and comes to the same bytes',
  },
  {
    file: 'src/record/lines.ts',
    text: 'if (start < chunk.length) this.#carried.push(chunk.subarray(start));',
    replacements: ['start <= chunk.length'],
    why: 'carries no bytes on, which is nothing',
  },
  {
    file: 'src/record/log-file.ts',
    text: 'async function syncFolder(path: string): Promise<void> {',
    why: 'differs where the power goes at that very moment, which no test can bring about',
  },
  {
    file: 'src/record/log-file.ts',
    text: "if (process.platform === 'win32') return;",
    replacements: ['false', "process.platform !== 'win32'", '""'],
    why: 'differs on Windows, or where the power goes at that very moment',
  },
  {
    file: 'src/record/log-place.ts',
    text: 'for (let start = 0; start < lines.length; start += LINES_PER_BLOCK) {',
    replacements: ['start <= lines.length'],
    why: 'writes a last block of nothing',
  },
  {
    file: 'src/record/remarks.ts',
    text: 'return remarkIfJumped(link, Math.abs(onSessionMs) < Math.abs(jumpMs) ? onSessionMs : jumpMs);',
    replacements: ['Math.abs(onSessionMs) <= Math.abs(jumpMs)'],
    why: 'of two that are equally far off either is the nearer',
  },
  {
    file: 'src/record/seal.ts',
    text: 'if (isSurelyCanonicalObject(line, DATA_START, dataEnd)) return true;',
    replacements: ['false'],
    why: 'spares the longer look, and comes to the same',
  },
  {
    file: 'src/record/seal.ts',
    text: 'if (seq > 0 && kind !== OPENED) return link;',
    replacements: ['false'],
    why: 'spares the longer look, and comes to the same',
  },
  {
    file: 'src/record/verify.ts',
    text: 'if (expectedLine !== undefined && expectedLine < entries)',
    replacements: ['true'],
    why: 'a line that is not expected is before none; this tells the compiler so',
  },
  {
    file: 'src/record/vocabulary/read.ts',
    text: "if (told === undefined || told.kind === 'opened') {",
    why: 'the first entry was passed over before; this tells the compiler so',
  },
  {
    file: 'src/record/seal.ts',
    text: "const line = canonicalize({ ...body, hash: sha256Hex(canonicalize(body) ?? '') }) ?? '';",
    replacements: ['"Stryker was here!"'],
    why: `the canonical form of an object ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/record/seal.ts',
    text: "export const canonicalLine = (entry: Entry): string => canonicalize(entry) ?? '';",
    replacements: ['"Stryker was here!"'],
    why: `the canonical form of an object ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/record/seal.ts',
    text: "return refuse(`${issue?.path.join('.') || 'it'} ${issue?.message ?? 'is not valid'}`);",
    replacements: ['issue.path', 'issue.message', '""'],
    why: `the first issue of what was refused ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/record/signature-file.ts',
    text: "`${path} is no file of signatures (${issue?.path.join('.') || 'file'}: ${issue?.message}); sign the record again.`,",
    replacements: ['issue.path', 'issue.message'],
    why: `the first issue of what was refused ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/record/signature-file.ts',
    text: "text = await readFile(path, 'utf8');",
    replacements: ['""'],
    why: 'bytes are read as the same JSON as their text',
  },
  {
    file: 'src/record/signing.ts',
    text: "return Buffer.from(`first-fire-signature/1\\n${canonicalize(signed) ?? ''}`);",
    replacements: ['"Stryker was here!"'],
    why: `the canonical form of an object ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/record/signing.ts',
    text: "signature: '',",
    replacements: ['"Stryker was here!"'],
    why: 'it is left out of what is signed, and replaced',
  },
  {
    file: 'src/record/verify.ts',
    text: "if (last === undefined) throw new RecordError('empty', `${path} holds no entry.`);",
    why: 'an empty file was refused before, and any other has an entry or a fault',
  },
  {
    file: 'src/engineering/warm-up.ts',
    text: 'const riseK = last.value - (rising[0]?.value ?? last.value);',
    replacements: ['rising[0].value'],
    why: `where there is a curve, a first reading ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/engineering/atmosphere.ts',
    text: "const PRESSURE_KPA: Range = { min: 22, max: 128, unit: 'kPa' };",
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'src/engineering/atmosphere.ts',
    text: "return okWithin(pressureKpa, PRESSURE_KPA, RULE, 'altitudeM');",
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'src/engineering/battery.ts',
    text: "const VOLTS: Range = { min: 0, max: 60, unit: 'V' };",
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'src/engineering/battery.ts',
    text: "return okWithin(charge, { min: 0, max: 1, unit: '' }, REST, 'restVoltageV');",
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'src/engineering/battery.ts',
    text: "return okWithin(floorV * inSeries(nominalV), VOLTS, CRANKING, 'batteryC');",
    replacements: ['""'],
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'src/engineering/checks.ts',
    text: "return isComplete(values, inputs) ? { ok: true, values } : fail('missing', Object.keys(inputs).join(', '));",
    why: 'what is missing was refused before; this tells the compiler so',
  },
  {
    file: 'src/engineering/checks.ts',
    text: 'Object.keys(inputs).length === Object.values(values).filter(value => value !== undefined).length;',
    why: 'what is missing was refused before; this tells the compiler so',
  },
  {
    file: 'src/engineering/cool-down.ts',
    text: 'if (lastS === undefined || readings.length < 2) {',
    replacements: ['false'],
    why: 'without a last reading there are fewer than two',
  },
  {
    file: 'src/engineering/cool-down.ts',
    text: 'const fallK = peakC - (falling.at(-1)?.value ?? peakC);',
    replacements: ['falling.at(-1).value'],
    why: 'the peak itself is always among the readings behind it',
  },
  {
    file: 'src/engineering/cool-down.ts',
    text: 'if (falling.length < LEAST_READINGS || spanS(falling) < LEAST_SPAN_S || fallK < LEAST_FALL_K) {',
    replacements: ['fallK <= LEAST_FALL_K'],
    why: 'of so small a fall, read to whole degrees, the fit is no estimate either',
  },
  {
    file: 'src/engineering/coolant.ts',
    text: "const BOIL_C: Range = { min: 60, max: 190, unit: 'degC' };",
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'src/engineering/coolant.ts',
    text: "return boil.ok ? okWithin(boil.value, BOIL_C, BOILING, 'capPressureKpa') : boil;",
    replacements: ['""'],
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'src/engineering/curve-and-line.ts',
    text: 'if (split.squares < (best?.squares ?? Number.POSITIVE_INFINITY) && admits(split)) best = split;',
    replacements: ['split.squares <= (best?.squares ?? Number.POSITIVE_INFINITY)'],
    why: 'of two places that explain the readings equally well either is the best',
  },
  {
    file: 'src/engineering/curve-and-line.ts',
    text: 'if (!best || degrees < 1) return undefined;',
    why: 'so few readings have no place at which both parts have enough of them',
    replacements: ['false', 'degrees <= 1'],
  },
  {
    file: 'src/engineering/curve-and-line.ts',
    text: 'return (fit.squares - best.squares) / FREEDOMS_WON / scatter >= LEAST_F ? best : undefined;',
    replacements: ['(fit.squares - best.squares) / FREEDOMS_WON / scatter > LEAST_F'],
    why: 'differs where a ratio of squares is a whole number to the last bit',
  },
  {
    file: 'src/engineering/engine-sound/bank.ts',
    text: 'readonly #in = new Array<number>(LENGTH);',
    why: 'all of it is written before it is read, whatever its length was at first',
  },
  {
    file: 'src/engineering/engine-sound/change.ts',
    text: 'if (Math.abs(rpm / this.#rpm - 1) > ALIKE) return;',
    replacements: ['Math.abs(rpm / this.#rpm - 1) >= ALIKE'],
    why: 'no binary fraction beside 1 lies just a tenth from it',
  },
  {
    file: 'src/engineering/engine-sound/change.ts',
    text: 'if (most < WORTH_DB) return null;',
    replacements: ['most <= WORTH_DB'],
    why: 'differs where a followed level has changed by 5 dB to the last bit',
  },
  {
    file: 'src/engineering/engine-sound/claims.ts',
    text: 'const jumped = Math.abs(Math.log(rpm / this.#lastRpm)) > CHANGES_AT_ONCE + CHANGES_PER_S * 0.1;',
    replacements: ['Math.abs(Math.log(rpm / this.#lastRpm)) >= CHANGES_AT_ONCE + CHANGES_PER_S * 0.1'],
    why: 'differs where a speed has changed by just the most that it may, to the last bit of a logarithm',
  },
  {
    file: 'src/engineering/engine-sound/claims.ts',
    text: 'return forS <= GOES_ON_S && change <= CHANGES_AT_ONCE + CHANGES_PER_S * forS;',
    replacements: ['change < CHANGES_AT_ONCE + CHANGES_PER_S * forS'],
    why: 'differs where a speed has changed by just the most that it may, to the last bit of a logarithm',
  },
  {
    file: 'src/engineering/engine-sound/doing.ts',
    text: 'const drops = levelsDb.map((db, band) => (this.#quietestDb?.[band] ?? db) - db);',
    replacements: ['this.#quietestDb[band]'],
    why: `a running engine has its quietest level, which ${FOR_THE_COMPILER}`,
  },
  {
    file: 'src/engineering/engine-sound/evidence.ts',
    text: 'for (let k = 1; k < said.length; k++) {',
    replacements: ['k <= said.length'],
    why: 'a typed array takes nothing behind its end',
  },
  {
    file: 'src/engineering/engine-sound/evidence.ts',
    text: 'if (says > best) best = says;',
    replacements: ['says >= best'],
    why: 'of two that are the same either is the best',
  },
  {
    file: 'src/engineering/engine-sound/firing.ts',
    text: 'angles.reduce((sum, angle) => sum + Math.cos(order * angle), 0),',
    replacements: ['sum - Math.cos(order * angle)'],
    why: 'the length of a sum of arrows is that of the sum of their opposites',
  },
  {
    file: 'src/engineering/engine-sound/firing.ts',
    text: 'angles.reduce((sum, angle) => sum + Math.sin(order * angle), 0),',
    replacements: ['sum - Math.sin(order * angle)'],
    why: 'the length of a sum of arrows is that of the sum of their opposites',
  },
  {
    file: 'src/engineering/engine-sound/hunting.ts',
    text: 'if (!best || power > best.power) best = { amplitudeRpm, periodS, power };',
    replacements: ['power >= best.power'],
    why: 'differs where two periods explain the same to the last bit',
  },
  {
    file: 'src/engineering/engine-sound/hunting.ts',
    text: 'if (!best || best.power < EXPLAINS * all || best.amplitudeRpm < LEAST_SHARE * flat.mean) return null;',
    replacements: ['best.power <= EXPLAINS * all', 'best.amplitudeRpm <= LEAST_SHARE * flat.mean'],
    why: 'differs where a swing explains, or has, just the least to the last bit',
  },
  {
    file: 'src/engineering/engine-sound/hunting.ts',
    text: 'if (Math.abs(determinant) < 1e-9) return { amplitudeRpm: 0, power: 0 };',
    replacements: ['Math.abs(determinant) <= 1e-9'],
    why: 'differs for a determinant of just a thousand millionth, to the last bit',
  },
  {
    file: 'src/engineering/engine-sound/listening.ts',
    text: 'this.#waveSum += values[0] as number;',
    replacements: ['this.#waveSum -= values[0] as number'],
    why: 'a wave upside down has the same spectrum',
  },
  {
    file: 'src/engineering/engine-sound/listening.ts',
    text: '{ there: 0.2, above: 3 },',
    replacements: ['{}'],
    why: 'in the long stretch no lines of uneven cylinders are looked for',
  },
  {
    file: 'src/engineering/engine-sound/listening.ts',
    text: 'if (levelsDb.every(db => db < SILENT_DB))',
    replacements: ['db <= SILENT_DB'],
    why: 'differs where a band is at -92 dB to the last bit of a logarithm',
  },
  {
    file: 'src/engineering/engine-sound/recent-idle.ts',
    text: '#speeds: SpeedAt[] = [];',
    why: 'what has no time is not of the last seconds, and is left out before they are looked at',
  },
  {
    file: 'src/engineering/engine-sound/spectra.ts',
    text: 'for (let k = 0; k < bins; k++) {',
    replacements: ['k <= bins'],
    why: 'a typed array takes nothing behind its end',
  },
  {
    file: 'src/engineering/fault-codes.ts',
    text: 'const [, spnDigits, fmiDigits] = PAIR.exec(text) ?? [];',
    replacements: ['["Stryker was here"]'],
    why: 'the first of them is what was matched, which nobody takes',
  },
  {
    file: 'src/engineering/fault-codes.ts',
    text: 'if (spnDigits !== undefined && fmiDigits !== undefined) {',
    why: 'the pattern matches both or neither',
  },
  {
    file: 'src/engineering/fault-rules.ts',
    text: 'acceptances: readonly FaultAcceptance[] = [],',
    why: 'an acceptance that is a bare text names no fault and accepts none',
  },
  {
    file: 'src/engineering/heat-soak.ts',
    text: 'if (!openC.ok) return openC;',
    replacements: ['false'],
    why: 'the air of an allowed altitude boils water within the range of the boiling curve',
  },
  {
    file: 'src/engineering/heat-soak.ts',
    text: 'if (!cappedC.ok) return cappedC;',
    replacements: ['false'],
    why: 'air and an allowed cap together stay within the range of the boiling curve',
  },
  {
    file: 'src/engineering/starter.ts',
    text: 'temperatureC >= model.limitC',
    replacements: ['false', 'temperatureC > model.limitC'],
    why: 'seconds to reach a temperature that is passed are 0 as well',
  },
  {
    file: 'src/engineering/starter.ts',
    text: 'if (wantedS <= nextBurst(model, nowC) + ROUNDING_S) return ok(0, RULE);',
    replacements: ['wantedS < nextBurst(model, nowC) + ROUNDING_S'],
    why: 'differs for a burst that is exactly one microsecond too long, and then by a rest of microseconds',
  },
  {
    file: 'src/engineering/starter.ts',
    text: 'return waitS <= HISTORY_S.max',
    replacements: ['waitS < HISTORY_S.max'],
    why: 'differs for a rest of exactly one day to the last bit, which no table of seconds holds',
  },
];

/** Why a survivor is no hole in the tests; undefined for one that is. */
export const whyEquivalent = (file: string, { text, replacement }: Survivor): string | undefined =>
  EQUIVALENTS.find(
    each => each.file === file && each.text === text && (each.replacements?.includes(replacement) ?? true),
  )?.why;
