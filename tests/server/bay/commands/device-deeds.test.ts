import { describe, expect, test } from 'vitest';
import {
  checkedRenewal,
  checkLettingGo,
  pairedHere,
} from '../../../../src/server/bay/commands/device-deeds.ts';
import { Refused } from '../../../../src/server/refused.ts';
import { partsOfABay } from '../parts-of-a-bay.ts';

async function devices() {
  const parts = await partsOfABay();
  const { crew, pairings } = parts;
  const elsewhere = await parts.paired('second', 'another bay');
  const follower = await parts.paired('technician');
  return { ...parts, elsewhere, follower, scene: { bay: 'bay', pairings, crew } };
}

/** What it is refused with; null where it is not. */
function refusedWith(deed: () => unknown): Refused['refusal'] | null {
  try {
    deed();
    return null;
  } catch (error) {
    if (error instanceof Refused) return error.refusal;
    throw error;
  }
}

const NO_SUCH = { code: 'notFound', sentence: 'No such device is paired in this bay.' };

describe('A device of a bay', () => {
  test('is found by its id, and none of another bay is, nor one that was let go of', async () => {
    const { scene, second, elsewhere, pairings } = await devices();
    expect(pairedHere(second.device, scene)).toEqual(second);
    for (const device of [elsewhere.device, 'nobody'])
      expect(refusedWith(() => pairedHere(device, scene))).toEqual(NO_SUCH);
    await pairings.forget(second.device);
    expect(refusedWith(() => pairedHere(second.device, scene))).toEqual(NO_SUCH);
  });

  test('is let go of by itself and by the supervisor, and by the technician who leads once it has left', async () => {
    const { scene, crew, technician, second, supervisor, follower, elsewhere } = await devices();
    const letsGo = (by: typeof second, device: string) =>
      refusedWith(() => checkLettingGo(by, device, scene));
    expect(letsGo(second, second.device)).toBeNull();
    expect(letsGo(supervisor, second.device)).toBeNull();
    expect(letsGo(technician, second.device)).toEqual({
      code: 'notNow',
      sentence: 'That device is still there; only the supervisor lets go of one that has not left.',
    });
    crew.left(second);
    expect(letsGo(technician, second.device)).toBeNull();
    expect(letsGo(follower, second.device)).toMatchObject({ code: 'notTheOwner' });
    expect(letsGo(second, technician.device)).toEqual({
      code: 'notYourRole',
      sentence: 'Only the technician and the supervisor let go of others.',
    });
    expect(letsGo(supervisor, elsewhere.device)).toEqual(NO_SUCH);
  });

  test('has its pairing renewed by another one of the bay who may, never by itself', async () => {
    const { scene, technician, second, supervisor, follower, elsewhere } = await devices();
    const renews = (by: typeof second, device: string) =>
      refusedWith(() => checkedRenewal(by, device, scene));
    expect(checkedRenewal(technician, second.device, scene)).toEqual(second);
    expect(renews(supervisor, second.device)).toBeNull();
    expect(renews(technician, technician.device)).toEqual({
      code: 'notYourRole',
      sentence: 'Somebody else of the bay renews the pairing of this device.',
    });
    expect(renews(follower, second.device)).toMatchObject({ code: 'notTheOwner' });
    expect(renews(second, technician.device)).toMatchObject({ code: 'notYourRole' });
    expect(renews(supervisor, elsewhere.device)).toEqual(NO_SUCH);
  });
});
