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
  const sentences = prompt.match(/[^.!?]+(?:[.!?]+(?=\s|$)|[.!?]+(?=\S)|$)/g) ?? [prompt];
  let question = '';
  while (
    sentences.length > 0 &&
    (question === '' || question.length + (sentences.at(-1)?.length ?? 0) <= LONGEST)
  )
    question = `${sentences.pop()}${question}`;
  return { before: sentences.join('').trim(), question: question.trim() };
}
