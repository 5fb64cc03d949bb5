/** The trim sheet beside the text: a hand on the picture changes the text, and the text the picture. */
import type { Frame, Locator } from 'playwright-core';
import { expect } from 'vitest';
import { type Session, sampleName } from './session.ts';
import { step } from './step.ts';
import { openInExplorer, until } from './workbench.ts';

/** The page in the panel; null until it is there. */
async function sheetPage({ page }: Session): Promise<Frame | null> {
  for (const frame of page.frames()) {
    if (
      (await frame
        .locator('#pictures')
        .count()
        .catch(() => 0)) > 0
    )
      return frame;
  }
  return null;
}

/** A picture of the sheet, once it is drawn. */
async function picture(session: Session, id: string): Promise<Locator> {
  let found: Locator | null = null;
  await until({
    what: `the picture ${id}`,
    seen: async () => {
      found = (await sheetPage(session))?.locator(`[data-picture="${id}"] svg`) ?? null;
      return found !== null && (await found.count()) > 0;
    },
    patience: session.patience,
  });
  return found!;
}

export async function openTheSheet(session: Session): Promise<void> {
  const { page, patience, shoot } = session;
  await step('the boat file opens', () => openInExplorer(page, sampleName, patience));
  await step('a button over the text opens the sheet beside it', async () => {
    const button = page.locator('.editor-actions [aria-label^="Open trim sheet"]').first();
    await until({
      what: 'the panel of the sheet',
      act: () => button.click(),
      seen: async () => (await sheetPage(session)) !== null,
      patience,
      again: patience / 2,
    });
    const drawing = await picture(session, 'surfaced-side');
    expect(await drawing.getAttribute('aria-label')).toMatch(/surfaced/i);
    await shoot('opened');
  });
}
