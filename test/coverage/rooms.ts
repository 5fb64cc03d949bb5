export interface Tally {
  readonly total: number;
  readonly covered: number;
}

export const tallied = (tallies: readonly Tally[]): Tally => ({
  total: tallies.reduce((sum, { total }) => sum + total, 0),
  covered: tallies.reduce((sum, { covered }) => sum + covered, 0),
});

/** The room that a file is in, as `DEVELOPERS.md` lists them: a folder, below `server/core` the one in it. */
export function roomOf(file: string): string {
  const folders = file.split(/[\\/]/).slice(0, -1);
  return folders.slice(0, folders[1] === 'core' ? 3 : 2).join('/');
}
