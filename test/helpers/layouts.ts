import fc from 'fast-check';

/** How one generated boat file is written. */
export interface Layout {
  readonly text: string;
  /** The list of the file that entries go into. */
  readonly list: readonly string[];
  readonly entries: number;
}

type Fields = readonly (readonly [key: string, text: string])[];

const indent = fc.integer({ min: 1, max: 8 });
const comment = fc.option(fc.constantFrom('# light', '#heavy', '# a: b', '# - c', '# { ['), { nil: '' });
const values = fc.constantFrom(
  '240 g',
  '12',
  '"a: #b"',
  "'it''s'",
  '120 to 480 mm',
  '[1, 2]',
  '7/16 in',
  'true',
  '{ bow: 5 mm }',
);
const keys = ['name', 'mass', 'station', 'height'];

const fields: fc.Arbitrary<Fields> = fc
  .tuple(fc.subarray(keys, { minLength: 1 }), fc.array(values, { minLength: 4, maxLength: 4 }))
  .map(([names, texts]) => names.map((name, i) => [name, texts[i] ?? '1'] as const));

const tail = (text: string): string => (text === '' ? '' : ` ${text}`);

/** A block entry: keys below each other, comments beside and between them. */
const blockEntry = (step: number, gap: number): fc.Arbitrary<readonly string[]> =>
  fc.tuple(fields, fc.array(comment, { minLength: 8, maxLength: 8 }), fc.boolean()).map(([pairs, notes, isNested]) => {
    const below = ' '.repeat(1 + gap);
    const lines = pairs.flatMap(([key, text], i) => {
      const lead = i === 0 ? `-${' '.repeat(gap)}` : below;
      const between = i > 0 && notes[i + 4] ? [`${below}${notes[i + 4]}`] : [];
      return [...between, `${lead}${key}: ${text}${tail(notes[i] ?? '')}`];
    });
    return isNested
      ? [...lines, `${below}balance:`, `${below}${' '.repeat(step)}station: 3 mm${tail(notes[7] ?? '')}`]
      : lines;
  });

const flowMap = fc.tuple(fields, fc.boolean()).map(([pairs, isTight]) => {
  const inside = pairs.map(([key, text]) => `${key}: ${text}`).join(', ');
  return isTight ? `{${inside}}` : `{ ${inside} }`;
});

const blockList = (step: number): fc.Arbitrary<readonly string[]> =>
  fc
    .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 8 }), fc.boolean(), fc.boolean())
    .chain(([gap, shift, isFlow, isSpaced]) => {
      const entry = isFlow
        ? fc.tuple(flowMap, comment).map(([map, note]) => [`-${' '.repeat(gap)}${map}${tail(note)}`])
        : blockEntry(step, gap);
      return fc.array(entry, { minLength: 1, maxLength: 4 }).map(entries =>
        entries.flatMap((lines, i) => {
          const apart = isSpaced && i > 0 ? ['', '# next'] : [];
          return [...apart, ...lines.map(line => ' '.repeat(shift) + line)];
        }),
      );
    });

const flowList: fc.Arbitrary<readonly string[]> = fc
  .tuple(
    fc.array(fc.tuple(flowMap, comment), { minLength: 1, maxLength: 4 }),
    fc.constantFrom('line', 'lines', 'close'),
    fc.boolean(),
    indent,
  )
  .map(([maps, shape, hasLastComma, step]) => {
    const comma = (i: number): string => (i < maps.length - 1 || hasLastComma ? ',' : '');
    const lead = ' '.repeat(step);
    if (shape === 'line') return [`[ ${maps.map(([map], i) => map + comma(i)).join(' ')} ]`];
    const lines = maps.map(([map, note], i) => `${lead}${map}${comma(i)}${shape === 'lines' ? tail(note) : ''}`);
    return shape === 'lines' ? ['[', ...lines, ']'] : ['[', ...lines.slice(0, -1), `${lines.at(-1)} ]`];
  });

/** Boat-like files in many layouts: blocks and brackets, any indentation, comments everywhere, either line ending. */
export const layouts: fc.Arbitrary<Layout> = fc
  .record({
    step: indent,
    isFlow: fc.boolean(),
    isInHull: fc.boolean(),
    keyNote: comment,
    before: comment,
    after: fc.constantFrom(
      [],
      ['# the end'],
      ['', '# the end'],
      ['limits: { trim: 1 }'],
      ['', 'limits:', '  trim: 1 # x'],
    ),
    ending: fc.constantFrom('\n', '\r\n'),
    isEnded: fc.boolean(),
  })
  .chain(shape => {
    const list = shape.isFlow ? flowList : blockList(shape.step);
    return list.map(lines => {
      const { step, isInHull, isFlow, keyNote, before, after, ending, isEnded } = shape;
      const key = isInHull ? 'tanks:' : 'payload:';
      const [first = '', ...others] = lines;
      const body = isFlow ? [`${key} ${first}`, ...others] : [`${key}${tail(keyNote)}`, ...lines];
      const section = isInHull ? ['hull:', ...[`length: 900 mm`, ...body].map(line => ' '.repeat(step) + line)] : body;
      const all = ['boat: Tern', ...(before === '' ? [] : [before]), ...section, ...after];
      const entries = isFlow
        ? (lines.join(' ').match(/\{[^{}]*(\{[^{}]*\}[^{}]*)*\}/g)?.length ?? 0)
        : lines.filter(line => /^ *-/.test(line)).length;
      return {
        text: all.join(ending) + (isEnded ? ending : ''),
        list: isInHull ? ['hull', 'tanks'] : ['payload'],
        entries,
      };
    });
  });
