/** What the manifest promises: nothing outside boat files, every command there, only what is needed in the package. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';
import manifest from '../../package.json' with { type: 'json' };

const read = (file: string): string => readFileSync(join(projectRoot, file), 'utf8');

test('the extension is woken by the boat language, and by a trim sheet that was left open', () => {
  expect(manifest.activationEvents).toEqual(['onLanguage:boat', 'onWebviewPanel:trimwright.sheet']);
  expect(manifest.contributes.languages.map(language => language.id)).toEqual(['boat']);
  expect(manifest.contributes.languages.flatMap(language => language.extensions)).toEqual(['.boat.yaml', '.boat.yml']);
});

test('the grammar of a boat file is the one of YAML and no more', () => {
  const [grammar] = manifest.contributes.grammars;
  const content = JSON.parse(read(grammar?.path ?? ''));
  expect(content.patterns).toEqual([{ include: 'source.yaml' }]);
  expect(content.scopeName).toBe(grammar?.scopeName);
});

test('every command of the manifest is registered, and no other', () => {
  const registered = [...read('client/startClient.ts').matchAll(/registerCommand\('([^']+)'/g)].map(match => match[1]);
  expect(registered.sort()).toEqual(manifest.contributes.commands.map(command => command.command).sort());
});

test('the walkthrough runs commands that there are, and shows pictures that are packed', () => {
  const steps = manifest.contributes.walkthroughs.flatMap(({ steps }) => steps);
  const commands = manifest.contributes.commands.map(({ command }) => command);
  const run = steps.flatMap(({ description }) =>
    [...description.matchAll(/\(command:([^)]+)\)/g)].map(match => match[1]),
  );
  // A button for each step.
  expect(steps.filter(({ description }) => !description.includes('](command:')).map(({ id }) => id)).toEqual([]);
  expect(run.filter(command => !commands.includes(command!))).toEqual([]);
  const pictures = steps.flatMap(({ media: { image } }) =>
    typeof image === 'string' ? [image] : Object.values(image),
  );
  const packed = read('.vscodeignore').split('\n');
  expect(
    [...new Set(pictures)].filter(
      picture => !packed.includes(`!${picture}`) || !existsSync(join(projectRoot, picture)),
    ),
  ).toEqual([]);
});

test('the lock file holds no download addresses', () => {
  expect(read('package-lock.json')).not.toMatch(/"resolved"/);
});
