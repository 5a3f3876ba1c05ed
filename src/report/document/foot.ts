import { fill } from '../../session/wording.ts';
import { dateTime, time } from '../format.ts';
import type { Manner } from '../manner.ts';
import type { ReportModel } from '../model.ts';
import { capital } from '../names.ts';
import type { Block } from './blocks.ts';
import { provedByKey, signatureText } from './trust-text.ts';

/** How the signature in the record came about: on whose device, by whose key, or not proved. */
function signingBlocks({ signing, trust, job }: ReportModel, manner: Manner): Block[] {
  if (signing === null) return [];
  const words = manner.words.foot;
  const blanks = {
    name: job?.supervisor ?? capital(manner.name.person('supervisor')),
    time: time(signing.timeMs),
    device: signing.device ?? '',
  };
  if (signing.device !== undefined)
    return [{ type: 'text', tone: 'good', text: fill(words.signedOnDevice, blanks) }];
  return provedByKey(trust)
    ? [{ type: 'text', tone: 'good', text: fill(words.signedByKey, blanks) }]
    : [{ type: 'text', tone: 'warn', text: fill(words.signedUnproved, blanks) }];
}

/** Where people sign, and the hash by which the record is known. */
export function footBlocks(model: ReportModel, manner: Manner): Block[] {
  const { job, trust } = model;
  const { name } = manner;
  const words = manner.words.foot;
  const line = (role: 'technician' | 'second' | 'supervisor', note: string) => ({
    role: capital(name.person(role)),
    name: job?.[role] ?? '',
    note,
  });
  const blocks: Block[] = [
    { type: 'section', title: words.title },
    { type: 'signatures', lines: [line('technician', ''), line('second', ''), line('supervisor', '')] },
    ...signingBlocks(model, manner),
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
