import type { Quantity } from '../../../machines/vocabulary.ts';
import type { Gauges } from '../../rehearsal/gauges.ts';
import type { SessionParts } from '../../session/session.ts';
import { shownUnit } from '../../session/units.ts';
import { fill, showMeasure } from '../../session/wording.ts';
import type { FaceWords } from '../face/words/index.ts';

/** Long before the thermostat opens nobody feels the hose. */
const HOSE_TOLD_K = 15;

/** What is asked for now and would be read off somewhere: a thermometer, a tester, the tank's gauge. */
interface ReadOff {
  readonly quantity: Quantity;
  readonly si: number | null;
}

/**
 * What somebody who practises sees of the engine, in a few lines: what is to be read off, gauges, lamps, and what is
 * wrong to the eye.
 */
export function sightsOf(
  gauges: Gauges,
  { profile, language, units }: SessionParts,
  { seen: words, noValue }: FaceWords,
  readOff: ReadOff | null,
): string[] {
  const show = (quantity: Quantity, si: number | null) =>
    `${language.quantities[quantity].name} ${si === null ? noValue : showMeasure(si, shownUnit(quantity), language, units)}`;
  const lamps = (ids: ReadonlySet<string>) =>
    profile.lamps
      .filter(({ id }) => ids.has(id))
      .map(({ name }) => name)
      .join(', ') || words.noLamps;
  const seen = [
    ...[...gauges.wrongAt].map(point => fill(words.wet, { point: language.inspectPoints[point] })),
    ...(gauges.hunting ? [words.hunts] : []),
    ...(gauges.coolantAir ? [words.coolantAir] : []),
    ...(gauges.steeringAir ? [words.steeringAir] : []),
    ...(gauges.coolantShort ? [words.coolantShort] : []),
    ...(gauges.upperHoseHot
      ? [words.hoseHot]
      : gauges.firing && (gauges.coolantC ?? 0) > profile.thermostat.opensC - HOSE_TOLD_K
        ? [words.hoseCold]
        : []),
    fill(gauges.primerFirm ? words.primerFirm : words.primerSoft, { strokes: String(gauges.strokes) }),
    ...gauges.codes.map(({ spn, fmi }) => fill(words.code, { spn: String(spn), fmi: String(fmi) })),
  ];
  return [
    ...(readOff ? [fill(words.readOff, { reading: show(readOff.quantity, readOff.si) })] : []),
    [
      show('engineSpeed', gauges.rpm),
      show('oilPressure', gauges.oilPressureKpa),
      show('coolantTemperature', gauges.coolantC),
      show('batteryVoltage', gauges.batteryV),
      ...(gauges.crankingV === null ? [] : [show('crankingVoltage', gauges.crankingV)]),
    ].join('  '),
    gauges.litAtKeyOn
      ? fill(words.litAtKeyOn, { lamps: lamps(gauges.lit), atKeyOn: lamps(gauges.litAtKeyOn) })
      : fill(words.lit, { lamps: lamps(gauges.lit) }),
    fill(words.seen, { sights: seen.join(words.between) }),
  ];
}
