/**
 * Whether two documents are one job. A file or a link of a job that is kept here brings that job, and no second one of its name.
 */

/** What a text says however it is written: keys in order, nothing for null. @param {unknown} value */
function plain(value) {
  return JSON.stringify(value ?? {}, (_, inner) =>
    inner && typeof inner === "object" && !Array.isArray(inner)
      ? Object.fromEntries(Object.keys(inner).filter((key) => inner[key] !== null).sort().map((key) => [key, inner[key]]))
      : inner,
  );
}

const NOTHING = plain({});

/** The numbers and words of the job. The name apart: a second one of that name got a name of its own. @param {any} document */
const values = ({ title: _, entry: __, record: ___, ...job }) => plain(job);
/** What a link does not carry: what was measured, and the texts as typed. @param {any} document */
const beside = ({ record, entry }) => [plain(record), plain(entry?.typed)];

/** @param {any} kept @param {any} given */
export function sameJob(kept, given) {
  return values(kept) === values(given);
}

/** Whether one of two documents of a job has all that the other has. @param {any} one @param {any} other */
export function covers(one, other) {
  const [here, there] = [beside(one), beside(other)];
  return there.every((text, place) => text === NOTHING || text === here[place]);
}
