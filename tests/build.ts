import { spawnSync } from 'node:child_process';

/** Worker threads load compiled JavaScript, so the sources are compiled once before the tests run. */
export default function build(): void {
  spawnSync('npx', ['tsc', '-p', 'tsconfig.build.json'], { stdio: 'ignore' });
}
