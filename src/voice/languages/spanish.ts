import { spanishNumbers } from '../number-words/spanish.ts';
import type { VoiceLanguage } from './language.ts';

/** Written, shown and spoken; no ear was taught it yet. */
export const spanish: VoiceLanguage = {
  code: 'es',
  tag: 'es-ES',
  englishName: 'Spanish',
  // `say` was not tried.
  voice: [
    { program: 'espeak-ng', args: path => ['-v', 'es', '-s', '150', '--stdin', '-w', path] },
    { program: 'say', args: path => ['-v', 'Mónica', '--data-format=LEI16@22050', '-o', path, '-f', '-'] },
  ],
  numbers: spanishNumbers,
  caution:
    'En español no se oye nada de lo que se dice: ni respuestas ni la palabra de emergencia. Responda con los botones o el teclado; para pararlo todo, el botón rojo o Escape.',
  homophones: {
    grado: 'grados',
    metro: 'metros',
    pie: 'pies',
    litro: 'litros',
    cuarto: 'cuartos',
    galon: 'galones',
    voltio: 'voltios',
    bar: 'bares',
    libra: 'libras',
    segundo: 'segundos',
    lista: 'listos',
    listo: 'listos',
    listas: 'listos',
    diesel: 'combustible',
    gasoleo: 'combustible',
  },
};
