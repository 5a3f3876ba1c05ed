import { dateTime } from '../format.ts';
import type { ReportModel } from '../model.ts';
import { capital, nameOf } from '../names.ts';
import type { Block } from './blocks.ts';

/** Where people sign, and the hash by which the record is known. */
export function footBlocks({ job, trust, outcome }: ReportModel): Block[] {
  const spoken = outcome.kind === 'signedOff' ? 'Signed in the record.' : '';
  const line = (role: 'technician' | 'second' | 'supervisor', note: string) => ({
    role: capital(nameOf.person(role)),
    name: job?.[role] ?? '',
    note,
  });
  const blocks: Block[] = [
    { type: 'section', title: 'Signatures' },
    { type: 'signatures', lines: [line('technician', ''), line('second', ''), line('supervisor', spoken)] },
    ...trust.signatures.map(
      ({ role, keyId, at, valid, sentence }): Block => ({
        type: 'text',
        tone: valid ? 'good' : 'bad',
        text: valid
          ? `Digital signature (Ed25519) of the ${role}, key ${keyId}, ${dateTime(at)}: valid.`
          : sentence,
      }),
    ),
  ];
  if (trust.lastHash === undefined) return blocks;
  return [
    ...blocks,
    {
      type: 'hash',
      label: trust.sound
        ? 'SHA-256 of the last entry. To find any later change, also lines cut off the end, run: first-fire verify RECORD --hash followed by'
        : 'SHA-256 of the last sound entry; what follows it in the file is NOT VERIFIED',
      hash: trust.lastHash,
    },
  ];
}
