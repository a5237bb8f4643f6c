/**
 * A distributor's own script: listens to the calculator and keeps the basket in step. Demonstration only.
 */

const calculator = /** @type {import("./pintle-calculator.js").PintleCalculator} */ (document.querySelector("pintle-calculator"));
const chosen = /** @type {HTMLElement} */ (document.querySelector("#basket-name"));
const empty = chosen.textContent;

function fillBasket() {
  const { operator, plan, errors } = calculator;
  chosen.textContent = operator?.name ?? empty;
  // The whole of what was judged, never the torque alone.
  const { state, about } = plan?.overall ?? { state: "none", about: "torque" };
  const stopped = state === "over" && about !== "torque" ? "stop" : state;
  // A part that is begun is not counted yet: nothing is green meanwhile.
  const verdict = stopped === "within" && errors.length > 0 ? "none" : stopped;
  for (const sentence of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-verdict]"))) {
    sentence.hidden = operator === null || sentence.dataset.verdict !== verdict;
  }
}

calculator.addEventListener("pintle-plan", fillBasket);
customElements
  .whenDefined("pintle-calculator")
  .then(() => calculator.ready)
  .then(fillBasket);
