/** Registers the list of jobs under its usual name. A host that does not import this has no storage and no user interface for it. */

import { PintleJobs } from "./pintle-jobs.js";

if (!customElements.get("pintle-jobs")) customElements.define("pintle-jobs", PintleJobs);

export { PintleJobs };
