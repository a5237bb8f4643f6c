/**
 * Mark out: how the axis is found, every mark from the two lines, lengths and limits, and what was built instead.
 *
 * @import { CreateStep } from "./index.js"
 */

import { h } from "../dom.js";
import { groupsOf } from "../groups.js";
import { createMarks } from "../setout/marks.js";
import { createMarksPage } from "../setout/marks-page.js";
import { createFindings } from "./findings.js";
import { createGroups, form, together } from "./groups.js";

/** @type {CreateStep} */
export function create({ sheet, signal }) {
  const marks = createMarks(sheet);
  const page = createMarksPage(sheet, signal);
  const groups = createGroups(sheet, groupsOf("mark_out"));
  const findings = createFindings(sheet, ["as_built"]);
  return together(h("div", {}, findings.root, marks.root, page.root, form(groups.root)), [findings, marks, page, groups]);
}
