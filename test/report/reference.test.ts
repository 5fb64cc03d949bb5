import { describe, expect, it } from 'vitest';
import { createDescriber } from '../../schema/describe.ts';
import { materials } from '../../schema/materials.ts';
import { catalogue, type FindingCode } from '../../server/core/findings/catalogue/catalogue.ts';
import { findingLines, referenceText } from '../../server/core/report/reference.ts';

const describer = createDescriber();
const reference = referenceText(describer);

describe('the reference', () => {
  it('is what schema/REFERENCE.md says', async () => {
    await expect(reference).toMatchFileSnapshot('../../schema/REFERENCE.md');
  });
  it('has every finding, and knows its line', () => {
    const lines = reference.split('\n');
    const starts = findingLines(describer);
    for (const code of Object.keys(catalogue) as FindingCode[]) {
      expect(lines[starts.get(code)! - 1]).toBe(`### ${code}`);
    }
  });
  it('has every material with its source', () => {
    for (const { key, source } of materials) {
      expect(reference).toContain(key);
      expect(reference).toContain(source.replace(/\|/g, '\\|'));
    }
  });
});
