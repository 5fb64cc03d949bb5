/** The guide for other editors, followed to the letter with the editors themselves and the packed command line. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';

const folder = mkdtempSync(join(tmpdir(), 'editors-'));
const guide = readFileSync(join(projectRoot, 'samples', 'EDITORS.md'), 'utf8');

/** The configuration that the guide gives in a language. */
const told = (language: string): string =>
  new RegExp(`\`\`\`${language}\n([\\s\\S]*?)\`\`\``).exec(guide)?.[1] ??
  expect.unreachable(`no ${language} in the guide`);

function run(command: string, args: readonly string[], cwd = folder) {
  const path = [join(folder, 'node_modules', '.bin'), process.env.PATH].join(delimiter);
  // A home of its own: nobody's settings have a say.
  const env = { ...process.env, PATH: path, HOME: folder, XDG_CONFIG_HOME: folder };
  const { status, stdout, stderr } = spawnSync(command, args, { cwd, env, encoding: 'utf8', timeout: 200_000 });
  return { status, said: `${stdout}${stderr}` };
}

beforeAll(() => {
  run('npm', ['pack', '--ignore-scripts', '--pack-destination', folder], projectRoot);
  const packed = readdirSync(folder).find(name => name.endsWith('.tgz')) ?? expect.unreachable('nothing was packed');
  writeFileSync(join(folder, 'package.json'), '{ "private": true }');
  run('npm', ['install', '--offline', '--no-audit', '--no-fund', packed]);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Seen {
  readonly problem?: string;
  readonly before: readonly string[];
  readonly hover: string;
  readonly after: readonly string[];
  readonly text: string;
}

const editors = [
  {
    name: 'Neovim',
    language: 'lua',
    setUp: 'init.lua',
    drive: 'drive.lua',
    command: ['nvim', '--headless', '-u', 'init.lua', 'petrel.boat.yaml', '+luafile drive.lua'],
  },
  {
    name: 'Emacs',
    language: 'elisp',
    setUp: 'init.el',
    drive: 'drive.el',
    command: ['emacs', '--batch', '-l', 'init.el', '-l', 'drive.el'],
  },
] as const;

test('the packed command line works in an empty folder, by itself', () => {
  copyFileSync(join(projectRoot, 'samples', 'petrel.boat.yaml'), join(folder, 'petrel.boat.yaml'));
  expect(run('npx', ['--no-install', 'trimwright', 'check', 'petrel.boat.yaml']).said).toMatch(
    /^petrel\.boat\.yaml:\d+:\d+: warning: Surfaced, /,
  );
});

test.each(editors)(
  '$name shows squiggles and hovers, inserts lead and renames',
  ({ language, setUp, drive, command: [command, ...args] }) => {
    copyFileSync(join(projectRoot, 'samples', 'petrel.boat.yaml'), join(folder, 'petrel.boat.yaml'));
    copyFileSync(join(projectRoot, 'test', 'editor', 'otherEditors', drive), join(folder, drive));
    writeFileSync(join(folder, setUp), told(language));
    rmSync(join(folder, 'seen.json'), { force: true });
    const { said } = run(command, args);
    const seen = JSON.parse(readFileSync(join(folder, 'seen.json'), 'utf8')) as Seen;
    expect(seen.problem, said).toBeUndefined();
    expect(seen.before).toContain('submerged-trim');
    expect(seen.hover).toContain('Surfaced, the boat floats');
    expect(seen.after).not.toContain('submerged-trim');
    expect(seen.text).toMatch(/material: lead/);
    expect(seen.text).toMatch(/name: pressure hull/);
    expect(seen.text).toMatch(/in: pressure hull/);
    expect(seen.text).not.toContain('dry cylinder');
  },
);
