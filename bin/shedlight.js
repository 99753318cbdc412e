#!/usr/bin/env node
import { existsSync } from 'node:fs';

const program = new URL('../dist/cli/main.js', import.meta.url);
if (existsSync(program)) {
  const { main } = await import(program.href);
  process.exitCode = await main(process.argv);
} else {
  process.stderr.write('shedlight: it is not built yet: run npm run build in its folder first\n');
  process.exitCode = 3;
}
