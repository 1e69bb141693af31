import { expect, it } from 'vitest';
import { speakingName } from '../../../src/ui/chartExport/speakingName.ts';

it.each([
  [['The music room grand', 'Life line'], 'the-music-room-grand-life-line.csv'],
  [['Flügel, Saal 2', 'C♯4: 2020-01-02'], 'flugel-saal-2-c-sharp4-2020-01-02.csv'],
  [['../..', ''], 'chart.csv'],
  [['Пианино', 'x/y'], 'пианино-x-y.csv'],
])('%j names the file %s', (parts, name) => {
  expect(speakingName(parts, 'csv')).toBe(name);
});

it('a long name is cut short and keeps its ending', () => {
  const name = speakingName(['a'.repeat(200)], 'png');
  expect(name).toMatch(/^a{80}\.png$/);
});
