/** Words for what a file system says: whoever opens a file has them. */
const FILES = '^src/files/';

/** Imports run one way; the map is in DEVELOPERS.md. */
const only = (name, from, allowed) => ({
  name,
  severity: 'error',
  from: { path: `^${from}/` },
  to: {
    path: '^(src|machines|prompts|bench|tests)/',
    pathNot: [`^${from}/`, FILES, ...allowed.map(a => `^${a}/`)],
  },
});

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    only('files-know-nobody', 'src/files', []),
    only('engineering-knows-nobody', 'src/engineering', []),
    only('prompts-knows-nobody', 'prompts', []),
    only('profile-knows-the-calculations', 'src/profile', ['src/engineering']),
    only('an-interview-knows-the-profile-the-calculations-and-the-words', 'src/interview', [
      'src/engineering',
      'src/profile',
      'prompts',
    ]),
    only('machines-know-the-pure-parts', 'machines', [
      'src/engineering',
      'src/profile',
      'src/record/vocabulary',
      'prompts',
    ]),
    only('voice-knows-itself', 'src/voice', []),
    only('bus-knows-itself', 'src/bus', []),
    {
      name: 'record-knows-itself-and-no-vocabulary',
      severity: 'error',
      from: { path: '^src/record/', pathNot: '^src/record/vocabulary/' },
      to: {
        path: '^(src|machines|prompts|bench|tests)/',
        pathNot: ['^src/record/(?!vocabulary/)', FILES],
      },
    },
    only('the-vocabulary-of-the-record-knows-the-names', 'src/record/vocabulary', [
      'src/record',
      'src/profile',
      'prompts',
    ]),
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
    only('tablet-knows-the-session-and-the-protocol', 'src/tablet', [
      'src/engineering',
      'src/interview',
      'src/profile',
      'prompts',
      'machines',
      'src/voice',
      'src/record',
      'src/session',
      'src/server/protocol',
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
      name: 'nobody-imports-the-tablet',
      severity: 'error',
      // What plays the people of a shop does so with the page's own connection.
      from: { path: '^(src|machines|prompts|bench)/', pathNot: '^(src/tablet|bench/(page|chaos))/' },
      to: { path: '^src/tablet/' },
    },
    {
      name: 'a-page-sees-only-the-protocol-of-the-server',
      severity: 'error',
      from: { path: '^src/tablet/' },
      to: { path: '^src/server/', pathNot: '^src/server/protocol/' },
    },
    {
      name: 'the-protocol-runs-in-a-browser',
      severity: 'error',
      from: { path: '^src/server/protocol/' },
      to: {
        path: '^(src|machines|prompts)/|node_modules',
        pathNot: ['^src/server/protocol/', '^src/record/vocabulary/', '^prompts/', '^node_modules/zod/'],
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'the-terminal-opens-the-server-by-its-door',
      severity: 'error',
      from: { path: '^src/terminal/' },
      to: { path: '^src/server/', pathNot: '^src/server/index\\.ts$' },
    },
    {
      name: 'the-server-knows-no-face',
      severity: 'error',
      from: { path: '^src/server/' },
      to: { path: '^src/(terminal|tablet)/' },
    },
    {
      name: 'pure-parts-do-no-io',
      severity: 'error',
      from: {
        path: [
          '^(machines|prompts)/',
          '^src/(engineering|interview|rehearsal)/',
          '^src/bus/(diagnostics|formats|transport)/',
          '^src/record/vocabulary/',
          '^src/report/(document|plot|story)/',
          '^src/server/protocol/',
          '^src/voice/(decoders|ear|number-words|speaker-profile)/',
        ],
      },
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
