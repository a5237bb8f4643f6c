/**
 * Validates the page's HTML by html-validate (the HTML standard's content models, ARIA) and its CSS by css-tree (CSS syntax, every
 * declaration against the properties' grammars). Run by `cargo xtask test markup`, which installs both:
 *
 *     node check.mjs FOLDER-OF-THE-VALIDATORS FOLDER-OF-THE-PAGE
 */

import { readFileSync, readdirSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

const [tools, page] = process.argv.slice(2);
const require = createRequire(join(tools, "package.json"));
const { HtmlValidate } = require("html-validate");
const { parse, walk, lexer, generate } = require("css-tree");

/** The house writes void elements and the doctype as the standard's examples do. */
const RULES = { "doctype-style": "off", "void-style": ["error", { style: "omit" }], "no-inline-style": "error", "require-sri": "off", "long-title": "off" };

async function htmlFaults(name) {
  const validator = new HtmlValidate({ extends: ["html-validate:standard", "html-validate:a11y"], elements: ["html5"], rules: RULES });
  const { results } = await validator.validateFile(join(page, name));
  return results.flatMap(({ messages }) => messages).map(({ line, column, ruleId, message }) => `${name}:${line}:${column}: ${message} (${ruleId})`);
}

function cssFaults(name) {
  const faults = [];
  const tell = (node, message) => faults.push(`${name}:${node.loc?.start.line ?? "?"}: ${message}`);
  const tree = parse(readFileSync(join(page, name), "utf8"), {
    positions: true,
    onParseError: (error) => faults.push(`${name}:${error.line}: ${error.message}`),
  });
  let said = 0;
  walk(tree, (node) => {
    // A sheet may be made of others.
    if (node.type === "Atrule" && node.name === "import") said += 1;
    if (node.type !== "Declaration") return;
    said += 1;
    // What a variable stands for is known in the browser alone.
    if (node.property.startsWith("--") || /\b(var|env)\(/.test(generate(node.value))) return;
    const { error } = lexer.matchProperty(node.property, node.value);
    if (error) tell(node, `${node.property}: ${generate(node.value)}: ${error.message.split("\n")[0]}`);
  });
  if (said === 0) faults.push(`${name}: no declaration was found`);
  return faults;
}

/** Proof that the validators see what they are there for. */
async function seen() {
  const validator = new HtmlValidate({ extends: ["html-validate:standard"] });
  const { valid } = await validator.validateString("<!DOCTYPE html><html lang=en><body><ul><p>no item</p></ul></body></html>");
  const { error } = lexer.matchProperty("color", parse("12px", { context: "value" }));
  return valid || !error ? ["the validators pass what is wrong"] : [];
}

const styles = readdirSync(join(page, "style")).filter((name) => name.endsWith(".css"));
const sheets = [...styles.map((name) => `style/${name}`), ...readdirSync(page).filter((name) => name.endsWith(".css"))];
const pages = readdirSync(page).filter((name) => name.endsWith(".html"));
const faults = [...(await seen()), ...(await Promise.all(pages.map(htmlFaults))).flat(), ...sheets.flatMap(cssFaults)];
for (const fault of faults) console.log(fault);
console.log(`${pages.length} pages and ${sheets.length} style sheets, ${faults.length} faults`);
process.exitCode = faults.length ? 1 : 0;
