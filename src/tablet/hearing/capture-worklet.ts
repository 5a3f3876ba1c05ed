/** About 20 ms at 16 kHz, 7 ms at 48 kHz: short against what the ear needs to decide, long against a message. */
const BLOCK_SAMPLES = 320;

/** Sends the microphone's sound on in blocks, through the port that it is given. */
class Capture extends AudioWorkletProcessor {
  private out: MessagePort | undefined;
  private block = new Float32Array(BLOCK_SAMPLES);
  private filled = 0;

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<MessagePort>) => {
      this.out = data;
    };
  }

  process([input]: Float32Array<ArrayBuffer>[][]): boolean {
    const [channel] = input ?? [];
    for (const sample of channel ?? []) {
      this.block[this.filled] = sample;
      this.filled += 1;
      if (this.filled === BLOCK_SAMPLES) this.send();
    }
    return true;
  }

  private send(): void {
    this.out?.postMessage(this.block, [this.block.buffer]);
    this.block = new Float32Array(BLOCK_SAMPLES);
    this.filled = 0;
  }
}

registerProcessor('capture', Capture);
