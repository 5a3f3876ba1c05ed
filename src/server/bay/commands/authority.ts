import type { Person } from '../../../../machines/vocabulary.ts';
import type { ControlId } from '../../../../prompts/types.ts';
import type { Deed, Refusal, Role } from '../../protocol/index.ts';

/** Who asks, as far as it matters for what is allowed. */
export interface Asker {
  readonly role: Role;
  /** Its device leads the session. */
  readonly owner: boolean;
}

/** What of the session's state matters for who may answer. */
export interface Question {
  readonly addressed: Person;
  /** The second person has a device of their own. */
  readonly ownDeviceOnly: boolean;
  /** The supervisor has one: then nobody else answers, and signs, for them. */
  readonly supervisorsOwn: boolean;
  /** Misunderstood so often that only the second person is believed by voice. */
  readonly secondOnly: boolean;
}

const notYours = (sentence: string): Refusal => ({ code: 'notYourRole', sentence });
const notOwner: Refusal = {
  code: 'notTheOwner',
  sentence: 'Another device leads this session; take over first.',
};

const owners: readonly Deed['do'][] = ['begin', 'resume', 'setAside', 'declineHold'];
const technicians: readonly Deed['do'][] = [...owners, 'takeOver'];
/** Words that change nothing but what is said next; the second person may ask too. */
const harmless = ['hold', 'sayAgain', 'status', 'timeLeft', 'help'];

/** Why somebody may not do this at all, whatever is asked; null when they may. Everybody may stop. */
export function forbidden({ role, owner }: Asker, deed: Deed): Refusal | null {
  // Whom it is about decides that: `mayNotLetGo`.
  if (deed.do === 'stop' || deed.do === 'forget' || deed.do === 'renew') return null;
  // By touch only what is asked of the supervisor: `answerer`.
  if (role === 'supervisor')
    return deed.do === 'askHold' || deed.do === 'say'
      ? null
      : notYours(
          'The supervisor looks on, may stop, ask for a hold, and answer what is theirs; nothing else.',
        );
  if (deed.do === 'askHold') return notYours('Only the supervisor asks for a hold; hold it yourself.');
  if (deed.do === 'clear') return role === 'second' ? null : notYours('Only the second person says clear.');
  if (technicians.includes(deed.do) && role !== 'technician')
    return notYours("This is the technician's to do.");
  if (owners.includes(deed.do) && !owner) return notOwner;
  return deed.do === 'control' ? mayNotControl({ role, owner }, deed.id) : null;
}

/** Why somebody may not use one of the words that are always understood, whoever is asked; null when they may. */
export function mayNotControl({ role, owner }: Asker, id: ControlId): Refusal | null {
  if (role === 'supervisor') return notYours('The supervisor asks for a hold; nothing else of these words.');
  if (harmless.includes(id)) return null;
  if (role !== 'technician') return notYours("This is the technician's to do.");
  return owner ? null : notOwner;
}

/** Whether what somebody stops for is believed to call for help: they have to be there to see it. */
export const mayCallForHelp = (role: Role): boolean => role !== 'supervisor';

/** Why somebody may not renew the pairing of this device of their own bay; null when they may. */
export function mayNotRenew({ role, owner }: Asker, device: { readonly own: boolean }): Refusal | null {
  if (device.own) return notYours('Somebody else of the bay renews the pairing of this device.');
  if (role === 'supervisor') return null;
  if (role !== 'technician') return notYours('Only the technician and the supervisor renew pairings.');
  return owner ? null : notOwner;
}

/** Why somebody may not let go of this device of their own bay; null when they may. */
export function mayNotLetGo(
  { role, owner }: Asker,
  device: { readonly own: boolean; readonly connected: boolean },
): Refusal | null {
  if (device.own || role === 'supervisor') return null;
  if (role !== 'technician') return notYours('Only the technician and the supervisor let go of others.');
  if (!owner) return notOwner;
  return device.connected
    ? {
        code: 'notNow',
        sentence: 'That device is still there; only the supervisor lets go of one that has not left.',
      }
    : null;
}

export type Answerer =
  /** By whom the answer counts; undefined: by whom it is asked of, as with one microphone for both. */
  | { readonly ok: true; readonly speaker: Person | undefined }
  | { readonly ok: false; readonly refusal: Refusal };

/** Whether an answer from this device counts for the question that is asked, and as whose. */
export function answerer({ role, owner }: Asker, question: Question): Answerer {
  const { addressed, ownDeviceOnly, supervisorsOwn, secondOnly } = question;
  const no = (refusal: Refusal): Answerer => ({ ok: false, refusal });
  switch (role) {
    case 'supervisor':
      return addressed === 'supervisor'
        ? { ok: true, speaker: 'supervisor' }
        : no(notYours('The supervisor cannot answer for others.'));
    case 'second':
      return addressed === 'second' || (secondOnly && addressed !== 'supervisor')
        ? { ok: true, speaker: 'second' }
        : no(notYours('This question is not for the second person.'));
    case 'technician':
      if (!owner) return no(notOwner);
      if (addressed === 'supervisor' && supervisorsOwn)
        return no(notYours('The supervisor answers this, and signs, on their own device.'));
      if (!ownDeviceOnly) return { ok: true, speaker: undefined };
      if (addressed === 'second') return no(notYours('The second person answers this on their own device.'));
      return { ok: true, speaker: addressed };
  }
}
