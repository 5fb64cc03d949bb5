/**
 * A VS Code served to the browser: the editor's own server, out of the npm package code-server, with our packaged
 * extension installed. Nothing is compiled: install scripts are not run, the few native parts they would build are
 * not needed to edit a file.
 */
import { spawn, spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { npm, projectRoot } from './install.mjs';

/** Brings VS Code 1.100, the newest that runs on Node 20. */
const editorPackage = 'code-server@4.100.3';

/** Ignored by git; holds the editor and what it remembers. */
export const editorCache = join(projectRoot, '.cache', 'editor');

const settings = {
  'security.workspace.trust.enabled': false,
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.enableExperiments': false,
  'workbench.reduceMotion': 'on',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'git.enabled': false,
  'editor.minimap.enabled': false,
  // A served editor would save while one types, unlike a desktop one.
  'files.autoSave': 'off',
};

/**
 * Sets the editor up once in the cache folder and returns the folder that holds its server; throws a sentence when
 * that cannot be done.
 * @param {(line: string) => void} say
 */
export function setUpEditor(say) {
  const home = join(editorCache, editorPackage.replace('@', '-'));
  const program = join(home, 'node_modules', 'code-server', 'lib', 'vscode');
  const done = join(home, 'complete');
  if (existsSync(done)) {
    return program;
  }
  rmSync(home, { recursive: true, force: true });
  mkdirSync(home, { recursive: true });
  writeFileSync(join(home, 'package.json'), '{ "private": true }\n');
  say(
    `Fetching an editor for the browser (${editorPackage} from npm, 290 MB on disk), once: half a minute or more ...`,
  );
  const quiet = { quiet: true };
  if (!npm(['install', '--ignore-scripts', editorPackage], { cwd: home, ...quiet })) {
    throw new Error(`npm could not install ${editorPackage}`);
  }
  say('Installing the packages of its server ...');
  if (!npm(['install', '--ignore-scripts', '--omit=dev'], { cwd: program, ...quiet })) {
    throw new Error("npm could not install the packages of the editor's server");
  }
  writeFileSync(done, '');
  return program;
}

/**
 * Writes a fresh profile (settings, no extensions) into `folder` and installs `vsix`, if given, into it.
 * @param {{ program: string, folder: string, vsix?: string }} what
 */
export function createProfile({ program, folder, vsix }) {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(join(folder, 'data', 'User'), { recursive: true });
  mkdirSync(join(folder, 'data', 'logs'), { recursive: true });
  writeFileSync(join(folder, 'data', 'User', 'settings.json'), JSON.stringify(settings, undefined, 2));
  if (vsix === undefined) {
    return;
  }
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [...serverArguments(program, folder), '--install-extension', vsix],
    { env: cleanEnvironment(), encoding: 'utf8' },
  );
  if (status !== 0) {
    throw new Error(`the extension could not be installed into the editor: ${stderr || stdout}`);
  }
}

/**
 * Starts the server on a free port of this machine and waits until it answers.
 * @param {{ program: string, folder: string }} what folder: a profile made by {@link createProfile}
 * @returns {Promise<ServedEditor>}
 *
 * @typedef {{
 *   address: (folder: string, file?: string) => string,
 *   log: () => string,
 *   ended: Promise<void>,
 *   end: () => void,
 * }} ServedEditor `address` opens a folder and in it a file; `end` ends the server and all it started
 */
export async function serveEditor({ program, folder }) {
  const port = await freePort();
  // Without a token any page in the browser could talk to the server and, through it, run programs.
  const token = randomBytes(16).toString('hex');
  const origin = `http://127.0.0.1:${port}`;
  const server = spawn(
    process.execPath,
    [
      ...serverArguments(program, folder),
      ...['--host', '127.0.0.1', '--port', String(port), '--connection-token', token, '--telemetry-level', 'off'],
    ],
    // A group of its own, so that the hosts it starts can be ended with it.
    { env: cleanEnvironment(), detached: process.platform !== 'win32', stdio: ['ignore', 'pipe', 'pipe'] },
  );
  let log = '';
  for (const stream of [server.stdout, server.stderr]) {
    stream.setEncoding('utf8').on('data', text => {
      log += text;
    });
  }
  let running = true;
  const ended = new Promise(resolve => {
    server.once('exit', () => {
      running = false;
      resolve(undefined);
    });
  });
  const end = () => {
    if (running && server.pid !== undefined) {
      endGroup(server.pid);
    }
  };
  for (let waited = 0; !(await answers(`${origin}/version`)); waited += 0.2) {
    if (!running || waited > 60) {
      end();
      throw new Error(`the editor's server did not start: ${log.trim()}`);
    }
    await new Promise(resolve => setTimeout(resolve, 200));
  }
  return {
    address: (opened, file) => editorAddress({ origin, token, opened, file }),
    log: () => log,
    ended: ended.then(() => undefined),
    end,
  };
}

/**
 * The folder is given as a plain path, the file as a URI: so the workbench reads them.
 * @param {{ origin: string, token: string, opened: string, file?: string | undefined }} what
 */
export function editorAddress({ origin, token, opened, file }) {
  const query = new URLSearchParams({ tkn: token, folder: decodeURIComponent(pathToFileURL(opened).pathname) });
  if (file !== undefined) {
    const remote = `vscode-remote://${new URL(origin).host}${pathToFileURL(file).pathname}`;
    query.set('payload', JSON.stringify([['openFile', remote]]));
  }
  return `${origin}/?${query}`;
}

/**
 * @param {string} program
 * @param {string} folder
 */
function serverArguments(program, folder) {
  return [
    join(program, 'out', 'server-main.js'),
    '--accept-server-license-terms',
    ...['--server-data-dir', folder, '--extensions-dir', join(folder, 'extensions')],
  ];
}

/** This may itself run in a terminal of an editor, whose variables would mislead the server. */
function cleanEnvironment() {
  return Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^(VSCODE|ELECTRON)_/.test(name)));
}

/** @returns {Promise<number>} */
function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer().once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

/** @param {string} url */
async function answers(url) {
  try {
    return (await fetch(url)).status < 500;
  } catch {
    return false;
  }
}

/** @param {number} pid */
function endGroup(pid) {
  if (process.platform === 'win32') {
    spawnSync('taskkill', ['/pid', String(pid), '/t', '/f']);
  } else {
    process.kill(-pid, 'SIGTERM');
  }
}
