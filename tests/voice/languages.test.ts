import { describe, expect, it } from 'vitest';
import { french } from '../../prompts/fr/index.ts';
import type { Grammar, Heard } from '../../src/voice/ports.ts';
import { createTypedRecognizer } from '../../src/voice/recognizers/typed.ts';

const grammar: Grammar = {
  key: 'keyOn.battery.asking',
  language: 'fr',
  stop: french.stopWordings,
  replies: [
    { id: 'yes', wordings: french.replies.yes },
    { id: 'dark', wordings: french.replies.dark },
  ],
  number: {
    id: 'oilPressure',
    language: 'fr',
    leads: french.quantities.oilPressure.leads,
    units: french.units.bar.said,
    min: 0,
    max: 7,
    step: 0.1,
  },
};

function typed(text: string): Heard | undefined {
  const keys = createTypedRecognizer();
  let last: Heard | undefined;
  keys.onHeard(heard => {
    last = heard;
  });
  keys.listen(grammar);
  keys.type(text);
  return last;
}

describe('French at the keys', () => {
  it.each([
    'stop',
    'Arrête !',
    'arretez',
    'ARRÊTEZ LE MOTEUR',
    "arrêt d'urgence",
    'halte',
    'Coupez tout',
    'stoppe',
    'il faut arrêter',
  ])('stops everything at "%s", with or without accents', text => {
    expect(typed(text)).toMatchObject({ kind: 'stop' });
  });

  it.each([
    ['4,2', 4.2],
    ['4.2', 4.2],
    ['4,2 bar', 4.2],
    ["pression d'huile 4,2 bars", 4.2],
    ['quatre virgule deux', 4.2],
    ['3', 3],
  ])('takes "%s" for %d', (text, value) => {
    expect(typed(text)).toMatchObject({ kind: 'number', value });
  });

  it.each(['4,2,1', '1 234', '-4,2', '< 4,2', 'four point two', 'yes', '12'])(
    'takes "%s" for nothing',
    text => {
      expect(typed(text)).toMatchObject({ kind: 'unclear' });
    },
  );

  it('takes a reply without its accents and in another agreement', () => {
    expect(typed('eteints')).toMatchObject({ kind: 'reply', id: 'dark' });
  });
});
