import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // The usual number leaves one of two cores idle.
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'unit',
          environment: 'node',
          // A thread for each file starts sooner than a process.
          pool: 'threads',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**', 'tests/bench/**'],
          globalSetup: ['tests/cli/buildBundle.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/globalSetup.ts'],
          // After the others, and side by side: many wait most of their time for sound to be heard at its own speed.
          sequence: { groupOrder: 1 },
          maxWorkers: 2,
          testTimeout: 300_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
