import { fill } from '../../session/wording.ts';
import { dateTime } from '../format.ts';
import type { Manner } from '../manner.ts';
import type { ReportModel } from '../model.ts';
import { capital } from '../names.ts';
import type { Block } from './blocks.ts';
import { signatureText } from './trust-text.ts';

/** Where people sign, and the hash by which the record is known. */
export function footBlocks({ job, trust, outcome }: ReportModel, manner: Manner): Block[] {
  const { name } = manner;
  const words = manner.words.foot;
  const spoken = outcome.kind === 'signedOff' ? words.signedInRecord : '';
  const line = (role: 'technician' | 'second' | 'supervisor', note: string) => ({
    role: capital(name.person(role)),
    name: job?.[role] ?? '',
    note,
  });
  const blocks: Block[] = [
    { type: 'section', title: words.title },
    { type: 'signatures', lines: [line('technician', ''), line('second', ''), line('supervisor', spoken)] },
    ...trust.signatures.map(
      (signature): Block => ({
        type: 'text',
        tone: signature.valid ? 'good' : 'bad',
        text: signature.valid
          ? fill(words.valid, {
              owner: name.keyOwner(signature.role),
              keyId: signature.keyId,
              at: dateTime(signature.at, manner),
            })
          : signatureText(signature, manner),
      }),
    ),
  ];
  if (trust.lastHash === undefined) return blocks;
  return [
    ...blocks,
    {
      type: 'hash',
      label: trust.sound ? words.lastHash : words.lastSoundHash,
      hash: trust.lastHash,
    },
  ];
}
