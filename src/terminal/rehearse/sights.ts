import { type Quantity, quantityUnits } from '../../../machines/vocabulary.ts';
import type { Gauges } from '../../rehearsal/gauges.ts';
import type { SessionParts } from '../../session/session.ts';
import { showMeasure } from '../../session/wording.ts';

/** What somebody who practises sees of the engine, in a few lines: gauges, lamps, and what is wrong to the eye. */
export function sightsOf(gauges: Gauges, { profile, language, units }: SessionParts): string[] {
  const show = (quantity: Quantity, si: number | null) =>
    `${language.quantities[quantity].name} ${si === null ? '--' : showMeasure(si, quantityUnits[quantity], language, units)}`;
  const lamps = (ids: ReadonlySet<string>) =>
    profile.lamps
      .filter(({ id }) => ids.has(id))
      .map(({ name }) => name)
      .join(', ') || 'none';
  const seen = [
    ...[...gauges.wrongAt].map(point => `wet at ${language.inspectPoints[point]}`),
    ...(gauges.hunting ? ['the idle hunts'] : []),
    ...(gauges.coolantAir ? ['air in the coolant'] : []),
    ...(gauges.steeringAir ? ['bubbles in the steering fluid'] : []),
    ...(gauges.coolantShort ? ['coolant below the mark'] : []),
    `primer ${gauges.primerFirm ? 'firm' : 'soft'} after ${gauges.strokes} strokes`,
    ...gauges.codes.map(({ spn, fmi }) => `code SPN ${spn} FMI ${fmi}`),
  ];
  return [
    [
      show('engineSpeed', gauges.rpm),
      show('oilPressure', gauges.oilPressureKpa),
      show('coolantTemperature', gauges.coolantC),
      show('batteryVoltage', gauges.batteryV),
      ...(gauges.crankingV === null ? [] : [show('crankingVoltage', gauges.crankingV)]),
    ].join('  '),
    `lit: ${lamps(gauges.lit)}${gauges.litAtKeyOn ? `; lit at key-on: ${lamps(gauges.litAtKeyOn)}` : ''}`,
    `seen: ${seen.join('; ')}`,
  ];
}
