/** One file of a package as it is written, in its own header and in the directory at the end. */
export interface Part {
  readonly name: string;
  readonly data: Uint8Array;
  /** 0 stored, 8 deflated. */
  readonly method?: number;
  readonly flags?: number;
  /** Bytes unpacked, as the directory says. */
  readonly size?: number;
  /** The part before whose data stand for this one too. */
  readonly sameAs?: number;
}

interface Ending {
  /** Files that there are, as the end record says. */
  readonly count?: number;
  /** With an end record of 64 bits, and all numbers of the directory there. */
  readonly is64?: boolean;
  readonly comment?: string;
}

const FIELDS = { 2: 'setUint16', 4: 'setUint32' } as const;

/** Little-endian, each of so many bytes; eight as two halves. */
function record(...fields: readonly (readonly [bytes: 2 | 4 | 8, value: number])[]): Uint8Array {
  const view = new DataView(new ArrayBuffer(fields.reduce((sum, [bytes]) => sum + bytes, 0)));
  let at = 0;
  for (const [bytes, value] of fields) {
    if (bytes === 8) view.setBigUint64(at, BigInt(value), true);
    else view[FIELDS[bytes]](at, value, true);
    at += bytes;
  }
  return new Uint8Array(view.buffer);
}

const together = (pieces: readonly Uint8Array[]): Uint8Array => Uint8Array.from(Buffer.concat(pieces));

/** A package by PKWARE's APPNOTE.TXT (4.3.7, 4.3.12, 4.3.14 to 4.3.16), from memory; what it says need not be so. */
export function zip(parts: readonly Part[], { count = parts.length, is64 = false, comment = '' }: Ending = {}) {
  const local: Uint8Array[] = [];
  const central: Uint8Array[] = [];
  const starts: number[] = [];
  let length = 0;
  for (const { name, data, method = 0, flags = 0, size = data.length, sameAs } of parts) {
    const named = new TextEncoder().encode(name);
    starts.push(sameAs === undefined ? length : starts[sameAs]!);
    if (sameAs === undefined) {
      // Sizes behind the data instead, as of what is written in one go, where flag 3 says so.
      const known = (flags & 8) === 0;
      const sizes = [4, known ? data.length : 0] as const;
      const header = record([4, 0x04034b50], [2, 20], [2, flags], [2, method], [4, 0], [4, 0], sizes, sizes);
      const behind = known ? [] : [record([4, 0x08074b50], [4, 0], [4, data.length], [4, size])];
      const pieces = [header, record([2, named.length], [2, 0]), named, data, ...behind];
      local.push(...pieces);
      length += pieces.reduce((sum, piece) => sum + piece.length, 0);
    }
    const numbers = [size, data.length, starts.at(-1)!];
    const [told, packed, start] = is64 ? numbers.map(() => 0xffffffff) : numbers;
    const extra = is64 ? together([record([2, 1], [2, 24]), ...numbers.map(value => record([8, value]))]) : record();
    central.push(
      record([4, 0x02014b50], [2, 20], [2, 20], [2, flags], [2, method], [4, 0], [4, 0], [4, packed!], [4, told!]),
      record([2, named.length], [2, extra.length], [2, 0], [2, 0], [2, 0], [4, 0], [4, start!]),
      named,
      extra,
    );
  }
  const size = central.reduce((sum, piece) => sum + piece.length, 0);
  const end64 = [
    record([4, 0x06064b50], [8, 44], [2, 45], [2, 45], [4, 0], [4, 0], [8, count], [8, count], [8, size], [8, length]),
    record([4, 0x07064b50], [4, 0], [8, length + size], [4, 1]),
  ];
  const short = Math.min(count, 0xffff);
  const end = record([4, 0x06054b50], [2, 0], [2, 0], [2, short], [2, short], [4, size], [4, length]);
  const said = new TextEncoder().encode(comment);
  return together([...local, ...central, ...(is64 ? end64 : []), end, record([2, said.length]), said]);
}
