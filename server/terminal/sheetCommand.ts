import type { Analysis } from '../core/analysis/analysis.ts';
import { fileIn } from '../core/drawing/print/fileInside.ts';
import type { Paper } from '../core/drawing/print/printStyle.ts';
import { sheetDocument } from '../core/drawing/print/sheetDocument.ts';
import { standaloneSvg } from '../core/drawing/standaloneSvg.ts';
import { type PictureId, trimSheet } from '../core/drawing/trimSheet.ts';
import { attempted, ERRORS_FOUND, hasErrors, OK, type World, WRONG_USE } from '../editor/world.ts';

interface SheetOptions {
  readonly output: string | null;
  readonly overwrite: boolean;
  readonly paper: Paper;
  readonly svg: PictureId | null;
  readonly appendix: boolean;
}

/** Writes the sheet, or one drawing of it, to a file or to the output; to a file that ends so, as a PDF. */
export function sheetCommand(file: string, analysis: Analysis, options: SheetOptions, world: World): number {
  const { output, overwrite, paper, svg, appendix } = options;
  const correction = analysis.corrections.all()[0] ?? null;
  const [picture] = svg === null ? [] : trimSheet(analysis, { only: [svg], correction }).pictures;
  if (svg !== null && !picture) {
    world.err(`There is no ${svg} to draw for this boat as it is: see its report.\n`);
    return ERRORS_FOUND;
  }
  const fileName = file === '-' ? null : file.replace(/^.*[/\\]/, '');
  const text = picture ? standaloneSvg(picture) : sheetDocument(analysis, { paper, fileName, appendix });
  if (output === null || output === '-') world.out(text);
  else {
    const isPdf = !picture && /\.pdf$/i.test(output);
    const write = (): void => world.writeOutput(output, isPdf ? world.pdfOf(text) : text, { from: file, overwrite });
    if (isPdf) world.progress(`${output}: printing …`);
    const isWritten = attempted(output, world, write);
    world.progress(null);
    if (!isWritten) return WRONG_USE;
    world.err(`${output}: written.\n`);
  }
  return hasErrors(analysis) ? ERRORS_FOUND : OK;
}

/** Takes the boat file out of a page that was made of it, under its own name beside no other unless told. */
export function unpackCommand(
  page: string,
  { output, overwrite }: Pick<SheetOptions, 'output' | 'overwrite'>,
  world: World,
): number {
  let html = '';
  if (!attempted(page, world, () => (html = world.readFile(page)))) return WRONG_USE;
  const file = fileIn(html);
  if (!file) {
    world.err(
      `${page}: there is no boat file in this page. It has to be a trim sheet as “trimwright sheet” writes it.\n`,
    );
    return ERRORS_FOUND;
  }
  if (output === '-') {
    world.out(file.text);
    return OK;
  }
  const target = output ?? file.name;
  if (!attempted(target, world, () => world.writeOutput(target, file.text, { from: page, overwrite })))
    return WRONG_USE;
  world.err(`${target}: written.\n`);
  return OK;
}
