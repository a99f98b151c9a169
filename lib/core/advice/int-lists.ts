const FIRST_SLOTS = 64;
const FIRST_ARENA = 1024;
/** Block sizes are powers of two from 2^1: most features of a club belong to one or two cases. */
const SMALLEST_CLASS = 1;
const CLASSES = 31;
const NONE = -1;

/** Many growable lists of 32-bit integers in one typed array; a list's block doubles, and outgrown blocks are reused. */
export interface IntLists {
  /** Makes an empty list and returns its number, counting from 0. */
  create(): number;
  length(list: number): number;
  /** Where the list's items begin in `items()`; void after any push. */
  start(list: number): number;
  /** The array that all lists lie in; void after any push. */
  items(): Int32Array;
  push(list: number, value: number): void;
  /** Makes room for so many items at once, which saves the smaller blocks on the way there. */
  reserve(list: number, capacity: number): void;
  /** Shortens the list. */
  truncate(list: number, length: number): void;
  bytes(): number;
}

function grown(old: Int32Array, length: number): Int32Array<ArrayBuffer> {
  const wider = new Int32Array(length);
  wider.set(old);
  return wider;
}

export function createIntLists(): IntLists {
  let arena = new Int32Array(FIRST_ARENA);
  let arenaUsed = 0;
  let starts = new Int32Array(FIRST_SLOTS);
  let lengths = new Int32Array(FIRST_SLOTS);
  let capacities = new Int32Array(FIRST_SLOTS);
  let lists = 0;
  /** First free block of each size; each free block holds the next one's start. */
  const free = new Int32Array(CLASSES).fill(NONE);

  const classOf = (capacity: number) => 31 - Math.clz32(capacity);

  function takeBlock(capacity: number): number {
    const size = classOf(capacity);
    const head = free[size] ?? NONE;
    if (head !== NONE) {
      free[size] = arena[head] ?? NONE;
      return head;
    }
    if (arenaUsed + capacity > arena.length)
      arena = grown(arena, Math.max(arenaUsed + capacity, Math.ceil(arena.length * 1.5)));
    arenaUsed += capacity;
    return arenaUsed - capacity;
  }

  function giveBlock(start: number, capacity: number): void {
    if (capacity === 0) return;
    const size = classOf(capacity);
    arena[start] = free[size] ?? NONE;
    free[size] = start;
  }

  function widen(list: number, wanted: number): void {
    const oldCapacity = capacities[list] ?? 0;
    const oldStart = starts[list] ?? 0;
    const capacity = 1 << Math.max(SMALLEST_CLASS, 32 - Math.clz32(wanted - 1));
    const start = takeBlock(capacity);
    arena.copyWithin(start, oldStart, oldStart + (lengths[list] ?? 0));
    giveBlock(oldStart, oldCapacity);
    starts[list] = start;
    capacities[list] = capacity;
  }

  return {
    create() {
      if (lists === starts.length) {
        starts = grown(starts, lists * 2);
        lengths = grown(lengths, lists * 2);
        capacities = grown(capacities, lists * 2);
      }
      return lists++;
    },
    length: (list) => lengths[list] ?? 0,
    start: (list) => starts[list] ?? 0,
    items: () => arena,
    push(list, value) {
      const length = lengths[list] ?? 0;
      if (length === capacities[list]) widen(list, length + 1);
      arena[(starts[list] ?? 0) + length] = value;
      lengths[list] = length + 1;
    },
    reserve(list, capacity) {
      if (capacity > (capacities[list] ?? 0)) widen(list, capacity);
    },
    truncate(list, length) {
      lengths[list] = length;
    },
    bytes: () => arena.byteLength + starts.byteLength + lengths.byteLength + capacities.byteLength + free.byteLength,
  };
}
