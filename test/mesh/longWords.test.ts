import { describe, expect, it } from 'vitest';
import { cutShort, quoted } from '../../schema/quoted.ts';
import { readMeshFile, readMeshSteps } from '../../server/core/meshFiles/readMeshFile.ts';
import { inSteps } from '../../server/core/steps/steps.ts';
import { model, pack, RELATIONS, threeMf } from '../helpers/threeMf.ts';

const long = 'x'.repeat(50_000);
const cut = `“${'x'.repeat(37)}…”`;
const triangle = (corner: string): Uint8Array =>
  new TextEncoder().encode(`solid\nfacet\nouter loop\nvertex ${corner} 0 0\nendloop\nendfacet\nendsolid\n`);

function words(bytes: Uint8Array): string {
  const file = readMeshFile(bytes);
  return file.status === 'faulty' ? file.words : 'read';
}

describe('what a file says is quoted', () => {
  it.each([
    ['short', '“short”'],
    [long, cut],
    ['two\r\nlines', '“two  lines”'],
    ['\u001b[31mred\u0007', '“�[31mred�”'],
    ['back\u202ewards', '“back�wards”'],
    [`${'x'.repeat(36)}😀${long}`, `“${'x'.repeat(36)}�…”`],
  ])('%j', (said, shown) => {
    expect(quoted(said)).toBe(shown);
  });

  it('to the length that there is room for', () => {
    expect(cutShort(long, 10)).toBe('xxxxxxx…');
  });
});

describe('a finding stays short', () => {
  it.each([
    ['a figure of an STL file', triangle(long), `${cut} is no number`],
    ['a figure with a control character', triangle('1\u001b[31m'), '“1�[31m” is no number'],
    ['a unit', threeMf('', '', ` unit="${long}"`), `a unit that nobody knows, ${cut}`],
    ['an object', threeMf('', `<item objectid="${long}"/>`), `an object ${cut} that it does not have`],
    ['a file', threeMf('', `<item objectid="1" p:path="/${long}"/>`), `it lacks its part ${cut}`],
    ['a tag that is not closed', threeMf(`<${long}>`, ''), 'it is no proper XML ('],
    ['a start that is not there', pack({ '_rels/.rels': RELATIONS.replace('/3D/boat.model', long) }), `part ${cut}`],
  ])('%s', (_, bytes, expected) => {
    const said = words(bytes);
    expect(said).toContain(expected);
    expect(said.length).toBeLessThan(200);
  });
});

describe('a tag', () => {
  const attributes = (count: number) => Array.from({ length: count }, (_, i) => ` a${i}=""`).join('');
  const tagged = (count: number) =>
    pack({ '_rels/.rels': RELATIONS, '3D/boat.model': `<model><resources${attributes(count)}/></model>` });

  it('has no more attributes than anybody writes', () => {
    expect(words(tagged(64))).toContain('has no triangles in it');
    expect(words(tagged(65))).toContain('a tag has more than 64 attributes');
  });

  it('of very many is left at the first of them', () => {
    const stepsOf = (bytes: Uint8Array): number => {
      const work = inSteps(() => readMeshSteps(bytes));
      let steps = 0;
      // Ends: the file does.
      while (!work.step()) steps += 1;
      return steps;
    };
    expect(stepsOf(tagged(100_000))).toBeLessThan(stepsOf(tagged(64)) + 5);
  });

  it('has no longer attributes than anybody writes', () => {
    const painted = (length: number) => threeMf(`<object id="1" paint="${'4'.repeat(length)}"/>`, '');
    expect(words(painted(1_000_000))).toContain('has no triangles in it');
    expect(words(painted(1_000_001))).toContain('an attribute is longer than any that is written');
  });

  it('is placed by twelve figures, however many there are', () => {
    const resources = '<object id="1"/>';
    const item = (transform: string) => `<item objectid="1" transform="${transform}"/>`;
    const more = `${'1 '.repeat(12)}${' '.repeat(1000)}`;
    expect(words(threeMf(resources, item(more)))).toContain('figures that make no sense');
    expect(words(pack({ '3D/boat.model': model(resources, item('1 0 0 0 1 0 0 0 1 0 0 0')) }))).toContain('triangles');
  });
});
