import { stepMs } from './sound.ts';
import { powerDbfs } from './voice-power.ts';

/** What the seconds before an utterance were like; longer than a reply is. */
const windowSteps = 4_000 / stepMs;
/** Less than this has not been heard for long enough. */
const leastSteps = 500 / stepMs;

/**
 * What is heard all the time, whoever speaks: half of the last seconds were no louder. A machine goes on, and so do talk
 * and a radio; who answers the tool has been silent for most of them.
 */
export class Background {
  private readonly powers: number[] = [];

  /** @param power of the next step */
  next(power: number): void {
    this.powers.push(power);
    if (this.powers.length > windowSteps) this.powers.shift();
  }

  /**
   * Its level, dB relative to full scale; undefined until enough was heard.
   * @param without so many of the last steps: an utterance is noticed late
   */
  levelDbfs(without = 0): number | undefined {
    const heard = this.powers.slice(0, Math.max(0, this.powers.length - without));
    if (heard.length < leastSteps) return undefined;
    return powerDbfs(heard.sort((a, b) => a - b)[(heard.length - 1) >> 1] ?? 0);
  }
}
