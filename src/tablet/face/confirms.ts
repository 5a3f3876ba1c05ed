import { languages } from '../../../prompts/index.ts';
import type { View } from '../../session/view.ts';

/** What agrees to something that was read back, in the language of any session. */
const agreeing = new Set<string>(Object.values(languages).flatMap(({ replies }) => replies.yes));

/** Whether what was understood is only to be agreed to or not. */
export const confirms = ({ choices }: Pick<View, 'choices'>): boolean => agreeing.has(choices[0] ?? '');
