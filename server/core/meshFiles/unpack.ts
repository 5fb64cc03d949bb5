import { Unzip, UnzipInflate, unzipSync } from 'fflate';
import { pacer, type Steps } from '../steps/steps.ts';

/** Unpacked bytes that the models of a package may have: half a million triangles take some 50 MB. */
export const MOST_UNPACKED = 192 * 1024 * 1024;
/** Packed bytes that are handed over at a time: they come to no more than a thousand times as many. */
const CHUNK = 1 << 14;
/** Bytes, packed and unpacked, that are done in one step. */
const STEP = 1 << 19;

export type Files = Readonly<Record<string, Uint8Array>>;

/**
 * The models and relations of a package; null when they are too large. Sizes are summed before any is unpacked; it throws
 * for what is damaged.
 */
export function* unpack(bytes: Uint8Array): Steps<Files | null> {
  const sizes = new Map<string, number>();
  unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      if (isWanted(name)) sizes.set(name, (sizes.get(name) ?? 0) + originalSize);
      return false;
    },
  });
  let size = 0;
  for (const each of sizes.values()) size += each;
  if (size > MOST_UNPACKED) return null;
  yield;
  // Whatever is not quite as its directory says is left to the one that goes by the directory.
  return (yield* unpackedInTurn(bytes, sizes)) ?? unzipSync(bytes, { filter: ({ name }) => isWanted(name) });
}

const isWanted = (name: string): boolean => /\.model$|^_rels\/\.rels$/i.test(name);

/** Files as they come one after the other in the package; null where they are not each there once, and of its size. */
function* unpackedInTurn(bytes: Uint8Array, sizes: ReadonlyMap<string, number>): Steps<Files | null> {
  const files: Record<string, Uint8Array> = {};
  const filled = new Map<string, number>();
  const isDue = pacer(STEP);
  let isOdd = false;
  let made = 0;
  const unzip = new Unzip(file => {
    const size = sizes.get(file.name);
    if (size === undefined) return;
    if (filled.has(file.name)) {
      isOdd = true;
      return;
    }
    const into = new Uint8Array(size);
    files[file.name] = into;
    filled.set(file.name, 0);
    file.ondata = (problem, data) => {
      const from = filled.get(file.name)!;
      isOdd ||= problem !== null || from + data.length > size;
      if (isOdd) return;
      into.set(data, from);
      filled.set(file.name, from + data.length);
      made += data.length;
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  try {
    for (let at = 0; at < bytes.length && !isOdd; at += CHUNK) {
      made = 0;
      unzip.push(bytes.subarray(at, at + CHUNK), at + CHUNK >= bytes.length);
      if (isDue(CHUNK + made)) yield;
    }
  } catch {
    return null;
  }
  for (const [name, size] of sizes) if (filled.get(name) !== size) return null;
  return isOdd ? null : files;
}
