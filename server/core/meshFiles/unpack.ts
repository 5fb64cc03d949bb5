import { Inflate } from 'fflate';
import { quoted } from '../../../schema/quoted.ts';
import { pacer, type Steps } from '../steps/steps.ts';
import { faulty } from './meshFile.ts';
import { damaged, Unreadable } from './unreadable.ts';
import { DEFLATED, filesPackedIn, type PackedFile, packedOf, STORED } from './zipDirectory.ts';

/** Unpacked bytes that the models of a package may have: half a million triangles take some 50 MB. */
const MOST_UNPACKED = 192 * 1024 * 1024;
/** Packed bytes that are handed over at a time: they come to no more than a thousand times as many. */
const PIECE = 1 << 10;
/** Bytes, packed and unpacked, that are done in one step. */
const STEP = 1 << 19;
/** Packed bytes that may come to nothing, one block held back among them: packing makes hardly anything longer. */
const IDLE = 1 << 17;

export type Files = ReadonlyMap<string, Uint8Array>;

/** The models and relations of a package, by their names. */
export function* unpack(bytes: Uint8Array): Steps<Files> {
  const wanted = filesPackedIn(bytes).filter(({ name }) => /\.model$|^_rels\/\.rels$/i.test(name));
  hold(bytes, wanted);
  yield;
  const files = new Map<string, Uint8Array>();
  for (const entry of wanted) {
    const packed = packedOf(bytes, entry);
    files.set(entry.name, entry.method === STORED ? packed : yield* inflated(packed, entry));
  }
  return files;
}

/** Holds what the directory says against what can be, before anything is unpacked. */
function hold(bytes: Uint8Array, entries: readonly PackedFile[]): void {
  const names = new Set<string>();
  let [packed, size] = [0, 0];
  for (const entry of entries) {
    const name = quoted(entry.name);
    if (names.has(entry.name)) throw damaged(`it has two parts of one name, ${name}`);
    names.add(entry.name);
    if (entry.isEncrypted) throw damaged(`its part ${name} is locked by a password`);
    if (entry.method !== STORED && entry.method !== DEFLATED) {
      throw damaged(`its part ${name} is packed in a way that is not read here`);
    }
    packed += entry.packed;
    size += entry.method === STORED ? entry.packed : entry.size;
  }
  // The same bytes may stand for several parts: each would be unpacked from them anew.
  if (packed > bytes.length) throw damaged('its parts are longer than all of it');
  if (size > MOST_UNPACKED) throw tooLargeInside();
}

const tooLargeInside = (): Unreadable =>
  new Unreadable(
    faulty(
      'mesh-too-large',
      `unpacks to more than ${MOST_UNPACKED / 1024 / 1024} MB, the most that is read. Export it again more coarsely.`,
    ),
  );

/** Unpacks a file piece by piece, and no further than to the size that was held against the bound. */
function* inflated(packed: Uint8Array, { name, size }: PackedFile): Steps<Uint8Array> {
  const into = new Uint8Array(size);
  let filled = 0;
  const inflate = new Inflate(data => {
    if (filled + data.length > size) throw damaged(`its part ${quoted(name)} is larger than it says`);
    into.set(data, filled);
    filled += data.length;
  });
  const isDue = pacer(STEP);
  let idle = 0;
  for (let at = 0; at < packed.length; at += PIECE) {
    const before = filled;
    try {
      inflate.push(packed.subarray(at, at + PIECE), at + PIECE >= packed.length);
    } catch (problem) {
      throw problem instanceof Unreadable ? problem : damaged(`its part ${quoted(name)} cannot be unpacked`);
    }
    const made = filled - before;
    idle = Math.max(0, idle + PIECE - 2 * made);
    if (idle > IDLE) throw damaged(`its part ${quoted(name)} is packed without sense`);
    if (isDue(PIECE + made)) yield;
  }
  return into.subarray(0, filled);
}
