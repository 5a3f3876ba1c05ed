import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { encodeWav } from '../../src/voice/audio/wav-encode.ts';
import type { Pcm } from '../../src/voice/ports.ts';
import type { PulseServer } from '../../tests/helpers/sound-server.ts';

/** A browser takes no monitor of a loudspeaker for a microphone: it gets one that hears the same. */
export function plugIn({ env, monitor }: PulseServer): void {
  const load = ['load-module', 'module-remap-source', `master=${monitor}`, 'source_name=microphone'];
  execFileSync('pactl', load, { env, stdio: 'ignore' });
  execFileSync('pactl', ['set-default-source', 'microphone'], { env });
}

/** Plays a recording to the microphone of the sound server, and settles when it is over. */
export async function speak(server: PulseServer, folder: string, sound: Pcm): Promise<void> {
  const file = join(folder, 'said.wav');
  writeFileSync(file, encodeWav(sound));
  const player = spawn('paplay', [`--device=${server.sink}`, file], { env: server.env, stdio: 'ignore' });
  const [code] = await once(player, 'close');
  if (code !== 0) throw new Error(`paplay ended with ${code}; install pulseaudio-utils.`);
}
