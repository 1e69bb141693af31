/** What the user wants on the page: remembered on this device. */
import type { InstrumentId, PhotographId } from '../../piano/ids.ts';
import { OPTIONAL_SECTIONS, type OptionalSection } from '../../report/ownersPage.ts';
import { deviceSetting } from '../../ui/deviceSetting.ts';

const sectionSetting = (section: OptionalSection) => deviceSetting(`owners-page.${section}`, ['in', 'out']);

export function rememberedLeftOut(): OptionalSection[] {
  return OPTIONAL_SECTIONS.filter((section) => sectionSetting(section).read() === 'out');
}

export function rememberSection(section: OptionalSection, isIn: boolean): void {
  sectionSetting(section).write(isIn ? 'in' : 'out');
}

const photographSetting = (id: PhotographId) => deviceSetting(`owners-page.photograph.${id}`, ['out', 'in']);

export function isPhotographChosen(id: PhotographId): boolean {
  return photographSetting(id).read() === 'in';
}

export function rememberPhotograph(id: PhotographId, isIn: boolean): void {
  photographSetting(id).write(isIn ? 'in' : 'out');
}

const remarkKey = (id: InstrumentId) => `owners-page.remark.${id}`;

/** Private windows may refuse the question. */
export function rememberedRemark(id: InstrumentId): string {
  try {
    return window.localStorage.getItem(remarkKey(id)) ?? '';
  } catch {
    return '';
  }
}

export function rememberRemark(id: InstrumentId, remark: string): void {
  try {
    window.localStorage.setItem(remarkKey(id), remark);
  } catch (error) {
    console.info('The remark is not remembered: this browser keeps no settings for this page.', error);
  }
}
