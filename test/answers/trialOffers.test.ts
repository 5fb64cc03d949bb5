import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Finding } from '../../server/core/findings/finding.ts';
import { applyChanges, splice } from '../../server/core/text/editing/edit.ts';
import { rangeOf } from '../../server/core/text/reading/rangeOf.ts';
import { heard, service } from '../helpers/analysed.ts';

const DUNLIN = readFileSync(new URL('../../samples/dunlin.boat.yaml', import.meta.url), 'utf8');
const URI = 'file:///dunlin.boat.yaml';

const heardOnce = new Map<string, ReturnType<typeof heard>>();
const boatOf = (text: string) => {
  const boat = heardOnce.get(text) ?? heard(text);
  heardOnce.set(text, boat);
  return boat;
};
const ofFile = (text: string) => boatOf(text).findings.filter(({ about }) => about === 'file').length;
const isSaid = (text: string, saying: string): boolean =>
  boatOf(text).findings.some(({ message }) => message === saying);

/** Every quick fix on what the trials say of a text: what it says that it clears, and the text with it. */
function offeredFor(text: string) {
  const analysis = boatOf(text);
  const onTrials = analysis.findings.filter(({ about }) => about === 'trials');
  return onTrials.flatMap((on: Finding) => {
    const [at] = rangeOf(analysis.syntax, on.place);
    return service
      .codeActions(analysis, [at, at], { uri: URI, version: null })
      .filter(({ kind }) => kind === 'quickfix')
      .map(({ diagnostics = [], edit }) => {
        const edits = edit!.changes![URI]!;
        return {
          on: on.code,
          isStrike: edits.some(({ newText }) => newText.includes('slip')),
          clears: diagnostics.map(({ message }) => String(message)),
          after: TextDocument.applyEdits(TextDocument.create(URI, 'boat', 1, text), edits),
        };
      });
  });
}

test('what is offered on the readings clears what it says that it clears', () => {
  const offered = offeredFor(DUNLIN);
  for (const { clears, after } of offered) expect(clears.filter(said => isSaid(after, said))).toEqual([]);
  expect(offered.filter(({ clears, isStrike }) => clears.length > 0 && !isStrike).length).toBeGreaterThan(5);
});

test('a slip is struck out where it stands; that is not said to mend the readings beside it', () => {
  const strikes = offeredFor(DUNLIN).filter(({ isStrike }) => isStrike);
  const claims = (code: string) => strikes.filter(({ on }) => on === code).map(({ clears }) => clears.length);
  expect(claims('trial-slip')).toEqual([1]);
  expect(new Set(claims('trial-differs'))).toEqual(new Set([0]));
});

/** Its pump right behind its battery. */
const CROWDED = DUNLIN.replace('name: battery,', 'name: battery, box: 44 x 24 mm,').replace(
  'name: pump, mass: 118 g ± 0.5 g, station: 286 mm',
  'name: pump, box: 30 x 30 mm, mass: 118 g ± 0.5 g, station: 275 to 297 mm',
);

test('nothing is put where it cannot lie, wherever the trials have it', () => {
  const { syntax, learned, offers } = boatOf(CROWDED);
  const isHarm = ({ changes }: { readonly changes: Parameters<typeof applyChanges>[1] }): boolean =>
    ofFile(splice(syntax.text, applyChanges(syntax, changes)!)) > ofFile(CROWDED);
  expect(learned!.verdict!.offers.filter(isHarm).length).toBeGreaterThan(0);
  expect(offers.all().filter(isHarm)).toEqual([]);
});
