import { join } from 'node:path';
import { expect, it } from 'vitest';
import { toolSection } from '../../src/report/document/stories.ts';
import { mannerOf } from '../../src/report/manner.ts';
import { summarize } from '../../src/report/summarize.ts';
import { demoHeader, inputOf, tempFolder, writeLog } from './support.ts';

it.each([
  [
    'en',
    'Call for help from Office (supervisor), smoke or fire: not carried out; whoever called is not at the engine.',
  ],
  [
    'fr',
    "Appel à l'aide de Office (chef d'atelier), fumée ou incendie : sans effet ; la personne n'est pas auprès du moteur.",
  ],
  [
    'es',
    'Llamada de auxilio de Office (jefe de taller), humo o fuego: sin efecto; quien llamó no está junto al motor.',
  ],
] as const)(
  'a call for help that was not carried out is told with who called, for what, and why not: %s',
  async (language, sentence) => {
    const path = join(tempFolder(), 'record.jsonl');
    const data = {
      ...{ id: 'i', device: 'd', name: 'Office', role: 'supervisor' },
      ...{ do: 'stop', cause: 'smokeOrFire', why: 'notAtEngine' },
    };
    await writeLog(path, [{ kind: 'notCarriedOut', data }], await demoHeader());
    const section = toolSection(summarize(await inputOf(path)), mannerOf(language, 'us'));
    expect(JSON.stringify(section)).toContain(sentence);
  },
);
