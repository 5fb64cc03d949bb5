import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { PROBE } from '../helpers/probe.ts';

/** The command line as it is installed, in a process of its own. */
const folder = mkdtempSync(join(tmpdir(), 'boats-'));
const program = join(folder, 'trimwright.cjs');
const boat = join(folder, 'probe.boat.yaml');
beforeAll(async () => {
  await build({ entryPoints: ['server/cli.ts'], outfile: program, bundle: true, platform: 'node', format: 'cjs' });
  writeFileSync(boat, PROBE);
});
afterAll(() => rmSync(folder, { recursive: true }));

interface Run {
  readonly input?: string;
  /** Where the output goes instead. */
  readonly out?: number | 'closed';
}

async function run(args: readonly string[], { input = '', out }: Run = {}) {
  const child = spawn(process.execPath, [program, ...args], {
    stdio: ['pipe', typeof out === 'number' ? out : 'pipe', 'pipe'],
  });
  const [said, err]: [string[], string[]] = [[], []];
  child.stderr!.on('data', chunk => err.push(String(chunk)));
  if (out === 'closed') child.stdout!.destroy();
  else child.stdout?.on('data', chunk => said.push(String(chunk)));
  child.stdin!.on('error', () => {});
  child.stdin!.end(input);
  const [code] = await once(child, 'close');
  return { code, out: said.join(''), err: err.join('') };
}

describe('in a process of its own', () => {
  it('tells its version', async () => {
    expect(await run(['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' });
  });
  it('reads what is piped in', async () => {
    const piped = await run(['report', '-', '--json'], { input: PROBE });
    expect(piped).toEqual(await run(['report', boat, '--json']));
    expect(JSON.parse(piped.out).boat).toBeDefined();
  });
  it('does not wait for the end of what never ends', async () => {
    expect((await run(['check', '-'], { input: '#'.repeat(5e6) })).err).toMatch(/^-: this has more than 2 MB/);
  });
  it('ends quietly when nobody reads on', async () => {
    expect((await run(['report', boat], { out: 'closed' })).err).toBe('');
  });
  it('says when the output finds no room', async () => {
    const full = await run(['report', boat], { out: openSync('/dev/full', 'w') });
    expect(full).toMatchObject({ code: 2, err: 'The output could not be written: the disk is full.\n' });
  });
  it('says when the output finds room for a part of it', async () => {
    const limited = `ulimit -f 8; exec '${process.execPath}' '${program}' sheet '${boat}' > '${join(folder, 'cut.html')}'`;
    const child = spawn('sh', ['-c', limited], { stdio: ['ignore', 'ignore', 'pipe'] });
    const err: string[] = [];
    child.stderr.on('data', chunk => err.push(String(chunk)));
    expect(await once(child, 'close')).toEqual([2, null]);
    expect(err.join('')).toBe('The output could not be written: it becomes too large for the disk.\n');
  });
  it('puts a document out byte for byte', async () => {
    const odd = `${PROBE.replaceAll(/\n/g, '\r\n')}# \u0085\u202e\r\n`;
    const page = await run(['sheet', '-'], { input: odd });
    expect((await run(['unpack', '-', '-o', '-'], { input: page.out })).out).toBe(odd);
  });
  it.each([
    [['serve', '--version'], `${version}\n`],
    [['serve', '-h'], expect.stringContaining('trimwright serve')],
  ])('%j does not begin to serve', async (args, out) => {
    expect(await run(args)).toEqual({ code: 0, out, err: '' });
  });
  it.each([
    [['check', 'nowhere.boat.yaml'], /^nowhere.boat.yaml: there is no such file or folder\.\n$/],
    [['sheet', boat, '-o', join(folder, 'no', 'where.html')], /: there is no such file or folder\.\n$/],
    [['sheet', boat, '-o', boat], /: this is a boat file, and is left as it is\./],
    [['serve', boat], /^“serve” stands alone/],
    [['report', boat, '--water', 'sea', '--water', 'fresh'], /^“--water” is given twice\./],
    [['take', '-', '-'], /can be piped in, not both/],
    [['check', '/dev/zero'], /^\/dev\/zero: this is no file/],
  ])('%j fails in plain words', async (args, words) => {
    const { code, err } = await run(args);
    expect(code).toBe(2);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/\n\s+at |node:/);
  });
});
