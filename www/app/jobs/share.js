/**
 * The link of the job on show, and the same as a QR code: made when it is asked for, and again when the job has changed.
 *
 * @import { Strings } from "../strings.js"
 */

import { h, setText, svg } from "../dom.js";

/**
 * @param {Strings} strings
 * @param {() => { link: string, code: { side: number, path: string } | null } | null} make null while there is no core yet
 */
export function createShare(strings, make) {
  const link = h("input", { class: "job-link", readonly: true, "aria-label": strings.say("jobs.link"), onfocus: () => link.select() });
  const copy = h("button", { type: "button", class: "move", onclick: () => copied() }, strings.say("jobs.copy"));
  const send = h("button", { type: "button", class: "move", hidden: !navigator.share, onclick: () => sent() }, strings.say("jobs.send"));
  const said = h("p", { class: "note", role: "status" });
  const path = svg("path", { fill: "#000" });
  const code = svg("svg", { class: "qr", role: "img", "aria-label": strings.say("jobs.code") }, svg("rect", { width: "100%", height: "100%", fill: "#fff" }), path);
  const long = h("p", { class: "note" }, strings.say("jobs.no_code"));
  const root = h(
    "details",
    { class: "job-share", ontoggle: () => update() },
    h("summary", {}, strings.say("jobs.share")),
    h("p", { class: "note" }, strings.say("jobs.share_note")),
    h("div", { class: "job-tools" }, link, copy, send),
    said,
    code,
    long,
  );

  async function copied() {
    try {
      await navigator.clipboard.writeText(link.value);
      setText(said, strings.say("jobs.copied"));
    } catch (error) {
      // Forbidden here: the person copies it by hand.
      console.warn("pintle-jobs", error);
      link.focus();
      setText(said, strings.say("jobs.copy_by_hand"));
    }
  }

  function sent() {
    navigator.share({ url: link.value }).catch((error) => {
      if (error.name !== "AbortError") copied();
    });
  }

  function update() {
    const made = root.open ? make() : null;
    if (!made || made.link === link.value) return;
    link.value = made.link;
    setText(said, "");
    code.toggleAttribute("hidden", !made.code);
    long.hidden = made.code !== null;
    if (!made.code) return;
    code.setAttribute("viewBox", `0 0 ${made.code.side} ${made.code.side}`);
    path.setAttribute("d", made.code.path);
  }

  return { root, update };
}
