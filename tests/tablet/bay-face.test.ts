import { expect, it } from 'vitest';
import { faceStateOf, type SeenHere } from '../../src/tablet/remote/bay-face.ts';

const nothingTold: Parameters<typeof faceStateOf>[0] = {
  state: null,
  lineState: 'connecting',
  offset: null,
  stop: 'none',
  takenAtMs: 0,
  refusal: null,
  pairing: null,
  device: '',
  board: [],
  boardAtMs: 0,
};

const here: SeenHere = {
  role: 'technician',
  bay: 'bay-2',
  troubles: ['The microphone is gone.', 'The disk is full.'],
  refusal: 'Not now.',
  plots: [],
  follows: false,
  away: 'no',
  deaf: 'no',
  hearing: hearing => hearing,
};

it('before the laptop has told anything shows nothing of a session, and what this device knows by itself', () => {
  const face = faceStateOf(nothingTold, here);
  expect(face.view).toBeNull();
  expect(face.bay).toMatchObject({
    link: { bay: 'bay-2', refusal: null, clockOffsetMs: null },
    troubles: ['The microphone is gone.', 'The disk is full.'],
    clear: 'notAsked',
    session: null,
    devices: [],
    refusal: 'Not now.',
    mayBeLeft: false,
  });
});
