/**
 * Long work a little at a time, so that whoever shares the thread gets a turn.
 */

/** Milliseconds of a turn. */
const TURN_MS = 16;

/**
 * Works until nothing is left or nobody wants it any more.
 *
 * @param {() => boolean} step `true` while there is work left
 * @param {() => boolean} wanted
 * @param {(left: boolean) => void} [turned] after each turn
 * @returns {Promise<boolean>} whether it came to its end and still is wanted
 */
export async function inTurns(step, wanted, turned = () => {}) {
  for (let left = true; left; ) {
    const end = performance.now() + TURN_MS;
    do left = step();
    while (left && performance.now() < end);
    turned(left);
    if (left) await pause();
    if (!wanted()) return false;
  }
  return true;
}

/** Lets messages in. @returns {Promise<void>} */
export function pause() {
  return new Promise((resolve) => setTimeout(resolve, 0));
}
