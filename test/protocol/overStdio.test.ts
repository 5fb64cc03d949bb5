import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { setImmediate } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { projectRoot } from '../../client/launch/install.mjs';
import { HeededReader } from '../../server/overStdio.ts';

const framed = (body: string): string => `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
const message = (of: object): string => framed(JSON.stringify({ jsonrpc: '2.0', ...of }));
const hello = message({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });

/** A server of its own that is sent one thing after the other, each when the one before is answered; then its input ends. */
async function served(...sent: readonly string[]) {
  const server = spawn(process.execPath, [join(projectRoot, 'dist/server.cjs'), '--stdio']);
  const said = { out: '', err: '' };
  server.stdout.on('data', data => {
    said.out += data;
  });
  server.stderr.on('data', data => {
    said.err += data;
  });
  const ended = new Promise<number | null>(resolve => server.on('exit', resolve));
  server.stdin.on('error', () => {});
  for (const each of sent) {
    const before = said.out;
    server.stdin.write(each);
    if (/"id":\d/.test(each)) await expect.poll(() => said.out, { timeout: 10_000 }).not.toBe(before);
  }
  return { said, ended, end: () => server.stdin.end() };
}

test.each([
  ['a key without a colon', 'Content-Length 17\r\n\r\n{"jsonrpc":"2.0"}'],
  ['no length', 'Content-Type: text\r\n\r\n{}'],
  ['a length that is no number', 'Content-Length: many\r\n\r\n{}'],
])('after a header with %s the server ends, and says why', async (_, broken) => {
  const { said, ended } = await served(hello, broken);
  expect(await ended).toBe(1);
  expect(said.err).toBe(
    'What came over standard input has no header of the language server protocol. The server ends.\n',
  );
});

test('a body that is no JSON is passed over', async () => {
  const { said, ended, end } = await served(hello, framed('{"jsonrpc":'), message({ id: 2, method: 'shutdown' }));
  expect(said.out).toContain('"id":2');
  end();
  expect(await ended).toBe(0);
});

test.each([undefined, null, {}, [], 7, { id: null }])('a cancellation of nothing, %j, is passed over', async params => {
  const nothing = message({ method: '$/cancelRequest', ...(params === undefined ? {} : { params }) });
  const { said, ended, end } = await served(hello, nothing, message({ id: 2, method: 'shutdown' }));
  expect(said.out).toContain('"id":2');
  end();
  expect(await ended).toBe(0);
});

test('a message that never comes to its end is given up, one that is no JSON and one that comes in pieces are not', async () => {
  const stream = new PassThrough();
  let now = 0;
  let lost = 0;
  const heard: unknown[] = [];
  new HeededReader(stream, { now: () => now, lost: () => (lost += 1) }).listen(each => heard.push(each));
  const sent = async (text: string, after: number): Promise<void> => {
    now += after;
    stream.write(text);
    await setImmediate();
  };
  await sent(framed('{"jsonrpc":'), 0);
  const whole = message({ method: 'x' });
  await sent(whole.slice(0, 30), 100_000);
  await sent(whole.slice(30), 50_000);
  await sent(message({ method: 'y' }), 100_000);
  expect([lost, heard.length]).toEqual([0, 2]);
  await sent(`Content-Length: 99999999999\r\n\r\n{}`, 0);
  await sent(message({ method: 'z' }), 30_000);
  expect(lost).toBe(0);
  await sent(message({ method: 'z' }), 40_000);
  expect([lost, heard.length]).toEqual([1, 2]);
});

test('started by hand it says what it is', async () => {
  const server = spawn(process.execPath, [join(projectRoot, 'dist/server.cjs')]);
  let said = '';
  server.stderr.on('data', data => {
    said += data;
  });
  expect(await new Promise(resolve => server.on('exit', resolve))).toBe(2);
  expect(said).toBe('This is the language server, for an editor to start: trimwright serve\n');
});

test('where the editor dies without a word, so does the server', async () => {
  const { ended, end } = await served(hello);
  end();
  expect(await ended).toBe(1);
});
