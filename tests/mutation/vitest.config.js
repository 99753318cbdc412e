import { defineConfig } from 'vitest/config';

/** The tests in the order they are named in, one process, no build beforehand: what is tested is `src` itself. */
const wanted = JSON.parse(process.env.MUTATION_TESTS ?? '[]');
const placeOf = ({ moduleId }) => wanted.findIndex((name) => moduleId.endsWith(name));

class AsNamed {
  shard(files) {
    return files;
  }
  sort(files) {
    return [...files].sort((a, b) => placeOf(a) - placeOf(b));
  }
}

export default defineConfig({
  test: {
    include: wanted,
    setupFiles: ['tests/setup.ts'],
    testTimeout: 120_000,
    maxWorkers: 1,
    fileParallelism: false,
    isolate: false,
    sequence: { sequencer: AsNamed },
  },
});
