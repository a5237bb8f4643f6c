/**
 * A distributor's own script: listens to the calculator and keeps the basket in step. Demonstration only.
 */

const calculator = /** @type {import("./pintle-calculator.js").PintleCalculator} */ (document.querySelector("pintle-calculator"));
const name = /** @type {HTMLElement} */ (document.querySelector("#basket-name"));
const empty = name.textContent;

function fillBasket() {
  const { operator, plan } = calculator;
  name.textContent = operator?.name ?? empty;
  // The whole of what was judged, never the torque alone.
  const { state, about } = plan?.overall ?? { state: "none", about: "torque" };
  const verdict = state === "over" && about !== "torque" ? "stop" : state;
  for (const sentence of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-verdict]"))) {
    sentence.hidden = operator === null || sentence.dataset.verdict !== verdict;
  }
}

calculator.addEventListener("pintle-plan", fillBasket);
customElements
  .whenDefined("pintle-calculator")
  .then(() => calculator.ready)
  .then(fillBasket);
