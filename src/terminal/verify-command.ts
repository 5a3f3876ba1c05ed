import type { Command } from 'commander';
import {
  checkSignature,
  checkSignedBy,
  readPublicKey,
  readSignatures,
  type SignatureCheck,
  SigningError,
  type Verification,
  verifyLog,
} from '../record/index.ts';
import { replayText } from '../report/document/trust-text.ts';
import { gather } from '../report/gather.ts';
import { mannerOf } from '../report/manner.ts';
import { isConfirmed, type Trust } from '../report/model.ts';
import { summarize } from '../report/summarize.ts';
import { readText } from './signing-commands.ts';

const ALTERED = 1;
const UNREADABLE = 2;
const NOT_CONFIRMED = 3;

/**
 * Adds `verify FILE` to the command line: prints one line, and one for each signature beside it, and sets the exit
 * code to 0 for a sound record, 1 for one that was changed, cut, not signed with the key asked for, or has a signature
 * beside it that does not hold, 2 when the file cannot be read at all, 3 for one whose chain holds and whose events,
 * carried out once more, are not known to lead to what it says: it was altered and chained anew, is no session, or another
 * version wrote it, whose procedure was another. Which of them is said.
 */
export function registerVerify(program: Command): void {
  program
    .command('verify')
    .description('check that a record was not altered since it was written')
    .argument('<file>', 'the record, a file of JSON lines')
    .option('--hash <hash>', 'the hash at the foot of the report, to find lines cut off the end')
    .option('--key <file>', 'a public key: the record must be signed with it')
    .addHelpText(
      'after',
      `
Exit code 0: as written, and confirmed. 1: a line was altered, cut off or put in, or a signature does not hold.
2: it cannot be read. 3: every line is chained, and the record is not confirmed; why is said.`,
    )
    .action(async (file: string, options: { hash?: string; key?: string }) => {
      const verification = await verifyLog(
        file,
        options.hash === undefined ? {} : { lastHash: options.hash },
      );
      const trust = verification.ok ? summarize(await gather(file)).trust : undefined;
      console.log(describeVerification(file, verification, trust));
      process.exitCode = exitCode(verification, trust);
      if (!verification.ok) return;
      const { lastHash } = verification;
      const checks =
        options.key === undefined
          ? await checkBeside(file, lastHash)
          : [await checkKey(file, options.key, lastHash)];
      for (const { sentence, valid } of checks) {
        console.log(`${file}: ${sentence}`);
        if (!valid) process.exitCode = ALTERED;
      }
    });
}

/** The signatures that lie beside a record, whoever made them. */
async function checkBeside(file: string, lastHash: string): Promise<readonly SignatureCheck[]> {
  try {
    return (await readSignatures(file)).map(signature => checkSignature(signature, lastHash));
  } catch (error) {
    if (error instanceof SigningError) return [{ valid: false, sentence: error.message }];
    throw error;
  }
}

async function checkKey(file: string, keyPath: string, lastHash: string): Promise<SignatureCheck> {
  try {
    const key = readPublicKey(await readText(keyPath), keyPath);
    return checkSignedBy(await readSignatures(file), key, lastHash);
  } catch (error) {
    if (error instanceof SigningError) return { valid: false, sentence: error.message };
    throw error;
  }
}

/** One line for people. */
function describeVerification(file: string, verification: Verification, trust: Trust | undefined): string {
  if (!verification.ok) {
    // A sentence about the file as a whole names it already.
    return verification.line === undefined ? verification.sentence : `${file}: ${verification.sentence}`;
  }
  const { entries, lastHash, remarks } = verification;
  const count = entries === 1 ? '1 entry is' : `all ${entries} entries are`;
  const holds = trust === undefined || isConfirmed(trust) ? `${count} as written` : `${count} chained`;
  return [
    `${file}: ${holds}; the last hash is ${lastHash}.`,
    ...remarks.map(remark => remark.sentence),
    ...(trust === undefined ? [] : replaySentences(trust)),
  ].join(' ');
}

function replaySentences({ replayFault, notUnderstood }: Trust): readonly string[] {
  if (replayFault !== undefined)
    return [`NOT CONFIRMED: ${replayText(replayFault, mannerOf('en', 'metric'))}`];
  return notUnderstood.length === 0
    ? []
    : [`NOT CONFIRMED: of ${notUnderstood.length} entries this version knows no kind.`];
}

function exitCode(verification: Verification, trust: Trust | undefined): number {
  if (!verification.ok) return verification.problem === 'unreadable' ? UNREADABLE : ALTERED;
  return trust === undefined || isConfirmed(trust) ? 0 : NOT_CONFIRMED;
}
