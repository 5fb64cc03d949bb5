import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { SERVER_FLAGS } from '../../client/serverProcess.ts';

// One that Node did not know would keep the server from starting.
test.each(SERVER_FLAGS)('Node knows %s', flag => {
  const { status, stderr } = spawnSync(process.execPath, [flag, '-e', '0'], { encoding: 'utf8' });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
});

test('and heeds it', () => {
  const made = 'const keep = []; for (let i = 0; i < 4e6; i++) keep[i % 1e5] = { i };';
  const told =
    'process.stdout.write(String(v8.getHeapSpaceStatistics().find(s => s.space_name === "new_space").space_size))';
  const sizeWith = (...flags: readonly string[]): number =>
    Number(spawnSync(process.execPath, [...flags, '-e', `${made} ${told}`], { encoding: 'utf8' }).stdout);
  expect(sizeWith(...SERVER_FLAGS)).toBeLessThan(sizeWith());
});
