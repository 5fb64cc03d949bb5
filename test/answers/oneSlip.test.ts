import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { conditionFindings } from '../../server/core/findings/catalogue/conditionFindings.ts';
import { createBoatService } from '../../server/service/service.ts';
import { isLong } from '../helpers/long.ts';
import { sampleMeshes } from '../helpers/sampleMeshes.ts';

/** Slips of each kind. */
const RUNS = isLong ? 40 : 15;

const folder = new URL('../../samples/', import.meta.url);
const samples = readdirSync(folder)
  .filter(name => name.endsWith('.boat.yaml'))
  .map(name => readFileSync(new URL(name, folder), 'utf8'));

const service = createBoatService();

/** Findings about the writing; how the boat floats without what cannot be read is another matter. */
const findingsOf = (text: string): readonly string[] =>
  service
    .analyse(text, undefined, sampleMeshes)
    .findings.filter(({ code }) => !(code in conditionFindings))
    .map(({ code, message }) => `${code}: ${message}`);

interface SlipKind {
  readonly suits: RegExp;
  readonly make: (line: string) => string;
}

const keyLine = /^\s*(?:- )?\w+: (?=\S)/;
const slips: Readonly<Record<string, SlipKind>> = {
  'no space after the colon': { suits: keyLine, make: line => line.replace(/: /, ':') },
  'no colon': { suits: keyLine, make: line => line.replace(/: /, ' ') },
  'no space after the dash': { suits: /^\s*- /, make: line => line.replace('- ', '-') },
  'a key moved right': { suits: /^\s+\w+: (?=\S)/, make: line => ` ${line}` },
  'a key moved left': { suits: /^\s+\w+: (?=\S)/, make: line => line.slice(1) },
  'a dash moved right': { suits: /^\s+- /, make: line => ` ${line}` },
  'a bracket not closed': { suits: /[}\]]\s*(?:#.*)?$/, make: line => line.replace(/[}\]](?=\s*(?:#.*)?$)/, '') },
};

describe('one slip makes one complaint in a whole boat', { timeout: 120_000 }, () => {
  test('the samples themselves are without a slip', () => {
    for (const sample of samples) expect(findingsOf(sample)).toEqual([]);
  });

  test.each(Object.entries(slips))('%s', (_name, { suits, make }) => {
    let hits = 0;
    fc.assert(
      fc.property(fc.constantFrom(...samples), fc.nat(), (sample, pick) => {
        const lines = sample.split('\n');
        const places = lines.flatMap((line, i) => (suits.test(line) ? [i] : []));
        const at = places[pick % places.length];
        if (at === undefined) return;
        const text = lines.map((line, i) => (i === at ? make(line) : line)).join('\n');
        // A key that is alone in its section may move as it likes.
        const findings = findingsOf(text);
        expect(findings.length).toBeLessThanOrEqual(1);
        hits += findings.length;
      }),
      { numRuns: RUNS },
    );
    expect(hits).toBeGreaterThan(0.75 * RUNS);
  });
});
