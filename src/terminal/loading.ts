/** Nothing is imported here: it is said before anything else is loaded. */
const english = 'Loading: the screen comes in some seconds, later on a busy computer.';
const others: Readonly<Record<string, string>> = {
  fr: "Chargement : quelques secondes, davantage si l'ordinateur est occupé.",
  es: 'Cargando: unos segundos, más si el ordenador está ocupado.',
};

/** Commands that take the whole screen. */
const WITH_A_SCREEN = ['rehearse', 'resume'];
const HELP = ['--help', '-h'];

/**
 * What is said where a screen will come: for a session, a rehearsal, and one that is gone on with.
 * @param words the command line
 * @returns null for everything else
 */
export function loadingLine(words: readonly string[]): string | null {
  const [first = '-'] = words;
  if (!first.startsWith('-') && !WITH_A_SCREEN.includes(first)) return null;
  if (words.some(word => HELP.includes(word))) return null;
  const code = /(?:^| )--language[= ](\w+)/.exec(words.join(' '))?.[1] ?? '';
  return others[code] ?? english;
}
