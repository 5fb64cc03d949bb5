import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { plainly } from './plainErrors.ts';

/** The page as it was built, beside the program. Throws, in plain words, where it is not there. */
export const readPoolsidePage = (): string => plainly(() => readFileSync(join(__dirname, 'poolside.html'), 'utf8'));
