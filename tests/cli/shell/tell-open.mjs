// Says so on stderr when the program is about to open something to read that is no plain file.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const { openSync } = fs;
fs.openSync = (path, ...given) => {
  if (typeof path === 'string' && fs.statSync(path, { throwIfNoEntry: false })?.isFIFO()) fs.writeSync(2, 'waits\n');
  return openSync(path, ...given);
};
syncBuiltinESMExports();
