import { work } from '../../page/ask/at-work.js';

work(globalThis as unknown as Parameters<typeof work>[0]);
