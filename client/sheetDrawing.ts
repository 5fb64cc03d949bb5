/** Draws the boat on a trim sheet panel as its text changes, and while a hand moves a part. */
import * as vscode from 'vscode';
import {
  type PreviewParams,
  type PreviewResult,
  previewRequest,
  type SheetParams,
  type SheetResult,
  sheetRequest,
} from '../server/editor/protocol.ts';
import type { FromPanel } from './panel/messages.ts';
import { boatInView, lookOf, post, type SheetPage } from './sheetPage.ts';

/** Quiet after which proposals are worked out: they take longer than the pictures. */
const quietMilliseconds = 250;

export type SheetDrawing = vscode.Disposable & {
  /** Draws the boat as it is; a change meanwhile is drawn after it, so that one request is on its way at a time. */
  readonly draw: (withProposals: boolean) => Promise<void>;
};

export function createDrawing(page: SheetPage): SheetDrawing {
  let asking: vscode.CancellationTokenSource | null = null;
  let isOutdated = false;
  let quiet: ReturnType<typeof setTimeout> | undefined;

  async function draw(withProposals: boolean): Promise<void> {
    clearTimeout(quiet);
    const document = boatInView(page);
    if (!document) return;
    if (asking) {
      isOutdated = true;
      asking.cancel();
      return;
    }
    const source = new vscode.CancellationTokenSource();
    asking = source;
    isOutdated = false;
    const result = await askForSheet(page, document, withProposals, source.token);
    source.dispose();
    asking = null;
    if (page.boat !== document || isOutdated) {
      void draw(false);
      return;
    }
    if (result?.version !== document.version) return;
    const { pictures, isWhole, glance, proposals } = result;
    const uri = document.uri.toString();
    post(page, { kind: 'sheet', uri, glance, pictures, isWhole, proposals, chosen: page.chosen });
    if (!withProposals) quiet = setTimeout(() => void draw(true), quietMilliseconds);
  }

  return { draw, dispose: () => clearTimeout(quiet) };
}

function askForSheet(
  page: SheetPage,
  document: vscode.TextDocument,
  withProposals: boolean,
  token: vscode.CancellationToken,
): Promise<SheetResult | null> {
  const uri = document.uri.toString();
  const params: SheetParams = { uri, proposal: withProposals ? page.chosen : null, ...lookOf(page) };
  return page.client.sendRequest<SheetResult>(sheetRequest, params, token).catch(() => null);
}

/** Of a boat that nothing is known of. */
const NO_GLANCE = { verdict: { state: 'unknown', words: '' }, gauges: [], legend: '' } as const;

/** The boat with a part where a hand holds it. */
export async function preview(
  page: SheetPage,
  { drag, path, metres }: Extract<FromPanel, { kind: 'preview' }>,
): Promise<void> {
  if (!page.boat) return;
  const params: PreviewParams = { uri: page.boat.uri.toString(), path, metres, ...lookOf(page) };
  const result = await page.client.sendRequest<PreviewResult>(previewRequest, params).catch(() => null);
  const isCurrent = result?.version === page.boat?.version;
  const pictures = isCurrent ? (result?.pictures ?? []) : [];
  const { words, glance } = result ?? { words: '', glance: NO_GLANCE };
  post(page, { kind: 'preview', drag, metres, pictures, words, glance });
}
