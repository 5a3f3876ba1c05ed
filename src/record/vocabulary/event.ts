import { z } from 'zod';
import { english } from '../../../prompts/en/index.ts';
import { persons, vias } from './names.ts';
import { oneOf } from './shapes.ts';

/** On every event: when it reached the session (monotonic, since the session began), from whom, and how. */
const stamp = {
  atMs: z.number().nonnegative(),
  by: z.enum(persons),
  via: z.enum(vias),
};

/** How certain the ear was, 0 to 1; only of what was spoken. Records before the third vocabulary have none. */
const certainty = z.number().min(0).max(1).exactOptional();

const code = z.object({ spn: z.number(), fmi: z.number() }).readonly();
const codes = z.array(code).readonly();

/** What the vehicle bus showed at the moment of an answer that it can contradict; only fresh, good values. */
const busSight = z
  .object({
    /** Of the quantity that was spoken, in SI. */
    si: z.number().exactOptional(),
    speedRpm: z.number().exactOptional(),
    /** Beside an answer that it stands: what an engine that runs shows as well. */
    oilPressureKpa: z.number().exactOptional(),
    chargingV: z.number().exactOptional(),
    /** Lamps by their id in the profile. */
    lamps: z
      .record(z.string(), z.enum(['lit', 'dark']))
      .readonly()
      .exactOptional(),
    /** All active codes of the engine. */
    codes: codes.exactOptional(),
  })
  .readonly();

/** What the microphone heard of this engine at the moment of an answer that it can question; only what was sure. */
const earSight = z.object({ speedRpm: z.number() }).readonly();

/**
 * Whose voice it was in, of those that were learned in this session; only what was sure. A voice refuses, and never
 * grants.
 */
const voiceSight = z
  .object({ of: z.enum(['technician', 'second', 'neither']), certainty: z.number().min(0).max(1) })
  .readonly();

const plain = <Type extends string>(type: Type) => z.object({ type: z.literal(type), ...stamp }).readonly();

/** All that can happen to a session. Together with the profile and the job card they determine it wholly. */
export const eventSchema = z.discriminatedUnion('type', [
  z
    .object({
      type: z.literal('stop'),
      cause: oneOf(english.causes).exactOptional(),
      /** Of a program that was restarted: how long it had been away, s; not there where no clock could tell. */
      awayS: z.number().nonnegative().exactOptional(),
      /** At which device of a bay it was touched or heard; not there where there is one for everybody. */
      device: z.string().exactOptional(),
      ...stamp,
    })
    .readonly(),
  plain('hold'),
  plain('continue'),
  plain('sayAgain'),
  plain('goBack'),
  /** "Wrong": the number that was repeated last is taken back. */
  plain('takeBack'),
  plain('skip'),
  plain('status'),
  plain('timeLeft'),
  plain('help'),
  z
    .object({
      type: z.literal('reply'),
      id: oneOf(english.replies),
      bus: busSight.exactOptional(),
      ear: earSight.exactOptional(),
      voice: voiceSight.exactOptional(),
      certainty,
      ...stamp,
    })
    .readonly(),
  z
    .object({
      type: z.literal('value'),
      quantity: oneOf(english.quantities),
      si: z.number(),
      bus: busSight.exactOptional(),
      ear: earSight.exactOptional(),
      voice: voiceSight.exactOptional(),
      certainty,
      ...stamp,
    })
    .readonly(),
  /** All active codes, from the bus. */
  z.object({ type: z.literal('codes'), codes, ...stamp }).readonly(),
  /** Something was said that does not count. */
  plain('unclear'),
  /** A free-text reason, from keys or touch. */
  z.object({ type: z.literal('reason'), text: z.string(), ...stamp }).readonly(),
  /** Time was looked at. */
  plain('clock'),
]);

export type SessionEvent = z.output<typeof eventSchema>;
export type BusSight = z.output<typeof busSight>;
export type EarSight = z.output<typeof earSight>;
export type VoiceSight = z.output<typeof voiceSight>;
export type Code = z.output<typeof code>;
