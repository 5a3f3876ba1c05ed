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

/** One start, phase by phase and person by person, beside what it was before. */
function tableOf({ profile, by, shares }: Measured, before: Measured | undefined): string {
  const old = before?.shares ?? [];
  const keys = [...new Set([...shares, ...old].map(({ phase, person }) => `${phase} | ${person}`))];
  const phases = [...new Set([...shares, ...old].map(({ phase }) => phase))];
  const inPhases = (key: string) => phases.indexOf(key.slice(0, key.indexOf(' ')));
  const rows = keys
    .sort((one, other) => inPhases(one) - inPhases(other))
    .map(key => {
      const own = (all: readonly Share[]) =>
        figures(all.filter(({ phase, person }) => `${phase} | ${person}` === key));
      return `| ${key} | ${own(old)} | ${own(shares)} |`;
    });
  return [
    `## ${profile}, ${named[by]}`,
    '',
    '| phase | person | before | now |',
    '|---|---|---:|---:|',
    ...rows,
    `| **all** | | **${figures(old)}** | **${figures(shares)}** |`,
  ].join('\n');
}

/** The document: each start in a table, answers and spoken seconds. */
export function documentOf(measured: readonly Measured[], before: readonly Measured[]): string {
  const tables = measured.map(each =>
    tableOf(
      each,
      before.find(({ profile, by }) => profile === each.profile && by === each.by),
    ),
  );
  return `# Answers and spoken seconds of a start

A start in which all goes well, led through the real session: how many answers are asked for, and how many seconds the
tool speaks where each sentence is heard to its end (embedded voice, call-outs twice), by the phase and by the person who
is asked next. "Before" was measured by the same command when each confirmation was still read back, however it came
(\`words-before.json\`). Written by \`npm run words -- --write\`.

${tables.join('\n\n')}
`;
}
