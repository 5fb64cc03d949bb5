/** One run of a scenario: a fresh profile with the packaged extension, its server, a browser, a copy of the sample. */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { projectRoot } from '../../client/launch/install.mjs';
import { createProfile, serveEditor, setUpEditor } from '../../client/launch/servedEditor.mjs';

export const shots = join(projectRoot, 'test', 'editor', 'shots');
export const sampleName = 'petrel.boat.yaml';

export type Session = {
  readonly page: Page;
  /** The copy of the sample, in the folder that the editor opened. */
  readonly file: string;
  /** How long to wait for anything, in milliseconds. */
  readonly patience: number;
  /** Takes a picture of the window, or of another page. */
  readonly shoot: (name: string, of?: Page) => Promise<void>;
};

export type SessionOptions = {
  /** Names the screenshots and the log. */
  readonly name: string;
  readonly patience: number;
  /** Changes the extension once it is installed in `folder`. */
  readonly tamper?: (folder: string) => void;
  /** Whether the extension runs in the browser's extension worker instead of on the server. */
  readonly inWorker?: boolean;
};

/** Runs `scenario`; one that fails leaves a screenshot and a log, and what it threw is thrown on with the log in it. */
export async function inEditor(options: SessionOptions, scenario: (session: Session) => Promise<void>): Promise<void> {
  const program = setUpEditor(line => console.log(line));
  const work = mkdtempSync(join(tmpdir(), 'trimwright-editor-'));
  const boats = join(work, 'boats');
  mkdirSync(boats);
  cpSync(join(projectRoot, 'samples', sampleName), join(boats, sampleName));
  const profile = createProfileFor(options, program, join(work, 'profile'));
  const editor = await serveEditor({ program, folder: profile });
  const browserLog: string[] = [];
  let browser: Browser | undefined;
  let page: Page | undefined;
  const shoot = async (name: string, of = page) => {
    await of?.screenshot({ path: join(shots, `${options.name}-${name}.png`), animations: 'disabled' });
  };
  try {
    browser = await launchBrowser();
    page = await browser.newPage({ viewport: { width: 1360, height: 960 } });
    page.on('console', message => browserLog.push(`${message.type()}: ${message.text()}`));
    page.on('pageerror', error => browserLog.push(`page error: ${error.stack}`));
    page.setDefaultTimeout(options.patience);
    if (options.inWorker) {
      await addWebExtension(page);
    }
    await page.goto(editor.address(boats));
    await scenario({ page, file: join(boats, sampleName), patience: options.patience, shoot });
  } catch (error) {
    await shoot('failed');
    const reason = error instanceof Error ? error.stack : String(error);
    const log = `${reason}\n\nBrowser:\n${browserLog.join('\n')}\n\nServer:\n${editor.log()}`;
    writeFileSync(join(shots, `${options.name}-failed.log`), log);
    throw new ScenarioFailure(reason, browserLog);
  } finally {
    await browser?.close();
    editor.end();
    await editor.ended;
    rmSync(work, { recursive: true, force: true, maxRetries: 5 });
  }
}

export class ScenarioFailure extends Error {
  /** What the editor wrote to the browser's console. */
  readonly browserLog: readonly string[];

  constructor(reason: string | undefined, browserLog: readonly string[]) {
    super(reason);
    this.browserLog = browserLog;
  }
}

/** Below the editor's program, whence its server hands out files. */
const webExtensionFolder = 'trimwright';

function createProfileFor({ tamper, inWorker }: SessionOptions, program: string, folder: string): string {
  createProfile({ program, folder, vsix: join(projectRoot, 'trimwright.vsix') });
  const extensions = join(folder, 'extensions');
  const installed = readdirSync(extensions).find(name => name.startsWith('trimwright.'));
  if (installed === undefined) {
    throw new Error('the editor did not install the extension');
  }
  tamper?.(join(extensions, installed));
  if (inWorker) {
    const target = join(program, webExtensionFolder);
    rmSync(target, { recursive: true, force: true });
    cpSync(join(extensions, installed), target, { recursive: true });
    createProfile({ program, folder });
  }
  return folder;
}

export function launchBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

/**
 * Makes the workbench load the extension as one built into its web version: that runs in the extension worker of the
 * browser. The page's configuration is changed before its scripts read it. (Answering the page's request in the
 * server's stead would not do: the browser then refuses it connections to this machine.)
 */
async function addWebExtension(page: Page): Promise<void> {
  const content = `new MutationObserver((_, observer) => {
    const element = document.getElementById('vscode-workbench-web-configuration');
    if (element === null) return;
    observer.disconnect();
    const settings = JSON.parse(element.dataset.settings);
    const base = settings.webviewEndpoint.split('/').filter(Boolean)[0];
    settings.additionalBuiltinExtensions = [
      ...(settings.additionalBuiltinExtensions ?? []),
      { scheme: 'http', authority: location.host, path: '/' + base + '/static/${webExtensionFolder}' },
    ];
    element.dataset.settings = JSON.stringify(settings);
  }).observe(document, { childList: true, subtree: true });`;
  await page.addInitScript({ content });
}
