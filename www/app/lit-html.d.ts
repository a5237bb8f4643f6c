/**
 * As much of lit-html's types as the page uses; the build lays the script beside. https://lit.dev, BSD-3-Clause.
 */

export type Template = { readonly _$litType$: 1 | 2 | 3 };
export function html(strings: TemplateStringsArray, ...values: unknown[]): Template;
export function svg(strings: TemplateStringsArray, ...values: unknown[]): Template;
export function render(value: unknown, container: HTMLElement | DocumentFragment): object;
export const nothing: symbol;
