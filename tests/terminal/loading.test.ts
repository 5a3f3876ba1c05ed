import { expect, it } from 'vitest';
import { loadingLine } from '../../src/terminal/loading.ts';

it.each([[], ['--no-mic'], ['rehearse', '--silent'], ['resume', 'a.jsonl']])(
  'a screen that will come is announced: %j',
  (...words: string[]) => {
    expect(loadingLine(words)).toMatch(/^Loading/);
    expect(loadingLine([...words, '--language', 'fr'])).toMatch(/^Chargement/);
    expect(loadingLine([...words, '--language=es'])).toMatch(/^Cargando/);
    expect(loadingLine([...words, '--language', 'xx'])).toMatch(/^Loading/);
  },
);

it.each([['verify', 'a.jsonl'], ['--help'], ['rehearse', '-h'], ['engine', 'new'], ['help']])(
  'what needs none says nothing: %j',
  (...words: string[]) => {
    expect(loadingLine(words)).toBeNull();
  },
);
