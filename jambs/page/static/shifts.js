// Where a path of the job leads once a list in it was shifted, or a name in it is another one: by a change of this window, or
// of another, which says no more than how the job is now.

const STEPS = {
  remove: (step, at) => step === at ? null : isAfter(step, at) ? step - 1 : step,
  copy: (step, at) => isAfter(step, at) ? step + 1 : step,
  insert: (step, at) => typeof step === "number" && step >= at ? step + 1 : step,
  move: (step, at, { to }) => {
    if (typeof step !== "number") return step;
    if (step === at) return to;
    const left = step > at ? step - 1 : step;
    return left >= to ? left + 1 : left;
  },
  rename: (step, at, { name }) => step === at ? name : step,
};

const isAfter = (step, at) => typeof step === "number" && step > at;

/** Return what leads from a path as it was to the path as it is after a change; to null where what it was of is gone. */
export function mover(asked) {
  const isInsert = asked.act === "insert", list = isInsert ? asked.path : asked.path.slice(0, -1);
  const at = isInsert ? asked.at : asked.path.at(-1), step = STEPS[asked.act];
  return (path) => {
    if (!step || path.length <= list.length || list.some((one, n) => one !== path[n])) return path;
    const next = step(path[list.length], at, asked);
    return next === null ? null : [...list, next, ...path.slice(list.length + 1)];
  };
}

/** Return what leads from a path as it was to the path as it is in a record that somebody else changed; to null where what it was of is gone. */
export function between(before, after) {
  const led = new Map();
  compare(before, after, led);
  return (path) => {
    const now = [];
    for (const step of path) {
      const steps = led.get(JSON.stringify(path.slice(0, now.length)));
      const next = steps ? steps.get(step) : step;
      if (next === null) return null;
      now.push(next ?? step);
    }
    return now;
  };
}

/** Note under the path of each list that was shifted where its places have gone. */
function compare(before, after, led) {
  const isList = before.some((one) => typeof one.path?.at(-1) === "number");
  const pairs = isList ? paired(before, after) : before.map((one) => [one, after.find((each) => nameOf(each) === nameOf(one))]);
  if (isList) led.set(JSON.stringify(before[0].path.slice(0, -1)), new Map(pairs.map(([was, is]) => [was.path.at(-1), is ? is.path.at(-1) : null])));
  for (const [was, is] of pairs) if (is) compare(was.groups || [], is.groups || [], led);
}

const nameOf = (one) => JSON.stringify(one.path ?? one.key);
const contentOf = (one) => JSON.stringify([one.title, (one.fields || []).map(({ key, value }) => [key, value]), (one.groups || []).map(contentOf)]);

/** What is the same in both, then what is called the same; what is left was changed where it stands, if as many are left. */
function paired(before, after) {
  const found = new Map(), free = new Set(after);
  const take = (was, is) => { found.set(was, is); free.delete(is); };
  for (const same of [contentOf, (one) => one.title]) {
    for (const was of before.filter((one) => !found.has(one))) {
      const is = [...free].find((one) => same(one) === same(was));
      if (is) take(was, is);
    }
  }
  const left = before.filter((one) => !found.has(one)), rest = [...free];
  if (left.length === rest.length) left.forEach((was, at) => take(was, rest[at]));
  return before.map((was) => [was, found.get(was)]);
}
