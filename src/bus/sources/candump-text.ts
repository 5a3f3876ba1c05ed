import { parseCandumpLine } from '../formats/candump.ts';
import { createPieceCutter } from '../formats/pieces.ts';
import type { OnFrame, OnNotice } from '../ports.ts';
import { conditionNotice, createRubbishCounter } from './notices.ts';

/** Reads a stream of `candump -L` text to its end, or until `closed` says so. Rejects only as the stream does. */
export async function readCandumpText(
  chunks: AsyncIterable<unknown>,
  onFrame: OnFrame,
  onNotice: OnNotice,
  closed: () => boolean,
): Promise<void> {
  const cutter = createPieceCutter('\n');
  const rubbish = createRubbishCounter('line', onNotice);

  async function take(lines: readonly string[]): Promise<void> {
    for (const line of lines) {
      if (closed()) return;
      const trimmed = line.trimEnd();
      if (trimmed === '') continue;
      const parsed = parseCandumpLine(trimmed);
      if (parsed.kind === 'rubbish') rubbish(parsed.reason, trimmed);
      else if (parsed.kind === 'condition') onNotice(conditionNotice(parsed.condition));
      else {
        const taken = onFrame(parsed.frame);
        if (taken) await taken;
      }
    }
  }

  for await (const chunk of chunks) {
    if (closed()) return;
    await take(cutter.push(String(chunk)));
  }
  await take(cutter.finish());
}
