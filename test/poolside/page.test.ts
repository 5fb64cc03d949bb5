import { createHash } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import { bundlePoolside } from '../../client/poolside/bundle.mjs';
import { poolsidePage } from '../../server/editor/poolsidePage.ts';
import { runCommandLine } from '../../server/terminal/commandLine.ts';
import { memoryWorld } from '../helpers/memoryWorld.ts';
import { PROBE } from '../helpers/probe.ts';

let built = '';
const FILES = { worker: 'onmessage = null; // </script>\n//# sourceMappingURL=worker.js.map\n', licences: '<a@b.c>' };
beforeAll(async () => {
  ({ page: built } = await bundlePoolside());
});

const BOAT = { name: '</script><b>$& $1', text: '<!-- </script> -->', meshes: [], view: { words: '</style>' } };
const between = (page: string, start: string, end: string) =>
  page.slice(page.indexOf(start) + start.length).split(end)[0]!;
const hashOf = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

describe('the page as built', () => {
  it('runs and shows only what its policy names by hash, and lets nothing in or out', () => {
    const policy = between(built, 'Content-Security-Policy" content="', '"').split('; ');
    expect(policy).toEqual([
      "default-src 'none'",
      `script-src ${hashOf(between(built, '\n<script>', '</script>\n</body>'))}`,
      `style-src ${hashOf(between(built, '<style>', '</style>'))}`,
      'worker-src blob:',
      "connect-src 'none'",
      "base-uri 'none'",
      "form-action 'none'",
    ]);
  });
  it('is one file that fetches nothing, with room for a boat below 2 MB', () => {
    // The worker, which the test of the package looks into, has 1.1 MB.
    expect(built.length).toBeLessThan(0.2e6);
    expect(built).not.toMatch(/<link|<img|<iframe|\ssrc=|\shref=|@import|https?:(?!\/\/www\.w3\.org\/)/i);
    expect(built).not.toMatch(/\b(?:fetch|XMLHttpRequest|WebSocket|EventSource|importScripts|sendBeacon)\s*\(/);
  });
  it('ends no script early', () => {
    expect(built.match(/<\/script>/g)).toHaveLength(4);
    expect(built).not.toContain('<!--');
  });
});

describe('a boat in the page', () => {
  it('is there as it was given, with worker and licences, and nothing of them is markup', () => {
    const page = poolsidePage({ page: built, ...FILES }, BOAT);
    const data = (id: string): unknown => JSON.parse(between(page, `id="${id}">`, '</script>'));
    expect(data('boat')).toEqual(BOAT);
    expect(data('worker')).toBe('onmessage = null; // </script>\n');
    expect(data('licences')).toBe(FILES.licences);
    expect(page.match(/<\/script>/g)).toHaveLength(4);
    expect(page.replace(/(?<=id="(\w+)">).*(?=<\/script>)/g, '{{$1}}')).toBe(built);
  });
});

describe('trimwright poolside', () => {
  const run = (...args: readonly string[]) => {
    const { world, written, said } = memoryWorld({ 'a.boat.yaml': PROBE });
    return { code: runCommandLine(['poolside', 'a.boat.yaml', ...args], world), written, ...said() };
  };
  it('writes the page with the boat in it', () => {
    const { code, written, err } = run('-o', 'a.html');
    expect(code).toBe(0);
    expect(err).toMatch(/^a\.html: written\. /);
    const [, boat] = /^<p>(.*)<\/p>$/.exec(written['a.html']!)!;
    expect(JSON.parse(boat!)).toMatchObject({ text: PROBE, meshes: [], view: { isSettled: true } });
  });
  it('puts it out where no file is named', () => {
    expect(run().out).toMatch(/^<p>\{/);
  });
});
