import type { Grammar, Heard } from '../../src/voice/ports.ts';
import { isControl } from './controls.ts';
import type { Listener } from './listener.ts';
import { readBackGrammar } from './read-back.ts';

/** So long a session waits for a yes to what it has read back. */
const readBackMs = 8_000;

const isReadBack = (heard: Heard) =>
  heard.kind === 'number' || (heard.kind === 'reply' && !isControl(heard.id));

/**
 * Does as a session does: what is taken for a reply or a number is read back, and a yes or a no is waited for. Only what
 * answers the question itself is passed on, and stops.
 * @param onConfirmed is told of each thing that was read back and taken to be agreed to
 */
export function confirming(listener: Listener, onConfirmed: () => void): Listener {
  return scene => {
    const { ear, cpuMs } = listener(scene);
    let asked: Grammar | undefined;
    let waitsMs = 0;
    let onHeard: (heard: Heard) => void = () => {};
    const goOn = () => {
      waitsMs = 0;
      if (asked !== undefined) ear.listen(asked);
    };
    ear.onHeard(heard => {
      if (waitsMs <= 0 || heard.kind === 'stop') {
        onHeard(heard);
        if (!isReadBack(heard)) return;
        waitsMs = readBackMs;
        ear.listen(readBackGrammar);
      } else if (heard.kind === 'reply') {
        if (heard.id === 'yes') onConfirmed();
        goOn();
      }
    });
    return {
      cpuMs,
      ear: {
        ...ear,
        listen(grammar) {
          asked = grammar;
          if (waitsMs <= 0) ear.listen(grammar);
        },
        onHeard(handler) {
          onHeard = handler;
        },
        async hear(block) {
          await ear.hear(block);
          if (waitsMs <= 0) return;
          waitsMs -= (1000 * block.samples.length) / block.sampleRateHz;
          if (waitsMs <= 0) goOn();
        },
      },
    };
  };
}
