import type { BoatSource } from '../boat/source.ts';
import type { BodyCache } from '../bodies/assemble.ts';
import type { VariationCache } from './variations.ts';

/** Whose inputs they are: the boat by its entries, and what was made of them before. */
export interface Owner {
  readonly source: BoatSource;
  readonly cache: BodyCache;
  readonly variations: VariationCache;
}
