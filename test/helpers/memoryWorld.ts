import type { World } from '../../server/terminal/world.ts';

/** What the command line touches, in memory: its files, and what it wrote and said. */
export function memoryWorld(files: Readonly<Record<string, string>>, isTerminal = false) {
  const [out, err]: [string[], string[]] = [[], []];
  const shown: (string | null)[] = [];
  const written: Record<string, string> = {};
  const read = (name: string): string => {
    const text = files[name];
    if (text === undefined) throw new Error('there is no such file or folder');
    return text;
  };
  const world: World = {
    version: '1.2.3',
    readFile: read,
    readPage: read,
    rewriteFile: (name, was, now) => {
      if (files[name] !== was) throw new Error('it has been changed meanwhile');
      written[name] = now;
    },
    writeOutput: (name, content, { overwrite }) => {
      if (name in files && !overwrite) throw new Error('there is such a file already');
      const made = content();
      written[name] = typeof made === 'string' ? made : new TextDecoder().decode(made);
    },
    // What a browser would make of it.
    pdfOf: html => new TextEncoder().encode(`%PDF of ${html}`),
    readBeside: () => null,
    readPoolsideFiles: () => ({ page: '<p>{{boat}}</p>', worker: '', licences: '' }),
    out: text => out.push(text),
    document: text => out.push(text),
    err: text => err.push(text),
    progress: text => shown.push(text),
    isTerminal,
  };
  return { world, written, shown, said: () => ({ out: out.join(''), err: err.join('') }) };
}
