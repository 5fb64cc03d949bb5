/** A VS Code installed on this machine, found on the PATH. */
import { spawnSync } from 'node:child_process';

/**
 * Why no desktop editor can be opened from here, if so; `code --version` is asked only when nothing else speaks against it.
 * @param {{ platform: string, isRoot: boolean, env: Record<string, string | undefined>, version: () => string | undefined }} machine
 * @returns {string | undefined}
 */
export function desktopProblem({ platform, isRoot, env, version }) {
  if (isRoot) {
    return 'a desktop VS Code does not run as root';
  }
  if (platform === 'linux' && !env.DISPLAY && !env.WAYLAND_DISPLAY) {
    return 'there is no display';
  }
  if (env.VSCODE_IPC_HOOK_CLI) {
    return 'this is a remote terminal, whose code command cannot open an extension under development';
  }
  const found = version();
  if (found === undefined) {
    return 'no code command is on the PATH';
  }
  const [major = 0, minor = 0] = found.split('.').map(Number);
  return major > 1 || minor >= 91 ? undefined : `the VS Code on the PATH is ${found}, older than 1.91`;
}

/** @returns {string | undefined} a sentence fragment, see {@link desktopProblem} */
export function findDesktopProblem() {
  return desktopProblem({
    platform: process.platform,
    isRoot: process.getuid?.() === 0,
    env: process.env,
    version: () => {
      const { status, stdout } = runCode(['--version']);
      return status === 0 ? stdout.split('\n')[0] : undefined;
    },
  });
}

/**
 * Opens `file` in a new window that runs the extension from `root`.
 * @param {{ root: string, file: string }} what
 * @returns {boolean} whether the editor took it
 */
export function openDesktopEditor({ root, file }) {
  return runCode([`--extensionDevelopmentPath=${root}`, '--new-window', file]).status === 0;
}

/** @param {readonly string[]} args */
function runCode(args) {
  const shell = process.platform === 'win32';
  // The Windows command is a .cmd file: it needs a shell, and a shell needs quotes.
  return spawnSync('code', shell ? args.map(arg => `"${arg}"`) : args, { shell, encoding: 'utf8', timeout: 60_000 });
}
