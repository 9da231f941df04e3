/**
 * Rounds kept by the browser over a reload, as far as it lets a page of a file keep anything. What
 * comes back is checked: it may have been altered.
 *
 * @param {string} key
 * @param {number} trials a round has
 */
function makeMemory(key, trials) {
  let works = true;
  const isName = (text) => text === 'A' || text === 'B';
  const isAnswer = (a) => a && isName(a.x) && isName(a.answer) && a.isRight === (a.x === a.answer);
  const isRound = (r) =>
    r && typeof r.counts === 'boolean' && Array.isArray(r.answers) && r.answers.length <= trials && r.answers.every(isAnswer);

  return {
    works: () => works,
    read() {
      try {
        const rounds = JSON.parse(localStorage.getItem(key) ?? '[]');
        return Array.isArray(rounds) && rounds.every(isRound) ? rounds : [];
      } catch {
        works = false;
        return [];
      }
    },
    write(rounds) {
      try {
        localStorage.setItem(key, JSON.stringify(rounds));
      } catch {
        works = false;
      }
    },
  };
}
