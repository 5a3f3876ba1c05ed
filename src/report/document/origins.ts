import { valueFields } from '../../profile/fields.ts';
import { assumedFields, origins, saysWhere } from '../../profile/provenance.ts';
import { fill } from '../../session/wording.ts';
import type { Manner } from '../manner.ts';
import type { ReportModel } from '../model.ts';
import type { Block } from './blocks.ts';

/** Where the values of the profile come from, counted, and each one that was only assumed; nothing for older profiles. */
export function originsSection({ profile }: ReportModel, manner: Manner): Block[] {
  if (!profile || !saysWhere(profile)) return [];
  const { words, language } = manner;
  const { provenance } = profile;
  const counts = origins.flatMap(from => {
    const n = valueFields.filter(path => provenance[path]?.from === from).length;
    return n === 0 ? [] : [fill(words.origins.count, { n: String(n), from: words.origins.from[from] })];
  });
  const assumed = assumedFields(profile);
  return [
    { type: 'section', title: words.origins.title, note: counts.join(', ') },
    assumed.length === 0
      ? { type: 'text', text: words.origins.none, tone: 'muted' }
      : {
          type: 'list',
          items: assumed.map(path => {
            const by = provenance[path]?.acceptedBy;
            const name = language.values[path];
            return {
              text:
                by === undefined
                  ? fill(words.origins.assumed, { name })
                  : fill(words.origins.accepted, { name, by }),
              tone: 'warn' as const,
            };
          }),
        },
  ];
}
