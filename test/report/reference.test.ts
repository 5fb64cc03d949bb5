import { describe, expect, it } from 'vitest';
import { createDescriber } from '../../schema/describe.ts';
import { materials } from '../../schema/materials.ts';
import { catalogue, type FindingCode } from '../../server/findings/catalogue/catalogue.ts';
import { findingLine, referenceText } from '../../server/report/reference.ts';

const reference = referenceText(createDescriber());

describe('the reference', () => {
  it('is what schema/REFERENCE.md says', async () => {
    await expect(reference).toMatchFileSnapshot('../../schema/REFERENCE.md');
  });
  it('has every finding, and knows its line', () => {
    const lines = reference.split('\n');
    for (const code of Object.keys(catalogue) as FindingCode[]) {
      expect(lines[findingLine(reference, code) - 1]).toBe(`### ${code}`);
    }
  });
  it('has every material with its source', () => {
    for (const { key, source } of materials) {
      expect(reference).toContain(key);
      expect(reference).toContain(source.replace(/\|/g, '\\|'));
    }
  });
});
