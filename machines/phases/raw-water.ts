import type { StepId } from '../../prompts/types.ts';
import { judge } from '../../src/engineering/result.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { confirm } from '../step-makers.ts';
import type { Judge, Step } from '../steps.ts';
import type { Gate } from '../vocabulary.ts';

/** A rubber impeller without water is ruined in about this time: common practice, no published source. */
export const RAW_WATER_WITHIN_S = 30;

const rawWaterInTime: Judge = (_, seconds) => ({
  ok: true,
  value: judge(
    seconds,
    's',
    { max: RAW_WATER_WITHIN_S },
    {
      id: 'raw-water-in-time',
      source: 'common practice, no published source: a rubber impeller does not run dry for longer',
      validity: 'raw water pumps with a rubber impeller',
    },
  ),
});

/** The raw water cock shut, where the exhaust is wet: else it fills while the engine is cranked and does not fire. */
export const rawWaterShut = ({ exhaust }: Profile, id: StepId, gate: Gate): readonly Step[] =>
  exhaust.kind === 'wet'
    ? [confirm(id, 'valveClosed', { gate, values: () => ({ at: exhaust.rawWaterCock }) })]
    : [];

/** Known before the engine is cranked with fuel: whose hand is on the cock, and when it is opened. */
export const rawWaterAnnounced = ({ exhaust }: Profile) =>
  exhaust.kind === 'wet' ? [{ line: 'rawWaterAtFired', values: { at: exhaust.rawWaterCock } } as const] : [];

/** Open again as soon as it runs, with water seen at the exhaust, or it is stopped. */
export const rawWaterOpen = (
  { exhaust }: Profile,
  id: StepId,
  gate: Gate,
  running: { readonly engine: 'running'; readonly needs: readonly Gate[] },
): readonly Step[] =>
  exhaust.kind === 'wet'
    ? [
        confirm(id, 'waterFlows', {
          ...running,
          gate,
          values: () => ({ at: exhaust.rawWaterCock }),
          // The cock is not at the helm, and its pump has been dry since the engine turned by itself.
          by: 'second',
          within: {
            seconds: () => RAW_WATER_WITHIN_S,
            sinceMs: ({ bursts }) => bursts.at(-1)?.endMs,
            cause: 'overheating',
            judge: rawWaterInTime,
          },
          trouble: { reply: 'staysDry', cause: 'overheating', named: true },
        }),
      ]
    : [];
