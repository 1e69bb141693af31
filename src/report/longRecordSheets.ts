/** The long record as sheets for spreadsheets and for the drift command: every reading, and the work. Names of columns end in units. */
import { hzToCents } from '../piano/cents.ts';
import { midiToHz, midiToName } from '../piano/note.ts';
import { COMMON_PITCH_HZ } from '../stability/historyOfRecords.ts';
import type { ReportRecords } from './reportRecords.ts';

export type RecordSheet = {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
};

const READING_COLUMNS = [
  'visit_date',
  'stage',
  'rh_percent',
  'temp_c',
  'note',
  'string',
  'cents',
  'cents_u',
  'pitch_standard_hz',
  'offset_cents',
  'partial1_hz',
  'partial1_hz_u',
  'partial1_source',
  'f0_hz',
  'inharmonicity_b',
  'inharmonicity_b_u',
  'life_s',
  'beating',
  'beat_rate_hz',
  'beat_depth_db',
  'snr_db',
  'usable',
  'faults',
  'strings_sounding',
  'device',
  'recorded_at',
] as const;

/**
 * Kept takes, one a row, oldest visit first. The first eight columns are what the drift command reads; `cents` is against equal temperament at
 * A4 = 440 Hz for every visit, so that visits at different pitch standards can be compared, and is empty where the take cannot be used;
 * `offset_cents` is against the visit's own standard.
 */
export function readingSheet({ visits, surveys, takes }: ReportRecords): RecordSheet {
  const visitById = new Map(visits.map((visit) => [visit.id, visit]));
  const surveyById = new Map(surveys.map((survey) => [survey.id, survey]));
  const rows = takes.flatMap((take) => {
    const survey = surveyById.get(take.surveyId);
    const visit = survey && visitById.get(survey.visitId);
    if (!survey || !visit) return [];
    const { reading } = take;
    const { beating, quality } = reading;
    const string = survey.strings === 'centre strings' && take.stringPosition === 0 ? 2 : take.stringPosition;
    const cents = quality.isUsable ? hzToCents(reading.partial1Hz, midiToHz(take.midi, COMMON_PITCH_HZ)) : null;
    const order = `${visit.visitedOn} ${survey.startedAt} ${String(take.midi).padStart(3, '0')} ${string}`;
    const row = [
      visit.visitedOn,
      survey.stage,
      visit.humidityPct,
      visit.temperatureC,
      midiToName(take.midi),
      string,
      cents,
      reading.offsetStandardUncertaintyCents,
      reading.pitchStandardHz,
      reading.offsetCents,
      reading.partial1Hz,
      reading.partial1StandardUncertaintyHz,
      reading.partial1Source,
      reading.f0Hz,
      reading.inharmonicityB,
      reading.inharmonicityBStandardUncertainty,
      reading.lifeTimeS,
      beating.kind,
      beating.rateHz,
      beating.depthDb,
      quality.snrDb,
      quality.isUsable ? 'yes' : 'no',
      quality.faults.join(' '),
      survey.strings,
      survey.deviceLabel,
      take.recordedAt,
    ];
    return [{ order, row }];
  });
  return {
    columns: READING_COLUMNS,
    rows: rows.sort((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : 0)).map(({ row }) => row),
  };
}

/** As the drift command reads it with `--events`. */
export function eventSheet({ events }: ReportRecords): RecordSheet {
  const noteName = (midi: number | null) => (midi === null ? '' : midiToName(midi));
  return {
    columns: ['date', 'kind', 'from_note', 'to_note', 'remark'],
    rows: events.map((event) => [
      event.happenedOn,
      event.kind,
      noteName(event.fromMidi),
      noteName(event.toMidi),
      event.remark,
    ]),
  };
}
