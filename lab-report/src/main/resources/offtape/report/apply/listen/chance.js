/**
 * How likely somebody who only guesses gets so many right, or more: the upper tail of the binomial
 * distribution with one half, in whole numbers.
 *
 * @param {number} right 0 to trials
 * @param {number} trials 0 or more
 * @returns {{ways: bigint, of: bigint, chance: number}} so many of all ways to guess, and their share
 */
function chanceOf(right, trials) {
  let choose = 1n;
  let ways = 0n;
  // from all right downwards: n over k equals n over n − k
  for (let wrong = 0; wrong <= trials - right; wrong += 1) {
    ways += choose;
    choose = (choose * BigInt(trials - wrong)) / BigInt(wrong + 1);
  }
  const of = 1n << BigInt(trials);
  return { ways, of, chance: Number(ways) / Number(of) };
}

/** The fewest right answers that guessing reaches in no more than this share of rounds, or null. */
function fewestRight(trials, share) {
  for (let right = 0; right <= trials; right += 1) {
    if (chanceOf(right, trials).chance <= share) {
      return right;
    }
  }
  return null;
}
