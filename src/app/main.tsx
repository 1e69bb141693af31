/** Start-up: the theme before the first picture, language and units before the first word, then the screens. */
import './tokens.css';
import './base.css';
import { showDeviceUnits } from '../ui/deviceUnits.ts';
import { speakChosenLanguage } from './language.ts';
import { keepProgramOffline } from './newVersion.ts';
import { trustOwnScripts } from './ownScripts.ts';
import { applyTheme, rememberedTheme } from './theme.ts';

trustOwnScripts();
const place = document.getElementById('app');
if (!place) throw new Error('index.html has no element with the id "app"');
applyTheme(rememberedTheme())();
showDeviceUnits();
void start(place);

/** No await at the top level: the screens share files with this one, and each would wait for the other. */
async function start(where: HTMLElement): Promise<void> {
  await speakChosenLanguage();
  const { showScreens } = await import('./showScreens.tsx');
  showScreens(where);
  await keepProgramOffline();
}
