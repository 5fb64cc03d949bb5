/** Runs the tests and prints what of each room they run through: `npm run coverage`. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { roomOf, type Tally, tallied } from './rooms.ts';

interface Summary {
  readonly lines: Tally;
  readonly branches: Tally;
  readonly functions: Tally;
}

spawnSync('npx', ['vitest', 'run', '--coverage'], { stdio: 'inherit', shell: true });
const summary = JSON.parse(readFileSync('.cache/coverage/coverage-summary.json', 'utf8')) as Readonly<
  Record<string, Summary>
>;
const { total, ...files } = summary;
const byRoom = new Map<string, Summary[]>();
for (const [file, counts] of Object.entries(files)) {
  const room = roomOf(relative('.', file));
  byRoom.set(room, [...(byRoom.get(room) ?? []), counts]);
}
const share = (tallies: readonly Tally[]): string => {
  const { covered, total: all } = tallied(tallies);
  return all === 0 ? '–' : `${((100 * covered) / all).toFixed(0)} %`;
};
const row = (room: string, parts: readonly Summary[]): string =>
  [
    room.padEnd(34),
    String(parts.length).padStart(5),
    ...(['lines', 'branches', 'functions'] as const).map(of => share(parts.map(part => part[of])).padStart(10)),
  ].join('');

console.log(['room'.padEnd(34), 'files', '     lines', '  branches', ' functions'].join(''));
for (const [room, parts] of [...byRoom].sort(([a], [b]) => a.localeCompare(b))) console.log(row(room, parts));
if (total) console.log(row('all of them', Object.values(files)));
