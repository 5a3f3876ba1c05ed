import { expect, test } from 'vitest';
import type { PairedDevice } from '../../../src/server/index.ts';
import { TerminalDesk } from '../../../src/terminal/serve/desk.ts';

const device = (id: string, name: string): PairedDevice => ({
  id,
  name,
  bay: 'bay 1',
  role: 'second',
  connected: true,
});

function rig() {
  let devices = [device('a', 'phone'), device('b', 'tablet')];
  const desk = new TerminalDesk({
    devices: () => devices,
    async letGo(id) {
      const there = devices.some(each => each.id === id);
      devices = devices.filter(each => each.id !== id);
      return there;
    },
  });
  return { desk, names: () => devices.map(({ name }) => name) };
}

test('The terminal lists the paired devices, and ends the pairing of the one whose number is typed', async () => {
  const { desk, names } = rig();
  expect(await desk.answer('devices')).toMatch(/1 {2}bay 1 .*"phone"\n.*2 {2}bay 1 .*"tablet"/);
  expect(await desk.answer('END 1')).toContain('The pairing of "phone" in bay 1 is ended');
  expect(names()).toEqual(['tablet']);
});

test('A number means the device that was listed beside it, whoever has left since', async () => {
  const { desk, names } = rig();
  await desk.answer('devices');
  await desk.answer('end 1');
  expect(await desk.answer('end 1')).toContain('was not paired any more');
  expect(names()).toEqual(['tablet']);
});

test('What names no device ends nothing, and says what to type', async () => {
  const { desk, names } = rig();
  for (const typed of ['end 1', 'end', 'end x', 'end 99', 'end -1', 'bye'])
    expect(await desk.answer(typed)).toMatch(/"devices"/);
  expect(await desk.answer('  ')).toBe('');
  expect(names()).toEqual(['phone', 'tablet']);
});
