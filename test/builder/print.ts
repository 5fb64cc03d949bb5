import { writeFileSync } from 'node:fs';
import { type Case, caseOf } from './cases.ts';
import { diagnosisOf, measureLines } from './tally.ts';

/*
 * The measure of the whole job: npm run measure -- --boats 60 --seed 1
 * --seed N     the first boat's seed; the others follow
 * --tries N    in the water at most, 6 unless given
 * --wide       also with limits twice as wide
 * --only-wide  only with those
 * --quick      without the calibration of figures and what could be had, which take about a fifth of the time
 * --diagnose   a line for each boat and each of its tries
 * --files DIR  writes the file of each boat as it stood in the end, to look at
 * --write      writes the table to test/builder/MEASURE.md, which `npm run accuracy` puts into test/ACCURACY.md
 */
const given = (name: string): boolean => process.argv.includes(`--${name}`);
const numberAfter = (name: string, usual: number): number => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? usual : Number(process.argv[at + 1]);
};

const boats = numberAfter('boats', 60);
const first = numberAfter('seed', 1);
const began = performance.now();
const casesWith = (isWide: boolean): readonly Case[] =>
  Array.from({ length: boats }, (_, i) => {
    const bounds = !given('quick');
    const made = caseOf(first + i, {
      isWide,
      mostTries: numberAfter('tries', 6),
      calibrates: bounds && !isWide,
      bounds,
    });
    if (given('diagnose')) console.log(diagnosisOf(made).join('\n'));
    if (given('files')) {
      const folder = process.argv[process.argv.indexOf('--files') + 1]!;
      writeFileSync(`${folder}/${made.boat.seed}.boat.yaml`, made.story.text);
    }
    return made;
  });
const narrow = given('only-wide') ? [] : casesWith(false);
const wide = given('wide') || given('only-wide') ? casesWith(true) : [];
const lines = measureLines(narrow, wide);
console.log(lines.join('\n'));
console.log(`${((performance.now() - began) / 1e3 / (narrow.length + wide.length)).toFixed(1)} s a boat`);
if (given('write')) writeFileSync('test/builder/MEASURE.md', lines.join('\n'));
