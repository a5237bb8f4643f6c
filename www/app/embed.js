/**
 * A distributor's own script: listens to the calculator and keeps the basket in step. Demonstration only.
 */

const calculator = /** @type {import("./pintle-calculator.js").PintleCalculator} */ (document.querySelector("pintle-calculator"));
const chosen = /** @type {HTMLElement} */ (document.querySelector("#basket-name"));
const empty = chosen.textContent;

/** @param {string} selector */
function all(selector) {
  return /** @type {HTMLElement[]} */ ([...document.querySelectorAll(selector)]);
}

/** What the shop calls a subject of the verdict. @param {string} about */
function named(about) {
  return document.querySelector(`#subjects [data-subject="${about}"]`)?.textContent ?? about;
}

function fillBasket() {
  const { operator, plan } = calculator;
  chosen.textContent = operator?.name ?? empty;
  // The whole of what was judged, never the torque alone, and never without saying what that is.
  const { state, about, judged } = plan?.overall ?? { state: "none", about: "none", judged: [] };
  for (const place of all("[data-judged]")) place.textContent = judged.map(named).join(", ");
  for (const place of all("[data-worst]")) place.textContent = named(about);
  for (const sentence of all("[data-verdict]")) sentence.hidden = operator === null || sentence.dataset.verdict !== state;
}

calculator.addEventListener("pintle-plan", fillBasket);
customElements
  .whenDefined("pintle-calculator")
  .then(() => calculator.ready)
  .then(fillBasket);
