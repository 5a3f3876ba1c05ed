import type { Means, Share } from './lead.ts';

/** What one start asked for. */
export interface Measured {
  readonly profile: string;
  readonly by: Means;
  readonly shares: readonly Share[];
}

const sumOf = (shares: readonly Share[]) => ({
  answers: shares.reduce((sum, share) => sum + share.answers, 0),
  spokenS: shares.reduce((sum, share) => sum + share.spokenS, 0),
});

const figures = (shares: readonly Share[]) => {
  const { answers, spokenS } = sumOf(shares);
  return `${answers} / ${Math.round(spokenS)} s`;
};

export const summaryOf = ({ profile, by, shares }: Measured): string =>
  `${profile} by ${by}: ${figures(shares)}`;

const named = { voice: 'by voice', keys: 'by keys' } as const;

/** One start, phase by phase and person by person. */
function tableOf({ profile, by, shares }: Measured): string {
  const rows = shares.map(share => `| ${share.phase} | ${share.person} | ${figures([share])} |`);
  return [
    `## ${profile}, ${named[by]}`,
    '',
    '| phase | person | answers / spoken |',
    '|---|---|---:|',
    ...rows,
    `| **all** | | **${figures(shares)}** |`,
  ].join('\n');
}

/** The document: each start in a table, answers and spoken seconds. */
export function documentOf(measured: readonly Measured[]): string {
  return `# Answers and spoken seconds of a start

A start in which all goes well, led through the real session: how many answers are asked for, and how many seconds the
tool speaks where each sentence is heard to its end (embedded voice, call-outs twice), by the phase and by the person who
is asked next. Written by \`npm run words -- --write\`.

${measured.map(tableOf).join('\n\n')}
`;
}
