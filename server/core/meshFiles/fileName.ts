/** A file's name to look it up by, or why it is none. */
export type FileName = { readonly ok: true; readonly name: string } | { readonly ok: false; readonly message: string };

/**
 * The name of a mesh file as the boat file gives it, from the boat file's folder: either slash parts folders. Places that
 * no folder of the boat can hold, and names that end like no mesh, are refused.
 */
export function normalName(written: string): FileName {
  const name = written.trim().replaceAll('\\', '/');
  if (/^(?:\/|[a-z]:|[a-z][\w+.-]*:\/\/)/i.test(name) || name.startsWith('~')) {
    return {
      ok: false,
      message: `“${written}” is a place on one computer. Copy the file beside the boat file and give its name alone, such as “file: hull.stl”.`,
    };
  }
  if (!/\.(?:stl|3mf)$/i.test(name)) {
    return {
      ok: false,
      message: `Expected an STL or 3MF file, such as “hull.stl”, but this says “${written}”. Export the form from the drawing program as one of them.`,
    };
  }
  const steps: string[] = [];
  for (const step of name.split('/')) {
    if (step === '' || step === '.') continue;
    if (step === '..' && steps.length > 0 && steps.at(-1) !== '..') steps.pop();
    else steps.push(step);
  }
  return { ok: true, name: steps.join('/') };
}
