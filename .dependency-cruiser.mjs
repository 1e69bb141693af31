// Which room may open which door. DEVELOPERS.md says why; the comment of a rule says what to do instead.
const layer = (folder, comment, may = []) => ({
  name: `${folder.replace('/', '-')}-imports`,
  comment,
  severity: 'error',
  from: { path: `^${folder}/` },
  to: { path: '^(src|worklets)/', pathNot: `^(${[folder, ...may].join('|')})/` },
});
const piano = 'src/piano';
const analysis = 'src/analysis';
const pure = [piano, analysis, 'src/survey', 'src/stability', 'src/stringing', 'src/files', 'src/report'];

export default {
  forbidden: [
    layer(piano, 'The piano knows nothing but itself.'),
    layer(analysis, 'Samples in, figures out: analysis may use piano only.', [piano]),
    layer('src/files', 'The open formats are text and bytes: files may use piano only.', [piano]),
    layer('src/survey', 'A survey turns sound into readings: piano and analysis only.', [piano, analysis]),
    layer('src/stability', 'Readings over years become causes: piano and analysis only.', [piano, analysis]),
    layer('src/stringing', 'The stringing desk: piano and analysis only.', [piano, analysis]),
    layer('src/report', 'The page is plain data: piano, stability and stringing only.', [
      piano,
      'src/stability',
      'src/stringing',
    ]),
    layer('src/records', 'The only door to the database: piano and files only.', [piano, 'src/files']),
    layer('worklets', 'A worklet copies and posts; it may use types of piano only.', [piano]),
    layer('src/capture', 'Capture hands over samples; it does not judge them.', [piano, 'worklets']),
    layer('src/workers', 'A worker unpacks, calls and packs.', [
      piano,
      analysis,
      'src/survey',
      'src/stability',
      'src/files',
    ]),
    layer('src/ui', 'Shared components draw what they are given; files writes the numbers that a chart hands out.', [
      piano,
      'src/files',
    ]),
    layer('src/listening', 'What screens that listen share: the microphone with its workers, and where takes go.', [
      piano,
      analysis,
      'src/survey',
      'src/records',
      'src/capture',
      'src/workers',
      'src/ui',
    ]),
    layer(
      'src/judging',
      'What screens that judge the years share: the judgement off the page, and what stands there meanwhile.',
      [...pure, 'src/records', 'src/workers', 'src/ui'],
    ),
    layer('src/screens', 'Screens compose; move shared logic down a layer.', [
      ...pure,
      'src/records',
      'src/capture',
      'src/workers',
      'src/listening',
      'src/judging',
      'src/ui',
      'worklets',
    ]),
    layer('src/cli', 'The command line calls the pure layers.', pure),
    {
      name: 'pure-layers-take-no-packages',
      severity: 'error',
      comment: 'A package or Node module here needs a numbered decision first (DEVELOPERS.md).',
      from: { path: '^src/(piano|analysis|survey|stability|stringing|files|report)/' },
      to: {
        path: '(node_modules/|^node:|^fs$|^path$)',
        pathNot:
          'node_modules/(fft\\.js|pitchfinder|valibot|papaparse|fflate|@noble/hashes/|@wasm-audio-decoders/|mpg123-decoder)',
      },
    },
    {
      name: 'dexie-stays-in-records',
      severity: 'error',
      comment: 'Ask a function of src/records instead.',
      from: { pathNot: '^(src|tests)/records/' },
      to: { path: 'node_modules/dexie' },
    },
    {
      name: 'screens-do-not-import-screens',
      severity: 'error',
      comment: 'Move the shared part to ui or down a layer.',
      from: { path: '^src/screens/([^/]+)/' },
      to: { path: '^src/screens/', pathNot: '^src/screens/$1/' },
    },
    {
      name: 'no-circular',
      severity: 'error',
      comment: 'Move the shared part down a layer.',
      from: {},
      to: { circular: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.mjs', '.js'] },
  },
};
