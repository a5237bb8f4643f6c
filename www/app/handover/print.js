/**
 * Prints the sheet and nothing else, wherever the element stands: for the time of printing the sheet is a child of the document's body, and
 * a style sheet of the document hides the rest. Both are constructed, so a host's policy need not allow inline style.
 */

/** Paper, mm. */
export const SIZES = /** @type {const} */ ({ a4: [210, 297], letter: [215.9, 279.4] });

/** @typedef {keyof typeof SIZES} Size */

/** @param {Size} size */
function documentStyle(size) {
  const [width, height] = SIZES[size];
  const style = new CSSStyleSheet();
  style.replaceSync(`
    @page { size: ${width}mm ${height}mm; margin: 0; }
    @media print {
      html, body { all: initial !important; display: block !important; }
      body > :not([data-pintle-paper]) { display: none !important; }
      body > [data-pintle-paper] { display: block !important; }
    }`);
  return style;
}

/**
 * From now on, until the signal ends it, whatever prints the document prints the sheet.
 *
 * @param {HTMLElement} paper
 * @param {() => Size} size
 * @param {AbortSignal} signal
 */
export function printInstead(paper, size, signal) {
  /** @type {(() => void) | null} */
  let back = null;

  function before() {
    back?.();
    const place = document.createComment("");
    const { transform } = paper.style;
    const style = documentStyle(size());
    paper.replaceWith(place);
    paper.style.transform = "";
    document.body.append(paper);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, style];
    back = () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== style);
      paper.style.transform = transform;
      place.replaceWith(paper);
      back = null;
    };
  }

  const after = () => back?.();
  addEventListener("beforeprint", before, { signal });
  addEventListener("afterprint", after, { signal });
  signal.addEventListener("abort", after);
}
