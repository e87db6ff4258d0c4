// Where a path of the job leads once a list in it was shifted, or a name in it is another one.

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
