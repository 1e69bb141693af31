/** Tables of the archive: the instruments, what was done to them, visits, surveys, and calibrations of microphones. */
import { editColumns, noteColumns, orAbsent, orNull, reference, required, type TableSpec, text } from './tableSpec.ts';

export const EVENT_KINDS = ['restrung', 'string-replaced', 'pin-replaced', 'block-work', 'moved', 'tuned'] as const;

export const instruments: TableSpec = {
  name: 'instruments',
  title: 'Instruments',
  description: 'One piano a row',
  columns: [
    required.text('id', 'id', 'Identifies the instrument in all tables'),
    text('name', 'name', 'What its keeper calls it'),
    required.text('kind', 'kind', 'Build', { oneOf: ['grand', 'upright', 'square', 'other'] }),
    orNull.number('built_year', 'builtYear', 'Year of building'),
    text('serial_number', 'serialNumber', 'Serial number'),
    ...noteColumns('lowest_', 'compass.lowestMidi', 'Lowest note'),
    ...noteColumns('highest_', 'compass.highestMidi', 'Highest note'),
    ...noteColumns('bass_bridge_top_', 'bassBridgeTopMidi', 'Highest note on the bass bridge', false),
    required.list(
      'struts_after_midi',
      'strutsAfterMidi',
      'Notes after which a plate strut breaks the row of tuning pins, as MIDI numbers',
    ),
    text('pin_block', 'pinBlock', 'The pin block in words'),
    orAbsent.text(
      'pin_block_kind',
      'pinBlockKind',
      'Kind of pin block, by which instruments are compared; empty: not known',
      {
        oneOf: ['original', 'repaired in place', 'solid planks', 'laminated', 'densified laminate', 'other'],
      },
    ),
    orAbsent.number('tuning_pin_diameter_mm', 'tuningPinDiameterMm', 'Diameter of the tuning pins; empty: not known'),
    text('remark', 'remark', 'Remark'),
    orAbsent.text('owner_name', 'ownerName', 'Owner; empty where nobody said or where owners were left out'),
    orAbsent.text('owner_address', 'ownerAddress', 'Where it stands; empty where nobody said or owners were left out'),
    orAbsent.number(
      'slip_threshold_cents_per_year',
      'slipThresholdCentsPerYear',
      'The slip of a tuning pin that matters for this instrument; empty: the usual one',
    ),
    required.boolean('is_demonstration', 'isDemonstration', 'True for an invented instrument'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [],
  optionalGroups: {},
};

export const events: TableSpec = {
  name: 'events',
  title: 'Events',
  description: 'What was done to an instrument, one act a row',
  columns: [
    required.text('id', 'id', 'Identifies the event'),
    required.text('instrument_id', 'instrumentId', 'The instrument'),
    required.date('happened_on', 'happenedOn', 'Date'),
    required.text('kind', 'kind', 'What was done', { oneOf: EVENT_KINDS }),
    ...noteColumns('from_', 'fromMidi', 'Lowest note concerned; empty: the whole instrument', false),
    ...noteColumns('to_', 'toMidi', 'Highest note concerned; empty: the whole instrument', false),
    text('remark', 'remark', 'Remark'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [reference('instrument_id', 'instruments')],
  optionalGroups: {},
};

export const visits: TableSpec = {
  name: 'visits',
  title: 'Visits',
  description: 'One visit to an instrument a row',
  columns: [
    required.text('id', 'id', 'Identifies the visit'),
    required.text('instrument_id', 'instrumentId', 'The instrument'),
    required.date('visited_on', 'visitedOn', 'Date'),
    text('visited_by', 'visitedBy', 'Who; empty where nobody said or where names were left out'),
    orNull.number('humidity_pct', 'humidityPct', 'Relative humidity of the air, per cent'),
    orNull.number('temperature_c', 'temperatureC', 'Temperature of the air, degrees Celsius'),
    required.number('pitch_standard_hz', 'pitchStandardHz', 'Frequency of A4 that was tuned to, Hz'),
    text('remark', 'remark', 'Remark'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [reference('instrument_id', 'instruments')],
  optionalGroups: {},
};

export const surveys: TableSpec = {
  name: 'surveys',
  title: 'Surveys',
  description: 'One pass over the notes of an instrument a row',
  columns: [
    required.text('id', 'id', 'Identifies the survey'),
    required.text('visit_id', 'visitId', 'The visit'),
    required.text('instrument_id', 'instrumentId', 'The instrument'),
    required.text('stage', 'stage', 'Before tuning or after it', { oneOf: ['as-found', 'as-left'] }),
    required.time('started_at', 'startedAt', 'Start'),
    orNull.time('finished_at', 'finishedAt', 'End; empty where it was not finished'),
    text('device_label', 'deviceLabel', "What the sound came in through: the microphone's label, or the file's name"),
    orNull.number('sample_rate_hz', 'sampleRateHz', 'Sample rate, Hz'),
    required.text('strings', 'strings', 'Which strings sounded', {
      oneOf: ['centre strings', 'open unisons', 'single strings'],
    }),
    orAbsent.object('scope', 'scope', 'Which notes were asked for, as JSON; empty: all'),
    orAbsent.number(
      'clock_offset_ppm',
      'clockAgainstSystem.offsetPpm',
      'By how many parts per million the sample clock ran fast against the system clock during the survey',
    ),
    orAbsent.number(
      'clock_offset_ppm_u',
      'clockAgainstSystem.offsetStandardUncertaintyPpm',
      'Standard uncertainty of clock_offset_ppm',
    ),
    orAbsent.object(
      'calibration',
      'calibration',
      'The calibration of the microphone that held at the time, as JSON; no figure of the survey was changed by it',
    ),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [reference('visit_id', 'visits'), reference('instrument_id', 'instruments')],
  optionalGroups: { clockAgainstSystem: 'absent' },
};

export const calibrations: TableSpec = {
  name: 'calibrations',
  title: 'Calibrations',
  description: "Comparisons of a microphone's sample clock with a reference, one a row",
  columns: [
    required.text('id', 'id', 'Identifies the calibration'),
    text('device_label', 'deviceLabel', "The microphone's label"),
    required.number('sample_rate_hz', 'sampleRateHz', 'Sample rate, Hz'),
    required.time('measured_at', 'measuredAt', 'When'),
    required.number('offset_ppm', 'offsetPpm', 'By how many parts per million the clock runs fast'),
    required.number('offset_ppm_u', 'offsetStandardUncertaintyPpm', 'Standard uncertainty of offset_ppm'),
    required.number('measured_hz', 'measuredHz', 'The reference as it was heard, Hz'),
    required.number('measured_hz_u', 'measuredStandardUncertaintyHz', 'Standard uncertainty of measured_hz'),
    required.text('reference_kind', 'reference.kind', 'What it was compared with', { oneOf: ['fork', 'tone'] }),
    required.number('stated_hz', 'reference.statedHz', 'What the reference says of itself, Hz'),
    required.number('stated_hz_u', 'reference.statedStandardUncertaintyHz', 'Standard uncertainty of stated_hz'),
    orNull.number('stated_at_c', 'reference.statedAtC', 'Temperature at which stated_hz holds, degrees Celsius'),
    orNull.number('temperature_c', 'reference.temperatureC', 'How warm the reference was, degrees Celsius'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [],
  optionalGroups: {},
};
