import { VoiceError } from '../../voice/errors.ts';
import { wakeByTouch } from '../device/audio.ts';
import captureUrl from './capture-worklet.ts?worker&url';

/** A microphone whose sound goes straight to the thread that listens. */
export interface Microphone {
  readonly description: string;
  readonly sampleRateHz: number;
  /** Hand this one over to whoever listens. */
  readonly port: MessagePort;
  onLost(handler: () => void): void;
  /** Told now and at each change: whether the browser or the system keeps its sound back. */
  onHeldBack(handler: (isHeldBack: boolean) => void): void;
  close(): void;
}

const reasons: Readonly<Record<string, string>> = {
  NotAllowedError: 'it was not allowed; allow it in the browser',
  NotFoundError: 'there is none; plug one in',
  NotReadableError: 'another program has it; close that one',
};

/**
 * Opens the microphone. The browser takes out what its own loudspeaker says; its noise filter stays off,
 * because the recognizer has a front end of its own.
 * @throws VoiceError `microphoneUnusable`, one sentence
 */
export async function openMicrophone(context: AudioContext): Promise<Microphone> {
  if (!navigator.mediaDevices)
    throw new VoiceError(
      'microphoneUnusable',
      'This page may not use a microphone, because it did not come over https; answer by touch.',
    );
  const stream = await navigator.mediaDevices
    .getUserMedia({
      audio: { channelCount: 1, echoCancellation: true, noiseSuppression: false, autoGainControl: false },
    })
    .catch((cause: unknown) => {
      const name = cause instanceof Error ? cause.name : String(cause);
      throw new VoiceError(
        'microphoneUnusable',
        `The microphone cannot be used: ${reasons[name] ?? name}. Answer by touch until then.`,
        { cause },
      );
    });
  const { source, at } = connect(stream, context);
  await at.audioWorklet.addModule(captureUrl);
  const capture = new AudioWorkletNode(at, 'capture', { numberOfOutputs: 0 });
  const { port1, port2 } = new MessageChannel();
  capture.port.postMessage(port2, [port2]);
  source.connect(capture);
  const [track] = stream.getAudioTracks();
  return {
    description: track?.label || 'microphone',
    sampleRateHz: at.sampleRate,
    port: port1,
    onLost(handler) {
      track?.addEventListener('ended', handler);
    },
    onHeldBack(handler) {
      const look = () => handler(at.state !== 'running' || track?.muted === true);
      look();
      at.addEventListener('statechange', look);
      track?.addEventListener('mute', look);
      track?.addEventListener('unmute', look);
    },
    close() {
      source.disconnect();
      for (const each of stream.getTracks()) each.stop();
      if (at !== context) void at.close();
    },
  };
}

/** Some browsers take a microphone only at its own rate: then it gets audio of its own, and is resampled later. */
function connect(stream: MediaStream, context: AudioContext) {
  try {
    return { source: context.createMediaStreamSource(stream), at: context };
  } catch {
    const at = new AudioContext();
    wakeByTouch(at);
    return { source: at.createMediaStreamSource(stream), at };
  }
}
