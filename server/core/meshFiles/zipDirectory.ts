import { strFromU8 } from 'fflate';
import { quoted } from '../../../schema/quoted.ts';
import { MOST_PACKED_FILES, tooManyPackedFiles } from './meshFile.ts';
import { damaged, Unreadable } from './unreadable.ts';

/*
 * The directory of a ZIP file: PKWARE's APPNOTE.TXT 6.3.x, from memory; sections stand beside each record. Nothing that
 * it says is believed: every place in it is held against the length of the file.
 */

/** One file of a package, as the directory at its end tells (4.3.12). */
export interface PackedFile {
  readonly name: string;
  readonly method: number;
  readonly isEncrypted: boolean;
  /** Bytes. */
  readonly packed: number;
  /** Bytes, unpacked. */
  readonly size: number;
  /** Where its own header begins. */
  readonly header: number;
}

/** How its data are packed (4.4.5). */
export const STORED = 0;
export const DEFLATED = 8;

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const END64 = 0x06064b50;
const LOCATOR64 = 0x07064b50;

/** Bytes of each record without what varies in it. */
const LOCAL_LENGTH = 30;
const CENTRAL_LENGTH = 46;
const END_LENGTH = 22;
const END64_LENGTH = 56;
const LOCATOR64_LENGTH = 20;
/** Bytes that may follow the end record: its comment. */
const LONGEST_COMMENT = 0xffff;

/** In a field of 32 bits: the number stands among the extra fields, in 64. */
const ELSEWHERE = 0xffffffff;
/** The extra field that has it (4.5.3). */
const EXTRA64 = 1;

/** General purpose flags (4.4.4). */
const IS_ENCRYPTED = 1;
const IS_UTF8 = 1 << 11;

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const number64 = (view: DataView, at: number): number => Number(view.getBigUint64(at, true));
const isRecord = (view: DataView, at: number, signature: number, length: number): boolean =>
  at >= 0 && at + length <= view.byteLength && view.getUint32(at, true) === signature;

/** All files of the package. */
export function filesPackedIn(bytes: Uint8Array): readonly PackedFile[] {
  const view = viewOf(bytes);
  const { count, start } = endOf(view);
  if (count > MOST_PACKED_FILES) throw new Unreadable(tooManyPackedFiles());
  const entries: PackedFile[] = [];
  let at = start;
  for (let i = 0; i < count; i++) {
    if (!isRecord(view, at, CENTRAL, CENTRAL_LENGTH)) throw cutDirectory();
    const nameEnd = at + CENTRAL_LENGTH + view.getUint16(at + 28, true);
    const extraEnd = nameEnd + view.getUint16(at + 30, true);
    if (extraEnd > bytes.length) throw cutDirectory();
    const flags = view.getUint16(at + 8, true);
    entries.push({
      name: strFromU8(bytes.subarray(at + CENTRAL_LENGTH, nameEnd), (flags & IS_UTF8) === 0),
      method: view.getUint16(at + 10, true),
      isEncrypted: (flags & IS_ENCRYPTED) !== 0,
      ...sizesOf(view, at, nameEnd, extraEnd),
    });
    at = extraEnd + view.getUint16(at + 32, true);
  }
  return entries;
}

const cutDirectory = (): Unreadable => damaged('the list of the files in it is cut short');

/** How many files there are and where the list of them begins: from the end record (4.3.16), or that of 64 bits (4.3.14). */
function endOf(view: DataView): { readonly count: number; readonly start: number } {
  const last = view.byteLength - END_LENGTH;
  for (let at = last; at >= 0 && at >= last - LONGEST_COMMENT; at--) {
    if (!isRecord(view, at, END, END_LENGTH)) continue;
    // Its locator stands right before it (4.3.15).
    const locator = at - LOCATOR64_LENGTH;
    const at64 = isRecord(view, locator, LOCATOR64, LOCATOR64_LENGTH) ? number64(view, locator + 8) : -1;
    if (isRecord(view, at64, END64, END64_LENGTH)) {
      return { count: number64(view, at64 + 32), start: number64(view, at64 + 48) };
    }
    return { count: view.getUint16(at + 10, true), start: view.getUint32(at + 16, true) };
  }
  throw damaged('it is cut short, without the list of the files in it');
}

type Sizes = Pick<PackedFile, 'packed' | 'size' | 'header'>;

/** Sizes and place of an entry of the directory, those that are too large for its fields from its extra fields. */
function sizesOf(view: DataView, entry: number, extra: number, extraEnd: number): Sizes {
  let at = extra;
  // Ends: each round goes on by four bytes at least.
  while (at + 4 <= extraEnd && view.getUint16(at, true) !== EXTRA64) at += 4 + view.getUint16(at + 2, true);
  at += 4;
  // They stand there in this order, and only those that are elsewhere.
  const read = (field: number): number => {
    const value = view.getUint32(entry + field, true);
    if (value !== ELSEWHERE || at + 8 > extraEnd) return value;
    at += 8;
    return number64(view, at - 8);
  };
  const size = read(24);
  const packed = read(20);
  return { size, packed, header: read(42) };
}

/** The packed data of a file, behind a header of their own (4.3.7), which has their name again and other extra fields. */
export function packedOf(bytes: Uint8Array, { name, header, packed }: PackedFile): Uint8Array {
  const view = viewOf(bytes);
  if (!isRecord(view, header, LOCAL, LOCAL_LENGTH)) throw damaged(`its part ${quoted(name)} is not there`);
  const from = header + LOCAL_LENGTH + view.getUint16(header + 26, true) + view.getUint16(header + 28, true);
  if (from + packed > bytes.length) throw damaged(`its part ${quoted(name)} is cut short`);
  return bytes.subarray(from, from + packed);
}
