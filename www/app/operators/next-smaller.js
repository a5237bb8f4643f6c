/**
 * What would make the next smaller operator do.
 *
 * @import { Sheet } from "../sheet.js"
 * @import { Ranked } from "./look.js"
 */

import { html, nothing } from "../lit-html.js";
import { operatorName } from "./list.js";

/** @param {Sheet} sheet @param {Ranked | null} ranked */
export function smaller(sheet, ranked) {
  const next = ranked?.whole ? ranked.next : null;
  const operator = next && next.suggestions.length > 0 ? sheet.list.operators.find(({ id }) => id === next.id) : undefined;
  if (!next || !operator) return nothing;
  const lines = next.suggestions.map(({ kind, values, reserve }) => {
    const sentence = sheet.say(`ranking.suggestions.${kind}`, sheet.shown(values));
    return reserve === null ? sentence : `${sentence} ${sheet.say("ranking.labels.then", { reserve: sheet.show(reserve, "ratio") })}`;
  });
  return html`<section class="next-smaller"><h3>${sheet.say("ranking.labels.next_smaller")}</h3><p>${operatorName(sheet, operator)}</p><ul>${lines.map((line) => html`<li>${line}</li>`)}</ul></section>`;
}
