import { afterEach, expect, inject, it, vi } from 'vitest';
import { findChromium } from './support/findChromium.ts';

afterEach(() => vi.unstubAllEnvs());

it('takes the program that CHROME_PATH names, before any other', () => {
  vi.stubEnv('CHROME_PATH', process.execPath);
  expect(findChromium()).toBe(process.execPath);
});

it('says so when CHROME_PATH names no file, instead of taking another', () => {
  vi.stubEnv('CHROME_PATH', '/no/such/browser');
  expect(findChromium).toThrow('CHROME_PATH names no file: /no/such/browser');
});

it('finds the one that these tests run in', () => {
  expect(findChromium()).toBe(inject('chromiumPath'));
});
