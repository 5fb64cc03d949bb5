import { describe, expect, it } from 'vitest';
import { findInside } from '../../client/findInside.ts';
import type { Address } from '../../client/isBelow.ts';

const at = (path: string): Address => ({ scheme: 'file', authority: '', path });
const links: Readonly<Record<string, string>> = {
  '/boats/away.stl': '/secret/away.stl',
  '/boats/within.stl': '/boats/forms/hull.stl',
  '/boats/linked': '/secret',
  '/berth': '/boats',
};

/** The path with the first link on its way taken, again and again. */
function followed(path: string): string {
  const link = Object.keys(links).find(from => path === from || path.startsWith(`${from}/`));
  return link === undefined ? path : followed(links[link]! + path.slice(link.length));
}

const below = (folder: Address, steps: readonly string[]): Address => at([folder.path, ...steps].join('/'));
const isLink = async ({ path }: Address): Promise<boolean> => path in links;
const onDisk = { follow: async ({ path }: Address) => at(followed(path)), isLink, below };
const inBrowser = { follow: null, isLink, below };

describe('a file is found in the folder of the boat', () => {
  it.each([
    ['/boats/hull.stl', '/boats/hull.stl', '/boats/hull.stl'],
    ['/boats/forms/hull.stl', '/boats/forms/hull.stl', '/boats/forms/hull.stl'],
    ['/boats/../secret/away.stl', null, null],
    ['/secret/away.stl', null, null],
    ['/boats/away.stl', null, null],
    ['/boats/linked/away.stl', null, null],
    // Only where the system tells where a link leads is one taken that stays inside.
    ['/boats/within.stl', '/boats/forms/hull.stl', null],
  ])('%s', async (path, disk, browser) => {
    expect((await findInside(at(path), at('/boats'), onDisk))?.path ?? null).toBe(disk);
    expect((await findInside(at(path), at('/boats'), inBrowser))?.path ?? null).toBe(browser);
  });

  it('by a folder that is a link itself', async () => {
    expect(await findInside(at('/berth/hull.stl'), at('/berth'), onDisk)).toEqual(at('/boats/hull.stl'));
    expect(await findInside(at('/berth/hull.stl'), at('/berth'), inBrowser)).toEqual(at('/berth/hull.stl'));
  });
});
