import { spawnSync } from 'node:child_process';

/** Worker threads load compiled JavaScript, and pages hold a bundled script: both are made once before the tests run. */
export default function build(): void {
  spawnSync('npm', ['run', 'build'], { stdio: 'ignore', timeout: 300_000 });
}
