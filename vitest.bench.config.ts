import { defineConfig } from 'vitest/config';

// The bench measures accuracy and speed and prints tables; it asserts nothing about time.
export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/bench/**/*.bench.ts'],
    fileParallelism: false,
    testTimeout: 3_600_000,
    disableConsoleIntercept: true,
  },
});
