/**
 * Processor time of the quickest of some rounds, in seconds: what else runs on the machine does not count.
 * @param rounds how often it is tried
 */
export function quickest(work, rounds) {
  let best = Infinity;
  for (let i = 0; i < rounds; i++) {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    best = Math.min(best, (user + system) / 1e6);
  }
  return best;
}
