import { describe, expect, it } from 'vitest';
import { commandsIn } from '../../../bench/chaos/commands-in.ts';

const command = (id: string, what: 'stop' | 'say') => ({
  kind: 'command',
  data: { device: 'd', id, name: 'tablet', role: 'technician', do: what },
});
const stopped = {
  kind: 'event',
  data: { type: 'stop', by: 'technician', via: 'touch', state: 'stopped.makingSafe', atMs: 1 },
};
const goneOn = {
  kind: 'event',
  data: {
    type: 'reply',
    id: 'ready',
    by: 'technician',
    via: 'touch',
    state: 'fill.coolantBleed.counting',
    atMs: 2,
  },
};

describe('The commands of a record', () => {
  it('are counted by the device and the id that they came with', () => {
    const { commands, devices } = commandsIn([command('one', 'say'), command('two', 'say')]);
    expect([...commands]).toEqual([
      ['d one', 1],
      ['d two', 1],
    ]);
    expect([...devices]).toEqual(['d']);
  });

  it('are doubled where one stands there twice', () => {
    expect(commandsIn([command('one', 'say'), goneOn, command('one', 'say')]).commands.get('d one')).toBe(2);
    expect(commandsIn([command('one', 'stop'), stopped, command('one', 'stop')]).commands.get('d one')).toBe(
      2,
    );
  });

  it('are not doubled by a stop that comes again when the session has been gone on with', () => {
    const again = commandsIn([command('one', 'stop'), stopped, goneOn, command('one', 'stop'), stopped]);
    expect(again).toMatchObject({ stoppedAnew: 1 });
    expect(again.commands.get('d one')).toBe(1);
  });

  it('are doubled by the third of such stops, unless that was gone on with too', () => {
    const stop = [command('one', 'stop'), stopped];
    expect(commandsIn([...stop, goneOn, ...stop, ...stop]).commands.get('d one')).toBe(2);
    expect(commandsIn([...stop, goneOn, ...stop, goneOn, ...stop])).toMatchObject({ stoppedAnew: 2 });
  });
});
