import { HASH } from './entry.ts';
import { type ChainProblem, explain, type Fault, faultOf } from './explain.ts';
import { RecordError } from './record-error.ts';
import { withRecordFile } from './record-file.ts';
import { type Remark, remarkOf, watchWallClock } from './remarks.ts';
import { scan } from './scan.ts';

export type Verification =
  | {
      readonly ok: true;
      readonly entries: number;
      readonly lastHash: string;
      /** Nothing that speaks against the record, but worth knowing; no more than `MAX_REMARKS`. */
      readonly remarks: readonly Remark[];
    }
  | {
      readonly ok: false;
      readonly problem: ChainProblem | 'unreadable';
      /** The first line at fault, from 1; absent when the file as a whole is. */
      readonly line?: number;
      readonly sentence: string;
    };

export interface VerifyOptions {
  /** The hash at the foot of the report. Without it nobody can tell that lines were cut off the end. */
  readonly lastHash?: string;
}

export const MAX_REMARKS = 100;

/**
 * Checks every line of a record and their chain, in memory that does not grow with the file. Never throws.
 * A record that was continued after the report with the expected hash is sound, with a remark that says so.
 */
export async function verifyLog(path: string, options: VerifyOptions = {}): Promise<Verification> {
  const expected = options.lastHash?.trim().toLowerCase();
  if (expected !== undefined && !HASH.test(expected)) {
    return {
      ok: false,
      problem: 'unreadable',
      sentence:
        'The expected hash is not one: copy all 64 digits (0 to 9, a to f) from the foot of the report.',
    };
  }
  try {
    return await withRecordFile(path, async record => {
      const remarks: Remark[] = [];
      let expectedLine: number | undefined;
      const wallClock = watchWallClock();
      const result = await scan(record, link => {
        if (link.hash === expected) expectedLine = link.seq + 1;
        const remark = wallClock(link);
        if (remark !== undefined && remarks.length < MAX_REMARKS) remarks.push(remark);
      });
      const { entries, last, stop } = result;
      if (stop !== undefined) return failed(await explain(record, result, stop));
      if (last === undefined) throw new RecordError('empty', `${path} holds no entry.`);
      if (expected !== undefined && expectedLine === undefined) {
        return failed(faultOf({ found: 'cutOff', line: entries + 1 }));
      }
      if (expectedLine !== undefined && expectedLine < entries)
        remarks.push(remarkOf({ found: 'continued', line: expectedLine + 1, more: entries - expectedLine }));
      return { ok: true, entries, lastHash: last.hash, remarks };
    });
  } catch (error) {
    const sentence =
      error instanceof RecordError ? error.message : `${path} cannot be checked: ${String(error)}.`;
    return { ok: false, problem: 'unreadable', sentence };
  }
}

const failed = ({ problem, line, sentence }: Fault): Verification => ({ ok: false, problem, line, sentence });
