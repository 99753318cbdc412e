import { spawnSync } from 'node:child_process';
import type { TestProject } from 'vitest/node';
import { launchBrowser, NO_BROWSER } from './browser.js';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the browser that all tests share can be reached; empty where there is none. */
    browser: string;
  }
}

/**
 * Once before all tests: builds what worker threads and pages load, and starts the one browser that the browser tests
 * share. A build that fails ends the run, so that no test passes on what was built before.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  build();
  const browser = await launchBrowser();
  if (!browser) console.warn(NO_BROWSER);
  project.provide('browser', browser?.wsEndpoint() ?? '');
  return async () => browser?.close();
}

function build(): void {
  const { status, stdout, stderr, error } = spawnSync('npm', ['run', '--silent', 'build'], {
    encoding: 'utf8',
    timeout: 300_000,
  });
  if (status !== 0) throw new Error(`the build failed (${error?.message ?? status})\n${stdout ?? ''}${stderr ?? ''}`);
}
