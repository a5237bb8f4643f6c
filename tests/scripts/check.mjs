/**
 * Holds the page's scripts to a tool that knows nothing of this page, after proof that it sees what it is there for. Run by `cargo xtask
 * test scripts`, which installs both:
 *
 *     node check.mjs FOLDER-OF-THE-TOOLS types|lints
 */

import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { join } from "node:path";

const [tools, what] = process.argv.slice(2);
const here = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));

/** @param {string} name @param {string[]} given @returns {{ passed: boolean, said: string }} */
function tool(name, ...given) {
  const script = join(tools, "node_modules", name === "tsc" ? "typescript" : name, "bin", name);
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [script, ...given], { encoding: "utf8" });
  if (error) throw error;
  return { passed: status === 0, said: stdout + stderr };
}

const types = (/** @type {string} */ project) => tool("tsc", "--pretty", "false", "--project", here(project));
const lints = (/** @type {string[]} */ ...places) => tool("oxlint", "--config", here("oxlintrc.json"), "--deny-warnings", "--no-ignore", ...places.map(here));

/** What is run, and words of the faults it has to find in what is faulty. */
const CHECKS = {
  types: { faulty: () => types("tsconfig.faulty.json"), sees: ["TS2367", "TS2339"], runs: [() => types("tsconfig.json"), () => types("tsconfig.worker.json"), kept] },
  lints: { faulty: () => lints("faulty/lints.js"), sees: ["eqeqeq", "no-unused-vars", "no-warning-comments"], runs: [() => lints("../../www", "../markup", "check.mjs", "units")] },
};

/** What the task runner keeps of a package is the package's own, letter by letter. */
function kept() {
  const text = (/** @type {string} */ path) => readFileSync(path, "utf8");
  const same = text(here("../../xtask/vendor/lit-html/lit-html.js")) === text(join(tools, "node_modules/lit-html/lit-html.js"));
  return { passed: same, said: same ? "" : "xtask/vendor/lit-html/lit-html.js is not what its package has" };
}

const { faulty, sees, runs } = CHECKS[/** @type {keyof typeof CHECKS} */ (what)];
const proof = faulty();
const results = runs.map((run) => run());
const blind = sees.filter((word) => !proof.said.includes(word));
for (const word of blind) console.log(`the check passes what is wrong: no ${word} in\n${proof.said}`);
for (const { said } of results) console.log(said);
process.exitCode = blind.length === 0 && !proof.passed && results.every(({ passed }) => passed) ? 0 : 1;
