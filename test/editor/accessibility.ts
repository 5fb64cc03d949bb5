/** An accessibility checker from outside, axe-core, run on a page as it is shown. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Frame, Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What the checker finds, in a line each. */
export async function violationsIn(page: Page | Frame): Promise<readonly string[]> {
  await page.evaluate(axe);
  const results: AxeResults = await page.evaluate(`axe.run(document, { resultTypes: ['violations'] })`);
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html, any }) => `${id}: ${help}: ${any[0]?.message ?? ''} ${html.slice(0, 120)}`),
  );
}
