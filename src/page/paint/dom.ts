type Child = Node | string | number | false | null | undefined | readonly Child[];
type Value = string | number | boolean | undefined | ((event: Event) => void);

/**
 * Makes an element from attributes and contents. A function as attribute listens to the event of that name; `false` and
 * `undefined` attributes are left out. Text is never parsed as markup.
 */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, Value>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === 'function') element.addEventListener(name, value);
    else if (value !== undefined && value !== false) element.setAttribute(name, value === true ? '' : String(value));
  }
  append(element, children);
  return element;
}

function append(parent: Element, children: readonly Child[]): void {
  for (const child of children) {
    if (child === undefined || child === null || child === false) continue;
    if (typeof child === 'object' && !(child instanceof Node)) append(parent, child);
    else parent.append(child instanceof Node ? child : String(child));
  }
}

/** Makes an element from an SVG drawing of our own. */
export function drawing(svg: string): Element {
  return document.importNode(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement, true);
}

/** Finds an element that must exist. */
export function one<E extends Element>(within: ParentNode, selector: string): E {
  const found = within.querySelector<E>(selector);
  if (found === null) throw new Error(`no ${selector} in the page`);
  return found;
}

/** Makes a list from which one value is chosen. */
export function choice<V extends string | number>(
  name: string,
  options: readonly (readonly [value: V, words: string])[],
  chosen: (value: V) => void,
): { readonly label: HTMLLabelElement; show(value: V): void } {
  const select = el(
    'select',
    { change: () => chosen(options[select.selectedIndex]![0]) },
    options.map(([value, words]) => el('option', { value }, words)),
  );
  const label = el('label', {}, el('span', {}, name), select);
  return {
    label,
    show(value) {
      select.selectedIndex = options.findIndex(([each]) => each === value);
    },
  };
}

/** Makes a box to tick. */
export function tick(
  words: string,
  changed: (on: boolean) => void,
): { readonly label: HTMLLabelElement; show(on: boolean): void } {
  const box = el('input', { type: 'checkbox', change: () => changed(box.checked) });
  return {
    label: el('label', { class: 'ticked' }, box, el('span', {}, words)),
    show(on) {
      box.checked = on;
    },
  };
}

/** Makes a button with words on it. */
export function button(
  words: string,
  pressed: () => void,
  more: Readonly<Record<string, Value>> = {},
): HTMLButtonElement {
  return el('button', { type: 'button', click: pressed, ...more }, words);
}

/** The program that wrote this page, with its version: `shedlight 0.1.0`. */
export function writtenBy(): string {
  return one<HTMLMetaElement>(document, 'meta[name="generator"]').content;
}
