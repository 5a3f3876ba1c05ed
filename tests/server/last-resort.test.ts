import { expect, test } from 'vitest';
import { stopAllOnFailure } from '../../src/server/last-resort.ts';

test('what cannot even be stopped for a failure does not end the program, and is told', () => {
  const told: string[] = [];
  const before = process.listeners('uncaughtException');
  const take = stopAllOnFailure(
    {
      fails() {
        throw new Error('nor can it be shown');
      },
    },
    sentence => told.push(sentence),
  );
  const [handler] = process.listeners('uncaughtException').filter(each => !before.includes(each));
  expect(() => handler?.(new Error('a fault'), 'uncaughtException')).not.toThrow();
  expect(told).toEqual([expect.stringMatching(/a fault.*all sessions were stopped/)]);
  take();
  expect(process.listeners('uncaughtException')).toEqual(before);
});
