import { afterEach, describe, expect, it } from 'vitest';
import { COMPASS_88 } from '../../src/piano/compass.ts';
import { writeFiguresIn } from '../../src/piano/formatLanguage.ts';
import { showUnits } from '../../src/piano/formatUnits.ts';
import type { InstrumentId, VisitId } from '../../src/piano/ids.ts';
import type { Instrument, Visit } from '../../src/piano/instrument.ts';
import { instrumentToDraft, readDraft } from '../../src/screens/instrumentForm/instrumentDraft.ts';
import { newReferenceDraft, readReference } from '../../src/screens/microphoneClock/referenceDraft.ts';
import { emptyVisitDraft, readVisit, visitToDraft } from '../../src/screens/visitForm/visitDraft.ts';

afterEach(() => {
  writeFiguresIn('en');
  showUnits({ length: 'mm', temperature: '°C' });
});

const visit = (temperatureC: number): Visit => ({
  id: 'v1' as VisitId,
  instrumentId: 'i1' as InstrumentId,
  visitedOn: '2024-02-29',
  visitedBy: '',
  humidityPct: 41.5,
  temperatureC,
  pitchStandardHz: 438.5,
  remark: '',
});

describe('a temperature in Fahrenheit', () => {
  it('is stored in Celsius', () => {
    showUnits({ temperature: '°F' });
    const read = readVisit({ ...emptyVisitDraft('2024-03-01', null), temperature: '68' });
    expect(read.isSound && read.visit.temperatureC).toBe(20);
  });

  it.each([20, 21.3, -4.5])('%s °C stays as it was where nothing is changed', (temperatureC) => {
    showUnits({ temperature: '°F' });
    const read = readVisit(visitToDraft(visit(temperatureC)));
    expect(read.isSound && read.visit.temperatureC).toBe(temperatureC);
  });

  it('is refused outside the same limits, in words of its own', () => {
    showUnits({ temperature: '°F' });
    const read = readVisit({ ...emptyVisitDraft('2024-03-01', null), temperature: '141' });
    expect(!read.isSound && read.faults.temperature).toBe('temperature-not-in-fahrenheit');
  });

  it('of a tuning fork counts as Celsius too', () => {
    showUnits({ temperature: '°F' });
    const draft = newReferenceDraft('fork');
    expect(draft.statedAt).toBe('68');
    const read = readReference({ ...draft, temperature: '77' });
    expect(read.isSound && [read.reference.statedAtC, read.reference.temperatureC]).toEqual([20, 25]);
  });
});

describe('fields in German', () => {
  it('begin with a decimal comma and are read again as they were stored', () => {
    writeFiguresIn('de');
    const draft = visitToDraft(visit(21.3));
    expect([draft.humidity, draft.temperature, draft.pitchHz]).toEqual(['41,5', '21,3', '438,5']);
    const read = readVisit(draft);
    expect(read.isSound && [read.visit.humidityPct, read.visit.pitchStandardHz]).toEqual([41.5, 438.5]);
  });
});

describe('the diameter of pins in inches', () => {
  const instrument = (tuningPinDiameterMm: number): Instrument => ({
    id: 'i1' as InstrumentId,
    name: 'Practice room upright',
    kind: 'upright',
    builtYear: null,
    serialNumber: '',
    compass: COMPASS_88,
    bassBridgeTopMidi: null,
    strutsAfterMidi: [],
    pinBlock: '',
    remark: '',
    isDemonstration: false,
    tuningPinDiameterMm,
  });

  it.each([7.01, 7.16, 7.27, 7.155])('%s mm stays as it was where nothing is changed', (diameterMm) => {
    showUnits({ length: 'in' });
    const read = readDraft(instrumentToDraft(instrument(diameterMm)));
    expect(read.isSound && read.instrument.tuningPinDiameterMm).toBe(diameterMm);
  });

  it('is refused in words of its own where it was typed in millimetres', () => {
    showUnits({ length: 'in' });
    const read = readDraft({ ...instrumentToDraft(instrument(7.16)), pinDiameter: '7.16' });
    expect(!read.isSound && read.faults.pinDiameter).toBe('pin-diameter-not-in-inches');
  });
});
