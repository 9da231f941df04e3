/** One of two by the browser's source of secrets. */
function drawn() {
  return (crypto.getRandomValues(new Uint8Array(1))[0] & 1) === 0 ? 'A' : 'B';
}

/**
 * The course of a test: rounds of so many trials each. What X is in the trial under way is known here
 * only and is not in what is kept, so a reload draws it anew; a settled answer stays.
 *
 * @param {number} trials a round has
 * @param {boolean} counts false while practising
 * @param {object[]} kept rounds from before
 */
function makeTest(trials, counts, kept) {
  let rounds = kept;
  let hidden = null;

  const last = () => rounds[rounds.length - 1];
  const isOpen = (round) => round !== undefined && round.answers.length < trials;

  if (isOpen(last())) {
    hidden = drawn();
  }
  return {
    rounds: () => rounds,
    isUnderWay: () => isOpen(last()),
    /** Number of the trial under way, from 1. */
    trial: () => last().answers.length + 1,
    /** Begins another round. */
    begin() {
      rounds = [...rounds, { counts, answers: [] }];
      hidden = drawn();
    },
    /** The sound that X is now. */
    behind: (name) => (name === 'X' ? hidden : name),
    /** Settles the answer of the trial under way; tells it to whoever practises. */
    settle(answer) {
      const done = { x: hidden, answer, isRight: answer === hidden };
      const round = last();
      rounds = [...rounds.slice(0, -1), { ...round, answers: [...round.answers, done] }];
      hidden = isOpen(last()) ? drawn() : null;
      return done;
    },
    /** Begins from nothing, for another listener. */
    forget() {
      rounds = [];
      hidden = null;
    },
    /** Takes over what another window of this page has settled meanwhile; false if there is nothing. */
    follow(others) {
      const count = (all) => all.reduce((sum, round) => sum + 1 + round.answers.length, 0);
      if (count(others) <= count(rounds)) {
        return false;
      }
      rounds = others;
      hidden = isOpen(last()) ? drawn() : null;
      return true;
    },
  };
}

/** How many of a round's answers are right. */
function rightOf(round) {
  return round.answers.filter((answer) => answer.isRight).length;
}
