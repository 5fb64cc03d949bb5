/** Elements of the page, made in one line each. */
type Props = Readonly<Record<string, string | boolean | null>>;

/** An element with attributes (null and false are left out, true is an empty one) and what is in it. */
export function h<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  props: Props,
  ...inside: readonly (Node | string | null)[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(props))
    if (value !== null && value !== false) element.setAttribute(name, value === true ? '' : value);
  element.append(...inside.filter(each => each !== null));
  return element;
}

/** A button that a wet finger hits. */
export function button(words: string, act: () => void, props: Props = {}): HTMLButtonElement {
  const made = h('button', { type: 'button', ...props }, words);
  made.addEventListener('click', act);
  return made;
}

/** Two or more buttons of which one is pressed, named by what they say. */
export function choice<T extends string>(
  name: string,
  options: readonly (readonly [value: T, words: string])[],
  chosen: T | null,
  choose: (value: T) => void,
): HTMLElement {
  const buttons = options.map(([value, words]) =>
    button(words, () => choose(value), { 'aria-pressed': String(value === chosen), 'data-focus': `${name} ${value}` }),
  );
  return h('div', { class: 'choice', role: 'group', 'aria-label': name }, ...buttons);
}

/** Fills an element anew; what had the focus in it has it again, and what was unfolded is. */
export function refill(host: HTMLElement, ...inside: readonly (Node | null)[]): void {
  const focus = host.contains(document.activeElement) ? document.activeElement?.getAttribute('data-focus') : null;
  const unfolded = [...host.querySelectorAll('details[open] > summary')].map(({ textContent }) => textContent);
  host.replaceChildren(...inside.filter(each => each !== null));
  for (const details of host.querySelectorAll('details'))
    details.open = unfolded.includes(details.querySelector('summary')?.textContent ?? '');
  const focused = [...host.querySelectorAll<HTMLElement>('[data-focus]')].find(each => each.dataset.focus === focus);
  if (focus) focused?.focus();
}

export const paragraphs = (lines: readonly string[], kind = ''): readonly HTMLElement[] =>
  lines.map(line => h('p', kind === '' ? {} : { class: kind }, line));
