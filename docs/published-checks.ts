/** Writes docs/published-checks.md: what is checked against what. Run: node --import tsx docs/published-checks.ts */
import { writeFileSync } from 'node:fs';
import { publishedChecks } from '../tests/published/checks/index.ts';

const figure = (value: number): string => String(Number(value.toPrecision(8)));
const cell = (text: string): string => text.replaceAll('|', '\\|');

const rows = publishedChecks.map(({ subject, quantity, unit, source, expected, tolerance, compute }) => {
  const got = compute();
  const figures = [expected, got, got - expected, tolerance].map((value, column) =>
    column === 2 ? String(Number(value.toPrecision(2))) : figure(value),
  );
  return `| ${[subject, quantity, unit, ...figures, source].map(text => cell(text)).join(' | ')} |`;
});

const text = `# Published checks

What the calculations are held against. Written by \`node --import tsx docs/published-checks.ts\`; the same
rows run as tests (\`tests/published/published.test.ts\`).

| subject | quantity | unit | published | ours | deviation | tolerance | source |
|---|---|---|---:|---:|---:|---:|---|
${rows.join('\n')}
`;

writeFileSync(new URL('published-checks.md', import.meta.url), text);
console.log(`${rows.length} checks written to docs/published-checks.md`);
