import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';

/** Begins to draw. Loaded once the language is known. */
export function showScreens(place: HTMLElement): void {
  createRoot(place).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}
