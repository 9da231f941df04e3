/** The share of lucky rounds below which a round is taken for heard; common practice, no source. */
const RARE = 0.05;

/**
 * A text in the language of the page; one that is told something has a place for each and a doubled
 * per cent sign for a single one.
 */
function said(key, ...told) {
  if (told.length === 0) {
    return TEXTS[key];
  }
  let next = 0;
  return TEXTS[key].replace(/%(?:(\d+)\$)?s|%%/g, (place, index) => {
    if (place === '%%') {
      return '%';
    }
    next += 1;
    return String(told[(index ?? next) - 1]);
  });
}

/** A number as the language of the page writes it. */
function number(text) {
  return String(text).replace('.', said('point'));
}

/** A share as a percentage in words that do not round to nothing. */
function percent(share) {
  const value = 100 * share;
  if (value < 0.001) {
    return said('percent-rare');
  }
  return said('percent', number(Number(value.toPrecision(value > 99 ? 4 : 3))));
}

/** What was reached, and how often luck alone does as well. */
function scoreWords(right, trials) {
  const { ways, of, chance } = chanceOf(right, trials);
  return trials <= 20
    ? said('score-exact', right, trials, right, percent(chance), ways, of)
    : said('score', right, trials, right, percent(chance));
}

/** What that means. */
function verdictWords(right, trials) {
  if (chanceOf(right, trials).chance <= RARE) {
    return said('verdict-heard');
  }
  // so few right answers may be two sounds told apart and named the wrong way round
  return said(chanceOf(trials - right, trials).chance <= RARE ? 'verdict-few' : 'verdict-luck');
}

/** All rounds that count together, or nothing if there is only one. */
function togetherWords(rounds, trials) {
  const counting = rounds.filter((round) => round.counts && round.answers.length === trials);
  if (counting.length < 2) {
    return '';
  }
  const right = counting.reduce((sum, round) => sum + rightOf(round), 0);
  const all = counting.length * trials;
  return said('together', counting.length, right, all, percent(chanceOf(right, all).chance));
}

/** What is said before a round. */
function beforeWords(trials, counts) {
  return counts ? said('before-test', trials, fewestRight(trials, RARE)) : said('before-practice', trials);
}
