import { readFileSync, writeFileSync } from 'node:fs';
import { allSections } from './allSections.ts';
import { evaluate } from './check.ts';
import { accuracyTable } from './table.ts';

// `npm run accuracy`: prints the table and writes it down.
const sections = evaluate(await allSections());
const table = accuracyTable(sections, readFileSync('test/builder/MEASURE.md', 'utf8'));
writeFileSync('test/ACCURACY.md', table);
console.log(table);
for (const { checks, outcomes } of sections) {
  checks.forEach((check, i) => {
    if (outcomes[i]!.passes) return;
    console.error(`Out of tolerance: ${check.what} (${check.source})`);
    process.exitCode = 1;
  });
}
