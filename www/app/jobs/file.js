/**
 * Jobs as files: saved by the browser's picker, else handed to another program, else downloaded; opened by picker or drop.
 */

/** No job comes near this many bytes; what is larger is not read at all. */
const MOST_BYTES = 1_000_000;

/**
 * Saves a document the best way the browser has.
 *
 * @param {any} document
 * @param {string} title
 * @returns {Promise<"saved" | "shared" | "downloaded" | "given_up">}
 */
export async function saveFile(document, title) {
  const text = JSON.stringify(document, null, 1);
  const name = `${title.replace(/[^\p{L}\p{N} ._-]+/gu, "").trim().slice(0, 60) || "pintle"}.json`;
  try {
    if ("showSaveFilePicker" in window) {
      const types = [{ accept: { "application/json": [".json"] } }];
      const handle = await /** @type {any} */ (window).showSaveFilePicker({ suggestedName: name, types });
      const stream = await handle.createWritable();
      await stream.write(text);
      await stream.close();
      return "saved";
    }
    // Many systems hand on texts, and no JSON.
    const files = [new File([text], name, { type: "application/json" })];
    const texts = [new File([text], `${name}.txt`, { type: "text/plain" })];
    const sent = [files, texts].find((some) => navigator.canShare?.({ files: some }));
    if (sent) {
      await navigator.share({ files: sent, title });
      return "shared";
    }
  } catch (error) {
    if (/** @type {DOMException} */ (error).name === "AbortError") return "given_up";
    // A host's frame may forbid either: a download is left.
    console.warn("pintle-jobs", error);
  }
  download(text, name);
  return "downloaded";
}

/** @param {string} text @param {string} name */
function download(text, name) {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = Object.assign(document.createElement("a"), { href: address, download: name });
  link.click();
  // The browser takes the content when it gets to it.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/**
 * The job of a file, in this version's schema. Throws `Invalid` where it is none.
 *
 * @param {import("../core.js").Core} core
 * @param {File} file
 */
export async function readFile(core, file) {
  if (file.size > MOST_BYTES) throw notJson(file.name);
  let document;
  try {
    document = JSON.parse(await file.text());
  } catch {
    throw notJson(file.name);
  }
  return core.open_job(document);
}

/** @param {string} found */
function notJson(found) {
  return { errors: [{ path: "", code: "not_json", found, allowed: null, example: null, values: [] }] };
}

/**
 * Takes files that are dropped anywhere on the page.
 *
 * @param {(file: File) => void} take
 * @param {AbortSignal} signal
 */
export function watchDrops(take, signal) {
  const files = (/** @type {DragEvent} */ event) => event.dataTransfer?.types.includes("Files") ?? false;
  document.addEventListener("dragover", (event) => files(event) && event.preventDefault(), { signal });
  document.addEventListener(
    "drop",
    (event) => {
      if (!files(event)) return;
      event.preventDefault();
      const file = event.dataTransfer?.files[0];
      if (file) take(file);
    },
    { signal },
  );
}
