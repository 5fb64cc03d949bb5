import { isFileKey } from '../../../../schema/fileKeys.ts';
import { type Fault, fault, replacing, restOfLine } from './faults.ts';
import type { Span } from './lines.ts';
import { isScalar, type MapNode } from './nodes.ts';

/** Signs that stand where the file wants a colon or a decimal point: what was meant is plain, and is offered. */

const SIGNED = /^([A-Za-z][\w-]*)([ \t]*(?::=|=>|=|->|→|;|：|,(?=[ \t])|(?<=[ \t])[-–—](?=[ \t]))[ \t]*)(?=[^\s,}\]])/;

/** `mass = 310 g`: another sign where the colon belongs; null when that is not what stands at `start`. */
export function wrongColon(text: string, start: number, end = restOfLine(text, start)[1]): Fault | null {
  const said = text.slice(start, end);
  const [whole, key, between] = SIGNED.exec(said) ?? [];
  if (whole === undefined || key === undefined || between === undefined || /^[^{[]*:(?:\s|$)/.test(said)) return null;
  // Names in a list stand between commas.
  if (between.trim() === ',' && !isFileKey(key)) return null;
  const mended = `${key}: ${said.slice(whole.length)}`;
  const sign: Span = [start + key.length, start + whole.length];
  const found = fault(
    'missing-colon',
    [start, start + said.length],
    `Between a key and its value stand a colon and a space, not “${between.trim()}”: “${mended}”.`,
    { blanked: [start, end], mend: replacing(`Change to “${mended}”`, [sign, ': ']) },
  );
  // Where there is room, it is read as it was meant.
  const colon = between.length > 1 ? ':'.padEnd(between.length) : null;
  return colon === null ? found : { ...found, blanked: null, put: [[sign[0], colon]] };
}

/** `{ height: 40,5 mm }`: the comma of the figure ends the value, and the rest of it is taken for a key. */
export function decimalComma(map: MapNode, index: number, text: string): Fault | null {
  const pair = map.items[index]!;
  const before = map.items[index - 1]?.value;
  const rest = pair.colon === null && isScalar(pair.key) && pair.key.style === 'PLAIN' ? pair.key : null;
  if (!rest || !isScalar(before) || before.style !== 'PLAIN') return null;
  const [whole] = /(?<!\d)\d+$/.exec(text.slice(before.start, before.end)) ?? [];
  const [part] = /^\d+/.exec(text.slice(rest.start, rest.end)) ?? [];
  if (whole === undefined || part === undefined || text.slice(before.end, rest.start) !== ',') return null;
  const start = before.end - whole.length;
  const [comma, behind]: readonly Span[] = [
    [before.end, rest.start],
    [rest.start + part.length, rest.end],
  ];
  const unit = text.slice(...behind!);
  const written = (sign: string) => `${whole}${sign}${part}${unit}`;
  const asPoint = replacing(`Change to “${written('.')}”`, [comma!, '.']);
  const asNothing = replacing(`Change to “${written('')}”`, [comma!, '']);
  const isThousands = part.length === 3 && /^[1-9]\d{0,2}$/.test(whole);
  const message = isThousands
    ? `A comma can be read in two ways: write ${written('')} or, if the comma is a decimal one, ${written('.')}.`
    : `The decimal sign is a point: write ${written('.')}.`;
  const found = fault('wrong-quantity', [start, rest.end], message, { mend: isThousands ? asNothing : asPoint });
  const finding = isThousands ? { ...found.finding, mends: [asNothing, asPoint] } : found.finding;
  // What is in doubt is the key that is none.
  return { ...found, finding, span: [rest.start, rest.end], also: [[start, before.end]] };
}

/** `lead:` and below it `strip 12 x 6 mm`: a key of the format and its value without a colon; else null. */
export function noColon(text: string, start: number): Fault | null {
  const said = text.slice(...restOfLine(text, start));
  const [whole, key, gap] = /^([A-Za-z][\w-]*)([ \t]+)(?=\S)/.exec(said) ?? [];
  if (whole === undefined || key === undefined || gap === undefined || !isFileKey(key)) return null;
  const mended = `${key}: ${said.slice(whole.length)}`;
  return fault(
    'missing-colon',
    [start, start + said.length],
    `“${said}” has no colon. Write the key, a colon, a space and the value: “${mended}”.`,
    {
      mend: replacing(`Change to “${mended}”`, [[start + key.length, start + whole.length], ': ']),
    },
  );
}
