import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

/** A sound server of its own, with a loudspeaker that nobody hears and a microphone that hears it. */
export interface PulseServer {
  /** For programs that should use this server. */
  readonly env: NodeJS.ProcessEnv;
  readonly sink: string;
  /** The microphone: hears exactly what is played on `sink`. */
  readonly monitor: string;
  /** Pulls the plug. */
  kill(): Promise<void>;
}

/**
 * Starts Debian's pulseaudio with a null sink.
 * @param folder its own, where its socket and its state are
 * @throws Error when it does not start
 */
export async function launchPulse(folder: string): Promise<PulseServer> {
  const socket = join(folder, 'native');
  const env = {
    ...process.env,
    HOME: folder,
    XDG_RUNTIME_DIR: folder,
    PULSE_RUNTIME_PATH: folder,
    PULSE_SERVER: `unix:${socket}`,
  };
  const modules = [
    `module-native-protocol-unix socket=${socket} auth-anonymous=1`,
    'module-null-sink sink_name=bay rate=16000 channels=1',
  ];
  const server = spawn(
    'pulseaudio',
    ['-n', '--daemonize=no', '--exit-idle-time=-1', '--use-pid-file=no', ...modules.flatMap(m => ['-L', m])],
    { env, stdio: 'ignore' },
  );
  const ended = once(server, 'close');
  const kill = async () => {
    server.kill('SIGKILL');
    await ended;
  };
  for (let tries = 0; tries < 100; tries += 1) {
    try {
      execFileSync('pactl', ['set-default-source', 'bay.monitor'], { env, stdio: 'ignore' });
      return { env, sink: 'bay', monitor: 'bay.monitor', kill };
    } catch {
      // Not listening yet.
      await wait(100);
    }
  }
  await kill();
  throw new Error('pulseaudio did not start within ten seconds.');
}
