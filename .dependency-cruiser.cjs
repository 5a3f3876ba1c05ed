/** Imports run one way; the map is in DEVELOPERS.md. */
const only = (name, from, allowed) => ({
  name,
  severity: 'error',
  from: { path: `^${from}/` },
  to: { path: '^(src|machines|prompts|bench|tests)/', pathNot: [`^${from}/`, ...allowed.map(a => `^${a}/`)] },
});

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    only('engineering-knows-nobody', 'src/engineering', []),
    only('prompts-knows-nobody', 'prompts', []),
    only('profile-knows-nobody', 'src/profile', []),
    only('machines-know-the-pure-parts', 'machines', ['src/engineering', 'src/profile', 'prompts']),
    only('voice-knows-itself', 'src/voice', []),
    only('bus-knows-itself', 'src/bus', []),
    only('record-knows-itself', 'src/record', []),
    only('session-joins-them', 'src/session', [
      'src/engineering',
      'src/profile',
      'prompts',
      'machines',
      'src/voice',
      'src/bus',
      'src/record',
    ]),
    only('report-reads-the-record-in-the-words-of-a-session', 'src/report', [
      'src/engineering',
      'src/profile',
      'prompts',
      'machines',
      'src/record',
      'src/session',
    ]),
    only('archive-reads-what-a-report-reads', 'src/archive', [
      'src/engineering',
      'src/profile',
      'prompts',
      'machines',
      'src/record',
      'src/session',
      'src/report',
    ]),
    only('rehearsal-knows-the-session-and-below', 'src/rehearsal', [
      'src/engineering',
      'src/profile',
      'src/bus',
      'src/voice',
      'src/record',
      'src/session',
      'machines',
      'prompts',
    ]),
    {
      name: 'nobody-imports-the-rehearsal-but-faces',
      severity: 'error',
      from: { path: '^(src|machines|prompts)/', pathNot: '^src/(rehearsal|terminal|tablet|server)/' },
      to: { path: '^src/rehearsal/' },
    },
    {
      name: 'nobody-imports-the-report-but-the-archive-and-faces',
      severity: 'error',
      from: { path: '^(src|machines|prompts)/', pathNot: '^src/(report|archive|terminal|server)/' },
      to: { path: '^src/report/' },
    },
    {
      name: 'nobody-imports-the-archive-but-faces',
      severity: 'error',
      from: { path: '^(src|machines|prompts)/', pathNot: '^src/(archive|terminal|server)/' },
      to: { path: '^src/archive/' },
    },
    {
      name: 'nobody-imports-a-face',
      severity: 'error',
      from: { path: '^(src|machines|prompts)/', pathNot: '^src/(terminal|tablet|server)/' },
      to: { path: '^src/(terminal|tablet|server)/' },
    },
    {
      name: 'pure-parts-do-no-io',
      severity: 'error',
      from: { path: '^(src/engineering|src/rehearsal|machines|prompts)/' },
      to: { dependencyTypes: ['core'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.js', '.json'] },
  },
};
