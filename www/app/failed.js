import { fileAt } from "./files.js";

/**
 * Something the calculator is made of did not come. A host is told by the event `pintle-failed`, from the element it is about, and may
 * tell the person itself (`preventDefault()`); else the element says it, with a way to try again.
 *
 * Imports nothing but names: it is there for the day when something cannot be had.
 *
 * @param {Element} element
 * @param {unknown} error
 * @param {() => unknown} retry asks for it once more
 */
export function tellFailed(element, error, retry) {
  console.error(`${element.localName}: something could not be loaded`, error);
  const event = new CustomEvent("pintle-failed", { detail: { error, retry }, bubbles: true, composed: true, cancelable: true });
  if (element.dispatchEvent(event)) say(element, retry);
}

/** @param {Element} element @param {() => unknown} retry */
async function say(element, retry) {
  const words = await anyWords(element.closest("[lang]")?.getAttribute("lang") ?? "");
  // Without a table there are no words: what the host wrote between the tags stands.
  if (!words) return;
  const text = document.createElement("p");
  text.textContent = words.not_loaded;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = words.again;
  const said = document.createElement("div");
  said.setAttribute("role", "alert");
  said.dataset.failed = "";
  button.addEventListener("click", () => {
    said.remove();
    retry();
  });
  said.append(text, button);
  // Inside, once there is an inside; there it goes when the calculator stands.
  const place = element.shadowRoot ?? element;
  for (const before of place.querySelectorAll(":scope > [data-failed]")) before.remove();
  place.append(said);
}

/** The words of the language wanted, or of any that can be had. @param {string} wanted @returns {Promise<{ not_loaded: string, again: string } | null>} */
async function anyWords(wanted) {
  const languages = wanted.toLowerCase().startsWith("es") ? ["es", "en"] : ["en", "es"];
  for (const language of languages) {
    try {
      const response = await fetch(fileAt(`strings/${language}.json`));
      if (response.ok) return (await response.json()).page;
    } catch {
      // The next one, if any.
    }
  }
  return null;
}
