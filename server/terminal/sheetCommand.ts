import type { Analysis, BoatService, Paper, PictureId } from '../service/service.ts';
import { attempted, ERRORS_FOUND, OK, type World, WRONG_USE } from './world.ts';

interface Served {
  readonly service: BoatService;
  readonly world: World;
}

interface SheetOptions {
  readonly output: string | null;
  readonly overwrite: boolean;
  readonly paper: Paper;
  readonly svg: PictureId | null;
  readonly appendix: boolean;
}

/** Writes the sheet, or one drawing of it, to a file or to the output; to a file that ends so, as a PDF. */
export function sheetCommand(
  file: string,
  analysis: Analysis,
  options: SheetOptions,
  { service, world }: Served,
): number {
  const { output, overwrite, paper, svg, appendix } = options;
  const fileName = file === '-' ? null : file.replace(/^.*[/\\]/, '');
  const text =
    svg === null ? service.printedSheet(analysis, { paper, fileName, appendix }).all() : service.drawing(analysis, svg);
  if (text === null) {
    world.err(`There is no ${svg} to draw for this boat as it is: see its report.\n`);
    return ERRORS_FOUND;
  }
  if (output === null || output === '-') world.document(text);
  else {
    const isPdf = svg === null && /\.pdf$/i.test(output);
    const write = (): void =>
      world.writeOutput(output, () => (isPdf ? world.pdfOf(text) : text), { from: file, overwrite });
    if (isPdf) world.progress(`${output}: printing …`);
    const isWritten = attempted(output, world, write);
    world.progress(null);
    if (!isWritten) return WRONG_USE;
    world.err(`${output}: written.\n`);
  }
  return service.hasErrors(analysis) ? ERRORS_FOUND : OK;
}

/** Takes the boat file out of a page that was made of it, under its own name beside no other unless told. */
export function unpackCommand(
  page: string,
  { output, overwrite }: Pick<SheetOptions, 'output' | 'overwrite'>,
  { service, world }: Served,
): number {
  let html = '';
  if (!attempted(page, world, () => (html = world.readPage(page)))) return WRONG_USE;
  const file = service.fileIn(html);
  if (!file) {
    world.err(
      `${page}: there is no boat file in this page. It has to be a trim sheet as “trimwright sheet” writes it.\n`,
    );
    return ERRORS_FOUND;
  }
  if (output === '-') {
    world.document(file.text);
    return OK;
  }
  const target = output ?? file.name;
  if (!attempted(target, world, () => world.writeOutput(target, () => file.text, { from: page, overwrite })))
    return WRONG_USE;
  world.err(`${target}: written.\n`);
  return OK;
}
