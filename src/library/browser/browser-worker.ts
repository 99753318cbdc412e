import { work } from '../../page/workers/at-work.js';

work(globalThis as unknown as Parameters<typeof work>[0]);
