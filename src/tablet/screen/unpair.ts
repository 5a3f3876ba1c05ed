import type { BayDeeds } from '../face/face.ts';
import { forgetPairing } from '../remote/pairing.ts';

/** Ends the pairing of this device, here and on the laptop, and leaves. */
export function unpair(deeds: BayDeeds | null, device: string | undefined, leave: () => void): void {
  if (device) deeds?.letGo(device);
  forgetPairing();
  leave();
}
