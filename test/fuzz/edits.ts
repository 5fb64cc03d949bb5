import type { Seeded } from '../helpers/seeded.ts';

/** One change of a text, and what it is called. */
export interface Edited {
  readonly how: string;
  readonly text: string;
}

/** Figures that no boat has, and some that are none. */
const EXTREMES = ['0', '-1', '1e-308', '1e-50', '1e-9', '0.00001', '1e5', '1e9', '1e308', '1e999', '.nan', '.inf', '½'];

/** Bits that shape a file, or unshape it. */
const BITS = [
  '\n',
  '\r',
  '\t',
  ' ',
  '\u00a0',
  '\ufeff',
  '#',
  '"',
  "'",
  '{',
  '}',
  '[',
  ']',
  ', ',
  ': ',
  '- ',
  '? ',
  '|\n',
  '&a ',
  '*a',
  '<<: *a',
  '!t ',
  '---\n',
  'name: ',
  '__proto__: ',
  '🦆',
];

export const pick = <T>(random: Seeded, list: readonly T[]): T => list[Math.floor(random.even() * list.length)]!;

export const anywhere = (random: Seeded, text: string): number => Math.floor(random.even() * (text.length + 1));

const KINDS: readonly ((text: string, random: Seeded, other: string) => Edited)[] = [
  (text, random) => {
    const figures = [...text.matchAll(/(?<![\w.#])\d+(?:\.\d+)?/g)];
    if (figures.length === 0) return { how: 'nothing', text };
    const { 0: was, index } = pick(random, figures);
    const now = pick(random, EXTREMES);
    return { how: `${was} becomes ${now}`, text: text.slice(0, index) + now + text.slice(index + was.length) };
  },
  (text, random) => ({ how: 'a prefix', text: text.slice(0, anywhere(random, text)) }),
  (text, random) => {
    const at = anywhere(random, text);
    return { how: `a character gone at ${at}`, text: text.slice(0, at) + text.slice(at + 1) };
  },
  (text, random) => {
    const at = anywhere(random, text);
    const count = Math.floor(random.even() * 60);
    return { how: `${count} characters gone at ${at}`, text: text.slice(0, at) + text.slice(at + count) };
  },
  (text, random) => {
    const at = anywhere(random, text);
    const bit = pick(random, BITS);
    return { how: `${JSON.stringify(bit)} put in at ${at}`, text: text.slice(0, at) + bit + text.slice(at) };
  },
  (text, random, other) => {
    const lines = other.split('\n');
    const from = Math.floor(random.even() * lines.length);
    const some = lines.slice(from, from + 1 + Math.floor(random.even() * 4));
    const own = text.split('\n');
    const at = Math.floor(random.even() * (own.length + 1));
    return { how: `lines put in at line ${at + 1}`, text: [...own.slice(0, at), ...some, ...own.slice(at)].join('\n') };
  },
  (text, random) => {
    const lines = text.split('\n');
    const at = Math.floor(random.even() * lines.length);
    return { how: `line ${at + 1} gone`, text: lines.filter((_, i) => i !== at).join('\n') };
  },
];

/** Changes a text in one of the ways in which hands, and hostile ones, change it. */
export const edited = (text: string, random: Seeded, other: string): Edited => pick(random, KINDS)(text, random, other);

/** Bytes with some of them changed, some doubled, or cut short. */
export function garbled(bytes: Uint8Array, random: Seeded): Uint8Array {
  const some = bytes.slice(0, random.even() < 0.3 ? Math.floor(random.even() * bytes.length) : bytes.length);
  const count = Math.floor(random.even() * 20);
  for (let i = 0; i < count && some.length > 0; i++)
    some[Math.floor(random.even() * some.length)] = pick(random, [0, 0x20, 0x2d, 0x7f, 0x80, 0xff]);
  return random.even() < 0.2 ? Uint8Array.from([...some, ...some.subarray(0, 500)]) : some;
}
