/** Where every screen of the demonstration workshop is, found by walking there. */
import type { Page } from 'playwright-core';
import { texts } from '../../../src/ui/texts.ts';

export type ScreenAddress = { readonly screen: string; readonly address: string };

/** Of an instrument, below its own address. */
const OF_INSTRUMENT = {
  stability: 'stability',
  'owner’s page': 'owners-page',
  'long record': 'record',
  hearing: 'hear',
  torque: 'torque',
  stringing: 'stringing',
  strings: 'strings',
  'work list': 'work-list',
  photographs: 'photographs',
  'form of an instrument': 'edit',
  'form of a visit': 'visits/new',
};
/** Of the whole workshop. */
const OF_WORKSHOP = {
  workshop: '#/',
  'how it measures': '#/how-it-measures',
  records: '#/records',
  'what held': '#/held',
  'microphone’s clock': '#/microphone-clock',
  'new instrument': '#/instruments/new',
  nowhere: '#/nowhere',
};

/** Sets up the demonstration on an empty workshop. The first four are those that are opened most. */
export async function screenAddresses(page: Page): Promise<ScreenAddress[]> {
  const home = page.url().replace(/#.*$/, '');
  await page.getByRole('button', { name: texts.workshop.empty.tryAction }).click();
  await page.getByRole('button', { name: texts.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
  const instrument = await opened(page, () => page.getByRole('link', { name: 'The school hall upright' }));
  const visit = await opened(page, () => linkIn(page, texts.instrument.visits.caption));
  const survey = await opened(page, () => linkIn(page, texts.visit.surveys.caption));
  const take = await opened(page, () => linkIn(page, texts.visit.survey.caption));
  const single = {
    instrument,
    visit,
    survey,
    take,
    recording: `${survey}/record`,
    'torque of a visit': `${visit}/torque`,
  };
  const ofInstrument = Object.entries(OF_INSTRUMENT).map(
    ([screen, below]) => [screen, `${instrument}/${below}`] as const,
  );
  const ofWorkshop = Object.entries(OF_WORKSHOP).map(([screen, hash]) => [screen, `${home}${hash}`] as const);
  const [workshop, ...others] = ofWorkshop;
  const all = [...(workshop ? [workshop] : []), ...Object.entries(single), ...ofInstrument, ...others];
  return all.map(([screen, address]) => ({ screen, address }));
}

function linkIn(page: Page, table: string) {
  return page.getByRole('table', { name: table }).getByRole('link').first();
}

async function opened(page: Page, link: () => ReturnType<Page['getByRole']>): Promise<string> {
  const before = page.url();
  await link().click();
  await page.waitForURL((url) => url.href !== before);
  return page.url();
}
