import type { Path } from '../../../../schema/path.ts';
import { contentEnd, type TextSplice } from '../reading/layout.ts';
import type { Span } from '../reading/lines.ts';
import { locate } from '../reading/locate.ts';
import { isAlias, isMapNode, isScalar, isSeq, type ScalarNode, visit } from '../reading/nodes.ts';
import { doubleQuoted, textScalar } from '../reading/quoteScalar.ts';
import type { Syntax } from '../reading/syntax.ts';
import { follow, spanOf } from '../reading/tree.ts';

/** The characters of the scalar at a path, an alias as the alias; null where none is written. */
export function scalarSpan(syntax: Syntax, path: Path): Span | null {
  const found = locate(syntax, path);
  return found && isScalar(found.node) ? found.value : null;
}

/**
 * The edits that give the scalars at some paths a new text, each in its own style of quotes. A scalar that several of
 * them share through an alias is written once; what shares it and is not among the paths keeps its old text. Null where
 * one of the paths holds no scalar.
 */
export function rewriteScalars(syntax: Syntax, paths: readonly Path[], text: string): readonly TextSplice[] | null {
  const { root, aliases, readText } = syntax;
  const written = paths.map(path => locate(syntax, path)?.written ?? null);
  const scalars = new Set(written.filter(node => isScalar(node)));
  const splices = new Map<number, TextSplice>();
  const put = (span: Span, piece: string): void =>
    void splices.set(span[0], { start: span[0], end: span[1], text: piece });
  for (const node of written) {
    const span = spanOf(node);
    const scalar = follow(node, aliases);
    if (!span || !isScalar(scalar)) return null;
    const isFlow = isInBrackets(syntax, span[0]);
    if (isScalar(node)) put([span[0], contentEnd(readText, node, span[1])], inStyleOf(node, text, isFlow));
    else if (!scalars.has(scalar)) put(span, textScalar(text, isFlow));
  }
  const wanted = new Set<unknown>(written);
  visit(root, {
    node: alias => {
      const scalar = isAlias(alias) ? aliases.get(alias) : null;
      const span = spanOf(alias);
      if (!wanted.has(alias) && span && isScalar(scalar) && scalars.has(scalar))
        put(span, asItWas(scalar, isInBrackets(syntax, span[0])));
      return true;
    },
  });
  return [...splices.values()].sort((a, b) => a.start - b.start);
}

function inStyleOf({ style }: ScalarNode, text: string, isFlow: boolean): string {
  if (style === 'QUOTE_DOUBLE') return doubleQuoted(text);
  return style === 'QUOTE_SINGLE' ? `'${text.replaceAll("'", "''")}'` : textScalar(text, isFlow);
}

const asItWas = ({ value, source }: ScalarNode, isFlow: boolean): string =>
  typeof value === 'string' ? textScalar(value, isFlow) : source;

function isInBrackets({ root }: Syntax, offset: number): boolean {
  let isInside = false;
  visit(root, {
    node: node => {
      if (offset < node.start || offset >= node.end) return false;
      isInside ||= (isMapNode(node) || isSeq(node)) && node.flow;
      return !isInside;
    },
  });
  return isInside;
}
