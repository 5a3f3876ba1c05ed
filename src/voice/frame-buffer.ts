/** Cuts a stream that comes in pieces of any length into frames of one length. */
export class FrameBuffer {
  private readonly frameLength: number;
  private rest = new Float32Array(0);

  constructor(frameLength: number) {
    this.frameLength = frameLength;
  }

  /** The frames that the next piece makes whole; each is a copy. */
  next(samples: Float32Array): Float32Array[] {
    const joined = new Float32Array(this.rest.length + samples.length);
    joined.set(this.rest);
    joined.set(samples, this.rest.length);
    const whole = joined.length - (joined.length % this.frameLength);
    const frames: Float32Array[] = [];
    for (let at = 0; at < whole; at += this.frameLength) {
      frames.push(joined.slice(at, at + this.frameLength));
    }
    this.rest = joined.slice(whole);
    return frames;
  }
}
