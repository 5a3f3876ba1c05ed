import type { Role } from '../../server/protocol/index.ts';
import type { FaceState } from './face.ts';

/** Somebody of this role has a paired device of their own: then nobody else answers for them. */
const hasOwnDevice = ({ bay }: Pick<FaceState, 'bay'>, role: Role): boolean =>
  bay?.devices.some(device => device.role === role) ?? false;

/** Whether the question that is asked now is answered on this device. */
export function isAnsweredHere(state: Pick<FaceState, 'role' | 'view' | 'bay'>): boolean {
  const { role, view, bay } = state;
  if (!view || view.outcome) return false;
  if (role !== 'technician') return view.addressed === role;
  if (bay?.follows) return false;
  return view.addressed === 'technician' || !hasOwnDevice(state, view.addressed);
}
