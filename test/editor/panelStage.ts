/** The page of the trim sheet without an editor round it: the real page, style and script, fed by the real service. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { projectRoot } from '../../client/launch/install.mjs';
import type { FromPanel, ToPanel } from '../../client/panel/messages.ts';
import { pageHtml } from '../../client/panel/pageHtml.ts';
import { createBoatService } from '../../server/service/service.ts';
import { sampleMeshes } from '../helpers/sampleMeshes.ts';
import { type Theme, themes } from './themes.ts';

export interface Stage {
  readonly page: Page;
  /** What the page has said since it was opened. */
  readonly said: () => Promise<readonly FromPanel[]>;
  readonly send: (message: ToPanel) => Promise<void>;
}

interface StageOptions {
  /** Of a boat file. */
  readonly text: string;
  readonly theme: Theme;
  readonly width: number;
  readonly zoom: number;
}

const dist = (name: string): string => readFileSync(join(projectRoot, 'dist', name), 'utf8');

/** The page with a boat on it, drawn whole for the width that it has. */
export async function openStage(browser: Browser, { text, theme, width, zoom }: StageOptions): Promise<Stage> {
  // A zoomed page is one of fewer and larger pixels.
  const viewport = { width: Math.floor(width / zoom), height: Math.floor(900 / zoom) };
  const page = await browser.newPage({ viewport, deviceScaleFactor: zoom });
  const { kind, colours } = themes[theme];
  const variables = Object.entries(colours)
    .map(([name, value]) => `--vscode-${name}: ${value};`)
    .join(' ');
  const html = pageHtml({ style: '', script: '', policy: '', nonce: '' })
    .replace(/<meta http-equiv[^>]*>/, '')
    .replace(/<link [^>]*>/, `<style>:root { ${variables} }\n${dist('panel.css')}</style>`)
    .replace(/<script [^>]*><\/script>/, '')
    .replace('<body class="', `<body class="${kind} `);
  await page.setContent(html);
  await page.addScriptTag({ content: API });
  await page.addScriptTag({ content: dist('panel.js') });
  const said = (): Promise<readonly FromPanel[]> => page.evaluate('heard');
  const send = (message: ToPanel): Promise<void> =>
    page.evaluate(`void dispatchEvent(new MessageEvent('message', { data: ${JSON.stringify(message)} }))`);
  const ready = (await said()).find(message => message.kind === 'ready')!;
  await send(sheetMessage(text, ready));
  await page.waitForFunction(`document.querySelectorAll('#pictures svg').length > 0`);
  return { page, said, send };
}

/** Stands for the editor: it hears everything and remembers nothing. */
const API = `
const heard = [];
const acquireVsCodeApi = () => ({ postMessage: message => heard.push(message), getState: () => {}, setState: () => {} });
`;

/** The whole sheet of a boat file with its first proposal, for a page with so much room. */
function sheetMessage(text: string, room: { readonly width: number; readonly names: 'few' | 'all' }): ToPanel {
  const service = createBoatService();
  const analysis = service.analyse(text, undefined, sampleMeshes);
  const { width, names } = room;
  const { pictures, glance } = service.sheet(analysis, { proposal: 0, width, names }).all();
  const proposals = service.proposals(analysis);
  return { kind: 'sheet', uri: 'file:///boat.boat.yaml', glance, pictures, isWhole: true, proposals, chosen: 0 };
}
