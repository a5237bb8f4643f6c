/**
 * The step in view stands in the page's address (`?step=place`), so that a reload stays there and the browser's own way back goes a step back.
 *
 * @import { PintleCalculator } from "./pintle-calculator.js"
 */

/** @param {PintleCalculator} calculator */
export function keepStep(calculator) {
  const asked = () => new URLSearchParams(location.search).get("step");
  const shown = () => calculator.getAttribute("step");
  const first = asked();
  if (first) calculator.setAttribute("step", first);
  new MutationObserver(() => {
    if (shown() === asked()) return;
    const address = new URL(location.href);
    address.searchParams.set("step", shown() ?? "");
    history.pushState(history.state, "", address);
  }).observe(calculator, { attributeFilter: ["step"] });
  addEventListener("popstate", () => {
    // The first address has none.
    calculator.setAttribute("step", asked() ?? "survey");
  });
}
