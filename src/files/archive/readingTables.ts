/** Tables of the archive: what was measured. */
import {
  type Column,
  editColumns,
  noteColumns,
  orAbsent,
  orNull,
  reference,
  required,
  stringColumn,
  type TableSpec,
  text,
} from './tableSpec.ts';

const U = 'Standard uncertainty of';

function readingColumns(): Column[] {
  return [
    required.number('onset_s', 'reading.onsetS', 'Time of the strike from the start of the recording, s'),
    required.number('duration_s', 'reading.durationS', 'Length of the take, s'),
    required.number('pitch_standard_hz', 'reading.pitchStandardHz', 'Frequency of A4 that cents are counted from, Hz'),
    required.number(
      'partial1_hz',
      'reading.partial1Hz',
      'The first partial as it sounds, or as the fit of the partials predicts it, Hz',
    ),
    required.number('partial1_hz_u', 'reading.partial1StandardUncertaintyHz', `${U} partial1_hz`),
    required.text(
      'partial1_source',
      'reading.partial1Source',
      'Whether partial1_hz was measured or comes from the fit',
      {
        oneOf: ['measured', 'fitted'],
      },
    ),
    orNull.number('f0_hz', 'reading.f0Hz', 'f0 in f_n = n·f0·sqrt(1 + B·n²), Hz'),
    orNull.number('f0_hz_u', 'reading.f0StandardUncertaintyHz', `${U} f0_hz`),
    orNull.number('inharmonicity_b', 'reading.inharmonicityB', 'B in f_n = n·f0·sqrt(1 + B·n²), no dimension'),
    orNull.number('inharmonicity_b_u', 'reading.inharmonicityBStandardUncertainty', `${U} inharmonicity_b`),
    required.number(
      'offset_cents',
      'reading.offsetCents',
      'partial1_hz against equal temperament at the pitch standard, cents',
    ),
    required.number('offset_cents_u', 'reading.offsetStandardUncertaintyCents', `${U} offset_cents`),
    required.text('beating', 'reading.beating.kind', 'What beating was heard', {
      oneOf: ['none', 'false beat', 'unison', 'undetermined'],
    }),
    orNull.number('beat_rate_hz', 'reading.beating.rateHz', 'Rate of the beat, Hz'),
    orNull.number(
      'beat_depth_db',
      'reading.beating.depthDb',
      'Depth of the beat, peak to trough without the decay, dB',
    ),
    required.list('beat_partials', 'reading.beating.partialNumbers', 'Numbers of the partials that beat'),
    text('beating_reason', 'reading.beating.reason', 'Why it is called so, in words'),
    orNull.list(
      'unison_strings_cents',
      'reading.unisonStringsCents',
      'The strings of an open unison against equal temperament, where they can be told apart, cents',
    ),
    orNull.number('life_time_s', 'reading.lifeTimeS', "Time for 60 dB of the whole tone's slow part, s"),
    required.number('snr_db', 'reading.quality.snrDb', 'Signal to noise of the take, dB; INF for a tone without noise'),
    required.boolean('is_clipped', 'reading.quality.isClipped', 'Whether the recording was overdriven'),
    required.boolean('is_usable', 'reading.quality.isUsable', 'Whether the take is good enough to be judged by'),
    required.list('faults', 'reading.quality.faults', 'What is wrong with the take'),
  ];
}

const readingNote = [
  ...noteColumns('reading_', 'reading.midi', 'The note that the reading was made as'),
  required.integer('reading_string_position', 'reading.stringPosition', 'The string that the reading was made as', {
    oneOf: [0, 1, 2, 3],
  }),
];

