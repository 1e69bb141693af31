import { describe, expect, it } from 'vitest';
import { readEventsCsv, readHistoryCsv } from '../../src/files/historyCsv.ts';

const HEADER = 'visit_date,stage,rh_percent,temp_c,note,string,cents,cents_u';

function messageOf(outcome: { readonly ok: boolean; readonly message?: string }): string | undefined {
  return outcome.ok ? undefined : outcome.message;
}

describe('readHistoryCsv', () => {
  it('reads a row', () => {
    expect(readHistoryCsv(`${HEADER}\n2021-04-01,as-found,42,20.5,F#3,2,-1.25,0.3\n`)).toEqual({
      ok: true,
      rows: [
        {
          visitedOn: '2021-04-01',
          stage: 'as-found',
          humidityPct: 42,
          temperatureC: 20.5,
          midi: 54,
          stringPosition: 2,
          cents: -1.25,
          standardUncertaintyCents: 0.3,
        },
      ],
    });
  });

  it('takes empty climate, string and uncertainty for not known, and passes over a note without a reading', () => {
    const outcome = readHistoryCsv(`${HEADER}\n2021-04-01,as-left,,,A4,,0,\n2021-04-01,as-left,,,B4,2,,\n`);
    expect(outcome).toMatchObject({
      ok: true,
      rows: [{ humidityPct: null, temperatureC: null, stringPosition: 0, standardUncertaintyCents: null }],
    });
    expect(outcome.ok && outcome.rows).toHaveLength(1);
  });

  it('does not believe an uncertainty of nought', () => {
    const outcome = readHistoryCsv(`${HEADER}\n2021-04-01,as-left,,,A4,2,0,0\n`);
    expect(outcome.ok && outcome.rows[0]?.standardUncertaintyCents).toBeNull();
  });

  it.each([
    ['a date', '1.4.2021,as-found,,,A4,2,0,', /line 2: visit_date.*"1\.4\.2021"/],
    ['a stage', '2021-04-01,found,,,A4,2,0,', /line 2: stage.*"found"/],
    ['a note', '2021-04-01,as-found,,,H4,2,0,', /line 2: note.*"H4"/],
    ['a string', '2021-04-01,as-found,,,A4,4,0,', /line 2: string.*"4"/],
    ['a humidity', '2021-04-01,as-found,142,,A4,2,0,', /line 2: rh_percent.*"142"/],
    ['a temperature', '2021-04-01,as-found,,warm,A4,2,0,', /line 2: temp_c.*"warm"/],
    ['cents', '2021-04-01,as-found,,,A4,2,flat,', /line 2: cents.*"flat"/],
    ['cents beyond an octave', '2021-04-01,as-found,,,A4,2,1201,', /line 2: cents.*octave/],
    ['an uncertainty', '2021-04-01,as-found,,,A4,2,0,-1', /line 2: cents_u.*"-1"/],
  ])('says which line and what is wrong with %s', (_, row, says) => {
    expect(messageOf(readHistoryCsv(`${HEADER}\n${row}\n`))).toMatch(says);
  });
});

describe('readEventsCsv', () => {
  const EVENTS = 'date,kind,from_note,to_note,remark';

  it('reads work on the whole piano, on a range and on one note', () => {
    const text = `${EVENTS}\n2016-05-01,restrung,,,\n2017-05-01,block-work,C5,C6,"epoxy, cured"\n2018-05-01,string-replaced,A4,,\n`;
    const outcome = readEventsCsv(text);
    expect(outcome.ok && outcome.rows.map(({ kind, fromMidi, toMidi }) => [kind, fromMidi, toMidi])).toEqual([
      ['restrung', null, null],
      ['block-work', 72, 84],
      ['string-replaced', 69, 69],
    ]);
  });

  it.each([
    ['a date', '2016,restrung,,,', /line 2: date.*"2016"/],
    ['a kind', '2016-05-01,polished,,,', /line 2: kind.*restrung.*"polished"/],
    ['a note', '2016-05-01,moved,X1,,', /line 2: from_note.*"X1"/],
  ])('says which line and what is wrong with %s', (_, row, says) => {
    expect(messageOf(readEventsCsv(`${EVENTS}\n${row}\n`))).toMatch(says);
  });
});
