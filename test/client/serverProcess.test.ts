import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { SERVER_PROCESS } from '../../client/serverProcess.ts';

const { execArgv, env } = SERVER_PROCESS;

// One that Node did not know would keep the server from starting.
test.each(execArgv)('Node knows %s', flag => {
  const { status, stderr } = spawnSync(process.execPath, [flag, '-e', '0'], { encoding: 'utf8' });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
});

test('and heeds it', () => {
  const made = 'const keep = []; for (let i = 0; i < 4e6; i++) keep[i % 1e5] = { i };';
  const told =
    'process.stdout.write(String(v8.getHeapSpaceStatistics().find(s => s.space_name === "new_space").space_size))';
  const sizeWith = (...flags: readonly string[]): number =>
    Number(spawnSync(process.execPath, [...flags, '-e', `${made} ${told}`], { encoding: 'utf8' }).stdout);
  expect(sizeWith(...execArgv)).toBeLessThan(sizeWith());
});

// The C library of Linux alone knows it.
test.runIf(process.platform === 'linux' && 'glibcVersionRuntime' in header())(
  'lists that are done with go back',
  () => {
    const made = `
    let held = []; const kept = [];
    for (let i = 0; i < 360; i++) {
      held.push(new Float64Array(1e5).fill(1));
      if (i % 10 === 0) kept.push(new Float64Array(2e4).fill(1));
      if (i % 60 === 59) { held = []; gc(); }
    }
    process.stdout.write(String(kept.length && process.memoryUsage.rss()))`;
    const restingWith = (more: NodeJS.ProcessEnv): number =>
      Number(
        spawnSync(process.execPath, ['--expose-gc', '-e', made], {
          encoding: 'utf8',
          env: { ...process.env, ...more },
        }).stdout,
      );
    expect(restingWith(env)).toBeLessThan(0.8 * restingWith({}));
  },
);

function header(): object {
  const report: { readonly header?: object } = process.report.getReport();
  return report.header ?? {};
}
