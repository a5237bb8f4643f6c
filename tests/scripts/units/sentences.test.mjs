/** Sentences: values, plural forms, decimal marks (CLDR: a comma in Spanish of Spain, a point in that of Mexico), lists. */

import { equal } from "node:assert/strict";
import { test } from "node:test";

import { nearestLanguage, nearestTag, Strings } from "../../../www/app/strings.js";

const TABLE = { form: { understood: "= {understood}", parts: { one: "{count} part", other: "{count} parts" }, half: "0{decimal}5 of {what}" } };

test("values stand where they are named; what nobody gives stays to be seen", () => {
  const strings = new Strings(TABLE, "en");
  equal(strings.say("form.understood", { understood: "3 m" }), "= 3 m");
  equal(strings.say("form.understood"), "= {understood}");
  equal(strings.say("form.none"), "form.none");
  equal(strings.say("form"), "form", "a group is no sentence");
  equal(strings.say("form.half", { what: "{understood}" }), "0.5 of {understood}", "a value is not read again");
});

test("a count chooses its form", () => {
  const strings = new Strings(TABLE, "en");
  equal(strings.say("form.parts", { count: 1 }), "1 part");
  equal(strings.say("form.parts", { count: 2 }), "2 parts");
  equal(strings.say("form.parts", { count: 0 }), "0 parts");
});

test("the region writes the decimal mark, and only between digits", () => {
  for (const [tag, text] of [["en", "1.25 m. 3"], ["es", "1,25 m. 3"], ["es-ES", "1,25 m. 3"], ["es-MX", "1.25 m. 3"], ["es_MX", "1,25 m. 3"], ["de", "1,25 m. 3"]]) {
    equal(new Strings(TABLE, tag).numbers("1.25 m. 3"), text, tag);
  }
  equal(new Strings(TABLE, "es").numbers("1.2.3"), "1,2,3");
  equal(new Strings(TABLE, "es").at("drawing.decimal"), ",");
});

test("a list is joined as its language does", () => {
  equal(new Strings(TABLE, "en").list(["a", "b", "c"]), "a, b, and c");
  equal(new Strings(TABLE, "es").list(["a", "b", "c"]), "a, b y c");
  equal(new Strings(TABLE, "es").list(["a"]), "a");
});

test("a language without a table falls back to the first", () => {
  equal(nearestTag("es-MX"), "es-MX");
  for (const none of ["fr", "", null, undefined]) equal(nearestTag(none), "en");
  equal(nearestLanguage("ES-mx"), "es");
});
