/** What `npm start` and `npm test` find out about the machine before they do anything. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { desktopProblem } from '../../client/launch/desktopEditor.mjs';
import { linkProblem, nodeProblem, packagesAreStale } from '../../client/launch/install.mjs';
import { editorAddress } from '../../client/launch/servedEditor.mjs';

describe('Node', () => {
  test.each(['20.19.0', '20.20.2', '21.0.0', '22.12.0', '100.0.0'])('%s will do', version => {
    expect(nodeProblem(version)).toBeUndefined();
  });

  test.each(['20.18.3', '20.9.0', '18.20.0', '0.12.1'])('%s is too old, and the sentence says so', version => {
    expect(nodeProblem(version)).toContain(`this is Node ${version}`);
    expect(nodeProblem(version)).toContain('20.19');
  });
});

describe('packages', () => {
  let root = '';
  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), 'trimwright-packages-'));
    writeFileSync(join(root, 'package-lock.json'), '{}');
  });
  afterEach(() => rmSync(root, { recursive: true }));

  const install = (seconds: number) => {
    const written = join(root, 'node_modules', '.package-lock.json');
    mkdirSync(join(root, 'node_modules'));
    writeFileSync(written, '{}');
    utimesSync(written, seconds, seconds);
    utimesSync(join(root, 'package-lock.json'), 1000, 1000);
  };

  test('are missing on a fresh clone', () => {
    expect(packagesAreStale(root)).toBe(true);
  });

  test('are stale when the lock file is newer', () => {
    install(999);
    expect(packagesAreStale(root)).toBe(true);
  });

  test('will do when they are newer than the lock file', () => {
    install(1001);
    expect(packagesAreStale(root)).toBe(false);
  });

  test('go into a folder of the clone, or none yet, and through no link, wherever that leads', () => {
    expect(linkProblem(root)).toBeUndefined();
    install(999);
    expect(linkProblem(root)).toBeUndefined();
    const worktree = join(root, 'worktree');
    mkdirSync(worktree);
    const link = join(worktree, 'node_modules');
    symlinkSync(join(root, 'node_modules'), link, 'junction');
    expect(linkProblem(worktree)).toContain(`${link} is a link`);
    rmSync(link);
    symlinkSync(join(root, 'nowhere'), link, 'junction');
    expect(linkProblem(worktree)).toContain('is a link');
  });
});

describe('a desktop editor', () => {
  const machine = { platform: 'linux', isRoot: false, env: { DISPLAY: ':0' }, version: () => '1.99.0' };

  test('opens on an ordinary desktop', () => {
    expect(desktopProblem(machine)).toBeUndefined();
    expect(desktopProblem({ ...machine, platform: 'darwin', env: {} })).toBeUndefined();
    expect(desktopProblem({ ...machine, env: { WAYLAND_DISPLAY: 'wayland-0' } })).toBeUndefined();
  });

  test.each([
    ['root', { isRoot: true }],
    ['display', { env: {} }],
    ['remote terminal', { env: { DISPLAY: ':0', VSCODE_IPC_HOOK_CLI: 'socket' } }],
    ['PATH', { version: () => undefined }],
    ['1.90.2, older than 1.91', { version: () => '1.90.2' }],
  ])('does not: %s', (reason, difference) => {
    expect(desktopProblem({ ...machine, ...difference })).toContain(reason);
  });
});

test('the address of a served editor opens the folder and the file in it, whatever their names', () => {
  const address = new URL(
    editorAddress({
      origin: 'http://127.0.0.1:8123',
      token: 'abc',
      opened: '/boats & more',
      file: '/boats & more/é.boat.yaml',
    }),
  );
  expect(address.searchParams.get('tkn')).toBe('abc');
  expect(address.searchParams.get('folder')).toBe('/boats & more');
  expect(JSON.parse(address.searchParams.get('payload') ?? '')).toEqual([
    ['openFile', 'vscode-remote://127.0.0.1:8123/boats%20&%20more/%C3%A9.boat.yaml'],
  ]);
});
