/** Makes a clone ready to run: the right Node, and the packages that the lock file names. */
import { spawnSync } from 'node:child_process';
import { existsSync, lstatSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder. */
export const projectRoot = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/**
 * @param {string} version as `process.versions.node` gives it
 * @returns {string | undefined} a sentence for the user when this Node is too old
 */
export function nodeProblem(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) {
    return undefined;
  }
  return `Trimwright needs Node 20.19 or newer, and this is Node ${version}: install a newer one from nodejs.org and try again.`;
}

/**
 * Whether the packages are missing, or older than the lock file. npm writes `node_modules/.package-lock.json` last.
 * @param {string} root
 */
export function packagesAreStale(root) {
  const installed = join(root, 'node_modules', '.package-lock.json');
  return !existsSync(installed) || statSync(installed).mtimeMs < statSync(join(root, 'package-lock.json')).mtimeMs;
}

/**
 * npm empties the folder before it fills it: through a link that would be the folder of another clone.
 * @param {string} root
 * @returns {string | undefined} a sentence for the user when `node_modules` is a link
 */
export function linkProblem(root) {
  const folder = join(root, 'node_modules');
  if (!lstatSync(folder, { throwIfNoEntry: false })?.isSymbolicLink()) {
    return undefined;
  }
  return `The packages are out of date, and ${folder} is a link: installing here would empty the folder that it leads to. Install there, or take the link away, and try again.`;
}

/**
 * Runs npm and waits for it. Its output goes to standard error, so that standard output stays ours.
 * @param {readonly string[]} args
 * @param {{ cwd: string, quiet?: boolean }} options quiet: its output is shown only when it fails
 * @returns {boolean} whether it succeeded
 */
export function npm(args, { cwd, quiet = false }) {
  const cli = process.env.npm_execpath;
  const [command, first] = cli?.endsWith('npm-cli.js') ? [process.execPath, [cli]] : ['npm', []];
  const { status, output } = spawnSync(command, [...first, ...args], {
    cwd,
    stdio: quiet ? 'pipe' : ['ignore', 2, 2],
    encoding: 'utf8',
    // npm is a .cmd file on Windows, which only a shell can run.
    shell: command === 'npm' && process.platform === 'win32',
  });
  if (quiet && status !== 0) {
    process.stderr.write((output ?? []).filter(Boolean).join('\n'));
  }
  return status === 0;
}

/** Stops the process with a sentence when Node is too old or the packages cannot be installed, or not here. */
export function prepareClone() {
  const problem = nodeProblem(process.versions.node);
  if (problem !== undefined) {
    stop(problem);
  }
  if (!packagesAreStale(projectRoot)) {
    return;
  }
  const linked = linkProblem(projectRoot);
  if (linked !== undefined) {
    stop(linked);
  }
  console.error('Installing the packages named in package-lock.json (npm ci), once ...');
  // Everything is bundled, so everything is a development dependency: NODE_ENV=production must not leave them out.
  if (!npm(['ci', '--include=dev', '--loglevel=error'], { cwd: projectRoot })) {
    stop('The packages could not be installed: see what npm says above, put it right and try again.');
  }
}

/**
 * @param {string} reason
 * @returns {never}
 */
export function stop(reason) {
  console.error(reason);
  process.exit(1);
}
