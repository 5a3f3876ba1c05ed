import { readFileSync, writeFileSync } from 'node:fs';
import { z } from 'zod';

const trainingText = z.strictObject({
  text: z.string().min(1),
  /** One pronunciation of each word, in the phones of the dictionary. */
  phones: z.string().min(1),
  kind: z.enum(['reply', 'stop', 'other']),
});

/** What one training utterance says, in words and in phones. */
export type TrainingText = z.infer<typeof trainingText>;

const pathIn = (folder: string) => `${folder}/texts.jsonl`;

export const writeTexts = (folder: string, texts: readonly TrainingText[]): void =>
  writeFileSync(pathIn(folder), texts.map(text => `${JSON.stringify(text)}\n`).join(''));

/** @throws when the file is missing or holds anything else. */
export const readTexts = (folder: string): readonly TrainingText[] =>
  readFileSync(pathIn(folder), 'utf8')
    .trim()
    .split('\n')
    .map(line => trainingText.parse(JSON.parse(line)));
