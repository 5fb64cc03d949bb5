import { describe, expect, it } from 'vitest';
import { createDescriber } from '../../schema/describe.ts';
import { materials } from '../../schema/materials.ts';
import { WORDS } from '../../schema/words.ts';
import { FIGURES } from '../../server/core/figures/table.ts';
import { TRANSIT_FIGURES } from '../../server/core/figures/transitTable.ts';
import { catalogue, type FindingCode } from '../../server/core/findings/catalogue/catalogue.ts';
import { findingLines } from '../../server/core/report/reference.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { referenceText } from '../helpers/atOnce.ts';

const describer = createDescriber();
const reference = referenceText(describer);

describe('the reference', () => {
  it('is what schema/REFERENCE.md says', async () => {
    await expect(reference).toMatchFileSnapshot('../../schema/REFERENCE.md');
  });
  it('has every finding, and knows its line', () => {
    const lines = reference.split('\n');
    const starts = finish(findingLines(describer));
    for (const code of Object.keys(catalogue) as FindingCode[]) {
      expect(lines[starts.get(code)! - 1]).toBe(`### ${code}`);
    }
  });
  it('has the word of every figure that has a heading', () => {
    const words = WORDS.map(({ word }) => word).join(', ');
    const headings = [...FIGURES, ...TRANSIT_FIGURES].flatMap(({ heading }) => heading ?? []);
    const isIn = (term: string) => words.toLowerCase().includes(term.replace(/^(Least|Most) /, '').toLowerCase());
    // A heading of several: “BG, tank water free”, “Draft at bow, stern”.
    expect(headings.filter(heading => !heading.split(/, | at /).some(isIn))).toEqual([]);
  });
  it('has every material with its source', () => {
    for (const { key, source } of materials) {
      expect(reference).toContain(key);
      expect(reference).toContain(source.replace(/\|/g, '\\|'));
    }
  });
});
