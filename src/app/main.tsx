/** Start-up: the theme before the first picture, then the screens. */
import './tokens.css';
import './base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { keepProgramOffline } from './newVersion.ts';
import { trustOwnScripts } from './ownScripts.ts';
import { applyTheme, rememberedTheme } from './theme.ts';

trustOwnScripts();
const place = document.getElementById('app');
if (!place) throw new Error('index.html has no element with the id "app"');
applyTheme(rememberedTheme())();
createRoot(place).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
void keepProgramOffline();
