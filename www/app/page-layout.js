/**
 * The layout and the units of last time; a layout in the address (`?layout=projector`) stands before it. The page's own head and foot
 * follow the element's layout by `data-layout`.
 *
 * @import { PintleCalculator } from "./pintle-calculator.js"
 */

const STORE = "pintle-shown";
/** @type {("layout" | "units")[]} */
const KEPT = ["layout", "units"];

/** @param {PintleCalculator} calculator */
export function keepLayout(calculator) {
  const asked = new URLSearchParams(location.search).get("layout");
  /** @type {{ layout?: unknown, units?: unknown }} */
  const kept = { ...remembered(), ...(asked ? { layout: asked } : {}) };
  for (const name of KEPT) {
    const value = kept[name];
    if (typeof value === "string" && !calculator.hasAttribute(name)) calculator.setAttribute(name, value);
  }
  const follow = () => {
    const layout = calculator.getAttribute("layout") ?? "";
    document.documentElement.dataset.layout = layout;
    document.querySelector("pintle-jobs")?.setAttribute("layout", layout);
  };
  new MutationObserver(() => {
    follow();
    remember(Object.fromEntries(KEPT.map((name) => [name, calculator.getAttribute(name)])));
  }).observe(calculator, { attributeFilter: KEPT });
  follow();
}

/** Storage may be denied; then they last as long as the page. @returns {Record<string, unknown>} */
function remembered() {
  try {
    return JSON.parse(localStorage.getItem(STORE) ?? "{}");
  } catch {
    return {};
  }
}

/** @param {Record<string, unknown>} shown */
function remember(shown) {
  try {
    localStorage.setItem(STORE, JSON.stringify(shown));
  } catch {
    // Nothing is lost but the choice.
  }
}
