import { describe, expect, it } from 'vitest';
import { languageOf } from '../../src/app/language.ts';

describe('the page’s language', () => {
  it('is what was chosen, whatever the device speaks', () => {
    expect(languageOf('en', ['de-DE'])).toBe('en');
    expect(languageOf('de', ['en-US'])).toBe('de');
  });

  it('is otherwise the first of the device’s that there are words for, and English where there is none', () => {
    expect(languageOf('device', ['fr-CH', 'de-CH', 'en'])).toBe('de');
    expect(languageOf('device', ['en-US', 'de'])).toBe('en');
    expect(languageOf('device', ['DE'])).toBe('de');
    expect(languageOf('device', ['ja'])).toBe('en');
    expect(languageOf('device', [])).toBe('en');
  });
});