export const readings: TableSpec = {
  name: 'readings',
  title: 'Readings',
  description: 'One take of one note a row, with its newest reading. All takes are listed, kept or set aside',
  columns: [
    required.text('id', 'id', 'Identifies the take and its reading'),
    required.text('survey_id', 'surveyId', 'The survey'),
    required.text('visit_id', 'visitId', 'The visit'),
    required.text('instrument_id', 'instrumentId', 'The instrument'),
    ...noteColumns('', 'midi', 'The note'),
    stringColumn('stringPosition'),
    required.time('recorded_at', 'recordedAt', 'When it was recorded'),
    required.boolean('is_kept', 'isKept', 'True for the one take of its survey, note and string that counts'),
    ...readingColumns(),
    ...readingNote,
    orAbsent.text('program_version', 'measured.programVersion', 'The program that made the reading'),
    orAbsent.time('measured_at', 'measured.measuredAt', 'When the reading was made'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [
    reference('survey_id', 'surveys'),
    reference('visit_id', 'visits'),
    reference('instrument_id', 'instruments'),
  ],
  optionalGroups: { measured: 'absent' },
};

export const earlierReadings: TableSpec = {
  name: 'earlier-readings',
  title: 'Earlier readings',
  description:
    'What the sound of a take was read as before it was measured again, oldest first. Rows follow the order of readings.csv',
  columns: [
    required.text('reading_id', 'readingId', 'The take'),
    required.integer('earlier_number', 'earlierNumber', '1 for the oldest reading of the take, and so on', {
      minimum: 1,
    }),
    ...readingColumns(),
    ...readingNote,
    orNull.text('program_version', 'measured.programVersion', 'The program that made the reading'),
    orNull.time('measured_at', 'measured.measuredAt', 'When the reading was made'),
  ],
  key: ['reading_id', 'earlier_number'],
  foreignKeys: [reference('reading_id', 'readings')],
  optionalGroups: { measured: 'null' },
};

const ofReading = [
  required.text('reading_id', 'of.readingId', 'The take'),
  required.integer(
    'earlier_number',
    'of.earlierNumber',
    '0 for the reading in readings.csv, else the number of the row in earlier-readings.csv',
    { minimum: 0 },
  ),
];

export const partials: TableSpec = {
  name: 'partials',
  title: 'Partials',
  description: 'One partial of a reading a row. Rows follow the order of readings.csv',
  columns: [
    ...ofReading,
    required.integer('partial_number', 'partial.partialNumber', '1 for the lowest partial', { minimum: 1 }),
    required.number('frequency_hz', 'partial.frequencyHz', 'Frequency, Hz'),
    required.number('frequency_hz_u', 'partial.frequencyStandardUncertaintyHz', `${U} frequency_hz`),
    required.number('level_dbfs', 'partial.levelDbfs', 'Level at the start of the tone against full scale, dB'),
    required.number('snr_db', 'partial.snrDb', 'Signal to noise within the band of the partial, dB'),
    orNull.number('prompt_decay_s', 'partial.promptDecayTimeS', 'Prompt sound: time for 60 dB, s'),
    orNull.number('after_decay_s', 'partial.afterDecayTimeS', 'Aftersound: time for 60 dB, s'),
  ],
  key: ['reading_id', 'earlier_number', 'partial_number'],
  foreignKeys: [reference('reading_id', 'readings')],
  optionalGroups: {},
  apart: { partial: ['beats', 'components'] },
  quickRow: ([
    readingId,
    earlierNumber,
    partialNumber,
    frequencyHz,
    frequencyU,
    levelDbfs,
    snrDb,
    promptDecay,
    afterDecay,
  ]) => ({
    of: { readingId, earlierNumber },
    partial: {
      partialNumber,
      frequencyHz,
      frequencyStandardUncertaintyHz: frequencyU,
      levelDbfs,
      snrDb,
      promptDecayTimeS: promptDecay,
      afterDecayTimeS: afterDecay,
    },
  }),
};

const ofPartial = [
  ...ofReading,
  required.integer('partial_number', 'of.partialNumber', '1 for the lowest partial', { minimum: 1 }),
];

const linesOfPartial = {
  key: [],
  foreignKeys: [
    {
      columns: ['reading_id', 'earlier_number', 'partial_number'],
      table: 'partials',
      key: ['reading_id', 'earlier_number', 'partial_number'],
    },
  ],
  optionalGroups: {},
};

export const beats: TableSpec = {
  name: 'beats',
  title: 'Beats',
  description: 'One beat of a partial a row. Rows follow the order of partials.csv',
  columns: [
    ...ofPartial,
    required.number('rate_hz', 'line.rateHz', 'Rate, Hz'),
    required.number('rate_hz_u', 'line.rateStandardUncertaintyHz', `${U} rate_hz`),
    required.number('depth_db', 'line.depthDb', 'Peak to trough of the envelope without the decay, dB'),
  ],
  ...linesOfPartial,
  quickRow: ([readingId, earlierNumber, partialNumber, rateHz, rateStandardUncertaintyHz, depthDb]) => ({
    of: { readingId, earlierNumber, partialNumber },
    line: { rateHz, rateStandardUncertaintyHz, depthDb },
  }),
};

export const components: TableSpec = {
  name: 'components',
  title: 'Components',
  description: 'One damped sinusoid within a partial a row. Rows follow the order of partials.csv',
  columns: [
    ...ofPartial,
    required.number('frequency_hz', 'line.frequencyHz', 'Frequency, Hz'),
    required.number('frequency_hz_u', 'line.frequencyStandardUncertaintyHz', `${U} frequency_hz`),
    required.number('level_dbfs', 'line.levelDbfs', 'Level at the start of the tone against full scale, dB'),
    required.number('decay_s', 'line.decayTimeS', 'Time for 60 dB, s'),
  ],
  ...linesOfPartial,
  quickRow: ([readingId, earlierNumber, partialNumber, frequencyHz, frequencyU, levelDbfs, decayTimeS]) => ({
    of: { readingId, earlierNumber, partialNumber },
    line: { frequencyHz, frequencyStandardUncertaintyHz: frequencyU, levelDbfs, decayTimeS },
  }),
};

export const sounds: TableSpec = {
  name: 'sounds',
  title: 'Sounds',
  description: 'The sound clip of a take a row; the clips are the files in the folder sounds',
  columns: [
    required.text('id', 'id', 'The take'),
    required.text('survey_id', 'surveyId', 'The survey'),
    required.text('instrument_id', 'instrumentId', 'The instrument'),
    required.text('path', 'path', 'The file in this archive'),
    required.number('sample_rate_hz', 'sampleRateHz', 'Sample rate, Hz'),
    required.integer('onset_index', 'onsetIndex', 'Number of the sample at the strike, from 0', { minimum: 0 }),
    required.number('start_s', 'startS', 'Time of the first sample in the recording that it was cut from, s'),
    required.number('duration_s', 'durationS', 'Length of the clip, s'),
    required.number('take_duration_s', 'takeDurationS', 'Length of the whole take, s'),
    required.text('encoding', 'encoding', 'Format of the file', { oneOf: ['flac'] }),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [reference('id', 'readings')],
  optionalGroups: {},
};
