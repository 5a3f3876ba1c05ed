/** Longer than this nobody reads at a glance what is asked at its end. */
const LONGEST = 240;

export interface PromptParts {
  /** What has to be read before, where it is long: a list of what is done again. */
  readonly before: string;
  readonly question: string;
}

/** What is asked, apart from a long account of what it is about: sentences from the end on, as many as are read at once. */
export function promptParts(prompt: string): PromptParts {
  if (prompt.length <= LONGEST) return { before: '', question: prompt };
  const sentences = prompt.split(/(?<=[.!?]) /);
  const asked: string[] = [];
  let length = 0;
  while (
    sentences.length > 0 &&
    (asked.length === 0 || length + (sentences.at(-1)?.length ?? 0) <= LONGEST)
  ) {
    const last = sentences.pop() ?? '';
    length += last.length;
    asked.unshift(last);
  }
  return { before: sentences.join(' '), question: asked.join(' ') };
}
