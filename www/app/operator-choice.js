/**
 * The operator: one of the host's list, each with its own verdict for this leaf, or ratings typed in.
 *
 * @import { Part, Sheet } from "./sheet.js"
 * @import { ListedOperator } from "./operators.js"
 */

import { h, setText } from "./dom.js";
import { createField } from "./field.js";
import { RATINGS } from "./groups.js";
import { verdictMark } from "./verdict-mark.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createOperatorChoice(sheet) {
  const { session, list } = sheet;
  const rows = list.operators.map((operator) => createRow(sheet, operator, choose));
  const typed = h("input", { type: "radio", name: "operator", value: "", onchange: () => choose(null) });
  const ratings = RATINGS.map((path) => createField(sheet, path));
  const fields = h("div", { class: "fields" }, ...ratings.map((field) => field.root));
  const refused = list.refused.length ? sheet.say("operator.refused", { paths: list.refused.join(", ") }) : "";

  const root = h(
    "fieldset",
    { class: "operators", part: "operators" },
    h("legend", {}, sheet.say("operator.title")),
    list.title ? h("p", { class: "note" }, list.title) : null,
    refused ? h("p", { class: "error" }, refused) : null,
    ...rows.map((row) => row.root),
    h("label", { class: "option" }, typed, h("span", {}, sheet.say("operator.typed"))),
    fields,
  );

  /** @param {string | null} id */
  function choose(id) {
    session.operatorId = id;
    sheet.changed();
  }

  function update() {
    for (const row of rows) row.update();
    typed.checked = session.operator === null;
    fields.hidden = session.operator !== null;
    if (!fields.hidden) for (const field of ratings) field.update();
  }

  update();
  return { root, update };
}

/**
 * @param {Sheet} sheet
 * @param {ListedOperator} operator
 * @param {(id: string) => void} choose
 * @returns {Part}
 */
function createRow(sheet, operator, choose) {
  const radio = h("input", { type: "radio", name: "operator", value: operator.id, onchange: () => choose(operator.id) });
  const torque = h("span", { class: "quantity" });
  const verdict = h("span", { class: "row-verdict" });
  const root = h(
    "label",
    { class: "option operator", part: "operator" },
    radio,
    h("span", { class: "operator-name" }, operator.name, ", ", torque),
    verdict,
  );
  let drawn = "";

  function update() {
    radio.checked = sheet.session.operatorId === operator.id;
    setText(torque, sheet.show(operator.rated_torque_n_m, "torque"));
    const rating = sheet.stale ? null : sheet.ratings.get(operator.id);
    const word = rating ? shortVerdict(sheet, rating) : "";
    if (word === drawn) return;
    drawn = word;
    verdict.replaceChildren(...(rating ? [verdictMark(rating.verdict), word] : []));
  }

  return { root, update };
}

/** @param {Sheet} sheet @param {import("./contract.d.ts").Rating} rating */
function shortVerdict(sheet, { verdict, reserve }) {
  if (reserve === null) return sheet.say("verdict.no_demand_short");
  return sheet.say(`verdict.${verdict}.short`, { reserve: sheet.show(reserve, "ratio") });
}
