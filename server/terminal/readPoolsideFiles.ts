import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { POOLSIDE_FILES, type PoolsideFiles } from '../editor/poolsidePage.ts';
import { plainly } from './plainErrors.ts';

/** What the poolside page is made of, beside the program. Throws, in plain words, where it is not there. */
export function readPoolsideFiles(): PoolsideFiles {
  const read = (name: string): string => plainly(() => readFileSync(join(__dirname, name), 'utf8'));
  const { page, worker, licences } = POOLSIDE_FILES;
  return { page: read(page), worker: read(worker), licences: read(licences) };
}
