import type { Role } from '../../server/protocol/index.ts';
import type { BayPart } from './face.ts';

/** Roles that have devices of their own, none of which answers: what is done on them reaches nobody. */
export function missingRoles({ devices }: Pick<BayPart, 'devices'>): readonly Role[] {
  return (['technician', 'second'] as const).filter(role => {
    const own = devices.filter(device => device.role === role);
    return own.length > 0 && own.every(({ connected, quiet }) => !connected || quiet);
  });
}
