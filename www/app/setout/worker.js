/**
 * What searches, off the page's thread: for a place, and for an operator of a list.
 */

import { createTurns } from "../operators/turns.js";
import { createSearches } from "./searches.js";

const RANKING = { rank: true, look: true, taken: true };
const turns = createTurns((answer) => postMessage(answer));
const searches = createSearches((answer) => postMessage(answer));

addEventListener("message", ({ data }) => {
  const both = data.kind === "stop";
  if (both || data.kind in RANKING) turns.take(data);
  if (both || !(data.kind in RANKING)) searches.take(data);
});
