/** `npm start [file]`: the report of a boat in the terminal, then the same boat in an editor. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { findDesktopProblem, openDesktopEditor } from './desktopEditor.mjs';
import { npm, prepareClone, projectRoot, stop } from './install.mjs';
import { createProfile, editorCache, serveEditor, setUpEditor } from './servedEditor.mjs';

const sample = join(projectRoot, 'samples', 'petrel.boat.yaml');

/** @param {string} line */
const say = line => console.error(line);

const args = process.argv.slice(2);
const wantsEditor = process.stdout.isTTY && !process.env.CI && !args.includes('--no-editor');
const named = args.find(arg => !arg.startsWith('-'));
// npm runs this in the project's folder; INIT_CWD is where the command was typed.
const file = named === undefined ? sample : resolve(process.env.INIT_CWD ?? process.cwd(), named);

if (!existsSync(file)) {
  stop(`There is no file ${file}. Give the name of a boat file, for example: npm start samples/petrel.boat.yaml`);
}
prepareClone();
if (!npm(['run', 'build'], { cwd: projectRoot, quiet: true })) {
  stop('The build failed: see above.');
}
const report = spawnSync(process.execPath, [join(projectRoot, 'dist', 'trimwright.cjs'), 'report', file], {
  stdio: 'inherit',
});
if (!wantsEditor) {
  process.exitCode = report.status ?? 1;
} else {
  await openEditor();
}

async function openEditor() {
  const problem = findDesktopProblem();
  if (problem === undefined && openDesktopEditor({ root: projectRoot, file })) {
    say(`\n${relative(process.cwd(), file)} is open in VS Code.`);
    return;
  }
  say(`\nNo desktop editor (${problem ?? 'VS Code did not open the file'}), so one is served to the browser.`);
  try {
    await openServedEditor();
  } catch (error) {
    say(`That could not be done: ${error instanceof Error ? error.message : error}.`);
    say(
      'To use another VS Code: npm run package, then in its Extensions view "Install from VSIX..." and trimwright.vsix.',
    );
    process.exitCode = 1;
  }
}

async function openServedEditor() {
  const program = setUpEditor(say);
  say('Packaging the extension ...');
  if (!npm(['run', 'package'], { cwd: projectRoot, quiet: true })) {
    throw new Error('the extension could not be packaged');
  }
  const folder = join(editorCache, 'profile');
  createProfile({ program, folder, vsix: join(projectRoot, 'trimwright.vsix') });
  const editor = await serveEditor({ program, folder });
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.once(signal, editor.end);
  }
  say(`Open this in a browser: ${editor.address(dirname(file), file)}`);
  say('Squiggles show what is amiss; Shift+Alt+. on one applies the best fix. Ctrl-C here ends it.');
  await editor.ended;
}
