/** Tables of the archive: torque, stringing, decisions, trials, photographs, and what belongs to merging. */
import {
  editColumns,
  noteColumns,
  orNull,
  reference,
  required,
  STRING_POSITION,
  stringColumn,
  type TableSpec,
  text,
} from './tableSpec.ts';

const ofInstrument = reference('instrument_id', 'instruments');
const instrumentId = required.text('instrument_id', 'instrumentId', 'The instrument');

export const torque: TableSpec = {
  name: 'torque',
  title: 'Torque',
  description: 'The torque of one tuning pin, read at a visit, a row',
  columns: [
    required.text('id', 'id', 'Identifies the torque reading'),
    instrumentId,
    required.text('visit_id', 'visitId', 'The visit'),
    ...noteColumns('', 'midi', 'The note'),
    stringColumn('stringPosition'),
    required.number('torque_nm', 'torqueNm', 'Torque, newton metres'),
    required.text('direction', 'direction', 'Which way the pin was turned', {
      oneOf: ['sharpwards', 'flatwards', 'not noted'],
    }),
    text('remark', 'remark', 'Remark'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [ofInstrument, reference('visit_id', 'visits')],
  optionalGroups: {},
};

export const decisions: TableSpec = {
  name: 'decisions',
  title: 'Decisions',
  description: 'What was decided about one string a row',
  columns: [
    required.text('id', 'id', 'Identifies the decision'),
    instrumentId,
    ...noteColumns('', 'midi', 'The note'),
    stringColumn('stringPosition'),
    required.text('choice', 'choice', 'What to do', {
      oneOf: ['leave', 'bridge work', 'replace wire', 'replace pin', 'look again'],
    }),
    text('reason', 'reason', 'Why'),
    required.date('decided_on', 'decidedOn', 'Date of the decision'),
    orNull.date('done_on', 'doneOn', 'Date on which it was done; empty: not yet'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [ofInstrument],
  optionalGroups: {},
};

export const trials: TableSpec = {
  name: 'trials',
  title: 'Trials at the bridge',
  description: 'Something done to a string between two recordings of it, a row',
  columns: [
    required.text('id', 'id', 'Identifies the trial'),
    instrumentId,
    required.text('visit_id', 'visitId', 'The visit'),
    required.text('survey_id', 'surveyId', 'The survey that its takes are in'),
    ...noteColumns('', 'midi', 'The note'),
    stringColumn('stringPosition'),
    required.text('kind', 'kind', 'What was done', {
      oneOf: [
        'hold the bridge pin',
        'press the wire at the bridge',
        'tap the wire to the bridge',
        'seat the wire at the other end',
        'take out its twist',
        'other',
      ],
    }),
    required.time('tried_at', 'triedAt', 'When'),
    required.list('takes_before', 'takesBefore', 'Ids of the takes before it, in readings.csv'),
    required.list('takes_after', 'takesAfter', 'Ids of the takes after it, in readings.csv'),
    text('remark', 'remark', 'Remark'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [ofInstrument, reference('visit_id', 'visits'), reference('survey_id', 'surveys')],
  optionalGroups: {},
};

export const schedules: TableSpec = {
  name: 'schedules',
  title: 'Stringing schedules',
  description: 'One schedule a row: as the instrument is, or a plan for it. Its notes stand in schedule-notes.csv',
  columns: [
    required.text('id', 'id', 'Identifies the schedule'),
    instrumentId,
    text('name', 'name', 'What it is called'),
    required.text('kind', 'kind', 'Measured or planned', { oneOf: ['as it is', 'planned'] }),
    required.number('pitch_standard_hz', 'pitchStandardHz', 'Frequency of A4, Hz'),
    text('remark', 'remark', 'Remark'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [ofInstrument],
  optionalGroups: {},
};

export const scheduleNotes: TableSpec = {
  name: 'schedule-notes',
  title: 'Notes of stringing schedules',
  description: 'One note of a schedule a row, in the order of the schedule',
  columns: [
    required.text('schedule_id', 'scheduleId', 'The schedule'),
    ...noteColumns('', 'midi', 'The note'),
    orNull.integer('string_count', 'stringCount', 'How many strings it has', { minimum: 0 }),
    orNull.number('speaking_length_mm', 'speakingLengthMm', 'Speaking length, mm'),
    orNull.number('wire_diameter_mm', 'wireDiameterMm', 'Diameter, over the wrap where there is one, mm'),
    orNull.number('core_diameter_mm', 'coreDiameterMm', 'Diameter of the core; empty for plain wire, mm'),
    orNull.text('wrap', 'wrap', 'Metal of the wrap; empty for plain wire', { oneOf: ['copper', 'iron', 'brass'] }),
    orNull.text('wire_grade', 'wireGrade', 'Wire grade'),
    orNull.text('bridge', 'bridge', 'Which bridge it is on', { oneOf: ['bass', 'long'] }),
    required.list(
      'interpolated',
      'interpolated',
      'Which of these figures were not measured but lie between measured notes',
    ),
  ],
  key: [],
  foreignKeys: [reference('schedule_id', 'schedules')],
  optionalGroups: {},
};

export const wireGrades: TableSpec = {
  name: 'wire-grades',
  title: 'Wire grades',
  description: "A wire table of the user's own a row. Its strengths stand in wire-strengths.csv",
  columns: [
    required.text('id', 'id', 'Identifies the wire grade'),
    text('name', 'name', 'What it is called'),
    text('source', 'source', 'Where the figures come from'),
    required.number('youngs_modulus_gpa', 'youngsModulusGpa', "Young's modulus, GPa"),
    required.number('density_kg_per_m3', 'densityKgPerM3', 'Density, kg/m³'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [],
  optionalGroups: {},
};

export const wireStrengths: TableSpec = {
  name: 'wire-strengths',
  title: 'Strengths of wire grades',
  description: 'Tensile strength of a wire grade at one diameter a row',
  columns: [
    required.text('wire_grade_id', 'wireGradeId', 'The wire grade'),
    required.number('diameter_mm', 'diameterMm', 'Diameter, mm'),
    required.number('tensile_strength_mpa', 'tensileStrengthMpa', 'Tensile strength, MPa'),
  ],
  key: [],
  foreignKeys: [reference('wire_grade_id', 'wire-grades')],
  optionalGroups: {},
};

export const photographs: TableSpec = {
  name: 'photographs',
  title: 'Photographs',
  description: 'One photograph a row; the pictures are the files in the folder photographs',
  columns: [
    required.text('id', 'id', 'Identifies the photograph'),
    instrumentId,
    orNull.text('visit_id', 'visitId', 'The visit; empty where it belongs to the instrument alone'),
    ...noteColumns('', 'midi', 'The note; empty where it belongs to no one note', false),
    orNull.integer('string_position', 'stringPosition', STRING_POSITION, { oneOf: [0, 1, 2, 3] }),
    orNull.time('taken_at', 'takenAt', 'When it was taken, by the camera'),
    required.time('added_at', 'addedAt', 'When it was added'),
    text('caption', 'caption', 'Caption'),
    required.number('width_px', 'widthPx', 'Width, pixels'),
    required.number('height_px', 'heightPx', 'Height, pixels'),
    required.text('media_type', 'mediaType', 'Format of the file', {
      oneOf: ['image/jpeg', 'image/png', 'image/webp'],
    }),
    orNull.text('path', 'path', 'The file in this archive; empty where the picture was left out'),
    ...editColumns,
  ],
  key: ['id'],
  foreignKeys: [ofInstrument, reference('visit_id', 'visits')],
  optionalGroups: {},
};

export const rivals: TableSpec = {
  name: 'rivals',
  title: 'Rivals',
  description:
    'What two devices changed apart and nobody has decided yet: the version that does not stand in its table',
  columns: [
    required.text('id', 'id', 'Identifies the rival'),
    orNull.text('instrument_id', 'instrumentId', 'The instrument'),
    required.text('table', 'table', 'The table that the row belongs to, as the program names it'),
    required.text('row_id', 'rowId', 'The id of the row'),
    required.time('found_at', 'foundAt', 'When the two versions met'),
    required.object('row', 'row', 'The other version of the row, as JSON'),
  ],
  key: ['id'],
  foreignKeys: [],
  optionalGroups: {},
};

export const gone: TableSpec = {
  name: 'gone',
  title: 'Deleted for good',
  description: 'What is left of a row that was deleted for good, so that an older copy does not bring it back',
  columns: [
    required.text('id', 'id', 'Table and row id with a slash between'),
    orNull.text('instrument_id', 'instrumentId', 'The instrument'),
    required.text('table', 'table', 'The table that the row belonged to, as the program names it'),
    required.text('row_id', 'rowId', 'The id of the row'),
    required.object('stamp', 'stamp', 'How often each device had edited the row when it was deleted'),
    required.time('deleted_at', 'deletedAt', 'When it was deleted for good'),
  ],
  key: ['id'],
  foreignKeys: [],
  optionalGroups: {},
};

export const unattached: TableSpec = {
  name: 'unattached',
  title: 'Unattached rows',
  description: 'Rows that name an instrument, visit or survey which is not there, kept as JSON so that nothing is lost',
  columns: [
    required.text('table', 'table', 'The table that the row belongs to'),
    required.text('row_id', 'rowId', 'The id of the row'),
    required.object('row', 'row', 'The row, as JSON'),
  ],
  key: [],
  foreignKeys: [],
  optionalGroups: {},
};
