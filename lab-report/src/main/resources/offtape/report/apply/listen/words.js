/** The share of lucky rounds below which a round is taken for heard; common practice, no source. */
const RARE = 0.05;

/** A share as a percentage in words that do not round to nothing. */
function percent(share) {
  const value = 100 * share;
  if (value < 0.001) {
    return 'less than 0.001 %';
  }
  return `${Number(value.toPrecision(value > 99 ? 4 : 3))} %`;
}

/** What was reached, and how often luck alone does as well. */
function scoreWords(right, trials) {
  const { ways, of, chance } = chanceOf(right, trials);
  const exact = trials <= 20 ? ` (${ways} of ${of} ways to guess)` : '';
  return `${right} of ${trials} right. Who only guesses gets ${right} or more right in ${percent(chance)} of such rounds${exact}.`;
}

/** What that means. */
function verdictWords(right, trials) {
  const { chance } = chanceOf(right, trials);
  if (chance <= RARE) {
    return (
      'You heard a difference, as far as one round can say: luck alone seldom does so well. ' +
      'What the difference is, and whether it matters, this does not say.'
    );
  }
  const low =
    chanceOf(trials - right, trials).chance <= RARE
      ? ' So few right answers are rare too: perhaps you told the two apart and named them the wrong way round. Play another round.'
      : '';
  return (
    'This could have been luck. It does not prove that there is no difference: ' +
    'one that is small, or sits in other music, may still be heard.' +
    low
  );
}

/** All rounds that count together, or nothing if there is only one. */
function togetherWords(rounds, trials) {
  const counting = rounds.filter((round) => round.counts && round.answers.length === trials);
  if (counting.length < 2) {
    return '';
  }
  const right = counting.reduce((sum, round) => sum + rightOf(round), 0);
  const all = counting.length * trials;
  return (
    `This was round ${counting.length}. The more rounds, the likelier a lucky one among them, so none may be left out. ` +
    `All together: ${right} of ${all} right; guessing gets that or more in ${percent(chanceOf(right, all).chance)} of cases.`
  );
}

/** What is said before a round. */
function beforeWords(trials, counts) {
  if (!counts) {
    return `Practice: ${trials} trials, and after each you are told whether you were right. It does not count.`;
  }
  const needed = fewestRight(trials, RARE);
  return (
    `${trials} trials, decided on beforehand. Results come after the last one only: to stop as soon as it looks good ` +
    `would make luck look like hearing. ${needed} right are needed to say more than luck. ` +
    'Listen to A and B as long as you like before you begin.'
  );
}
