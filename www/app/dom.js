/**
 * Elements by function call: the page has no template language, and text never passes through an HTML parser.
 */

const SVG = "http://www.w3.org/2000/svg";

/** @typedef {Record<string, string | number | boolean | null | undefined | ((event: any) => void)>} Attributes */
/** @typedef {Node | string | null} Child */

/**
 * @param {Element} element
 * @param {Attributes} attributes
 * @param {Child[]} children
 */
function furnish(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    if (typeof value === "function") element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? "" : String(value));
  }
  for (const child of children) if (child !== null) element.append(child);
}

/**
 * An HTML element. Attributes that are null, undefined or false are left out; `onname: function` listens to `name`.
 *
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {Attributes} [attributes]
 * @param {...Child} children
 * @returns {HTMLElementTagNameMap[Tag]}
 */
export function h(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  furnish(element, attributes, children);
  return element;
}

/**
 * An SVG element.
 *
 * @param {string} tag
 * @param {Attributes} [attributes]
 * @param {...Child} children
 * @returns {SVGElement}
 */
export function svg(tag, attributes = {}, ...children) {
  const element = /** @type {SVGElement} */ (document.createElementNS(SVG, tag));
  furnish(element, attributes, children);
  return element;
}

/**
 * Sets text only where it differs, so that assistive technology is not told of changes that are none.
 *
 * @param {Element} element
 * @param {string} text
 */
export function setText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/**
 * Sets an attribute, or takes it away for null.
 *
 * @param {Element} element
 * @param {string} name
 * @param {string | null} value
 */
export function setAttribute(element, name, value) {
  if (value === null) element.removeAttribute(name);
  else if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}
