import { fill } from '../../session/wording.ts';
import type { Manner } from '../manner.ts';

/** By which means something was said: by voice, by key, by touch, on which device. */
export const means = (
  { via, device }: { readonly via: string; readonly device?: string },
  { words, name }: Manner,
): string => (device === undefined ? name.via(via) : fill(words.onDevice, { means: name.via(via), device }));
